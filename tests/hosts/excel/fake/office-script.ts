/**
 * Stands in, in a real browser page, for the script that Excel's maker serves: what `start.ts` uses
 * of it, over a fake workbook. The page's address says what differs: ?host=Word, ?api=1.8, ?book=none.
 */
import { demoBook } from './demo-book.ts';
import { FakeClient } from './fake-client.ts';

const wanted = new URLSearchParams(location.search);
const model = demoBook();
if (wanted.get('book') === 'none') model.names.length = 0;
const client = new FakeClient(model);
const associated: string[] = [];
const startup: string[] = [];

Object.assign(globalThis, {
  Office: {
    HostType: { Excel: 'Excel', Word: 'Word' },
    DocumentMode: { ReadOnly: 'readOnly', ReadWrite: 'readWrite' },
    StartupBehavior: { load: 'Load', none: 'None' },
    onReady: () => Promise.resolve({ host: wanted.get('host') ?? 'Excel' }),
    context: {
      requirements: {
        isSetSupported: (_: string, version: string) =>
          Number(version) <= Number(wanted.get('api') ?? '1.9'),
      },
      officeTheme: { isDarkTheme: true },
      document: { mode: 'readWrite', url: 'https://soap.example/ledger.xlsx' },
      partitionKey: undefined,
    },
    addin: {
      getStartupBehavior: () => Promise.resolve(startup.at(-1) ?? 'None'),
      setStartupBehavior: (behaviour: string) => Promise.resolve(startup.push(behaviour)),
    },
  },
  Excel: { run: client.run },
  CustomFunctions: { associate: (id: string) => associated.push(id), Error },
  fakeExcel: { model, client, associated, startup },
});
