/**
 * Follows the vendor's client script in a real browser page: puts the test's Excel behind it and adds
 * what office.js itself brings. The page's address says what differs: ?host=Word, ?api=1.8,
 * ?without=SharedRuntime, ?book=none.
 */
import { type ClientGlobals, connect } from './connect.ts';
import { demoBook } from './demo-book.ts';
import { ExcelHost } from './excel-host.ts';

const wanted = new URLSearchParams(location.search);
const model = demoBook();
if (wanted.get('book') === 'none') model.names.clear();
const host = new ExcelHost(model);
const associated: string[] = [];

connect(globalThis as unknown as ClientGlobals, host, {
  requirements: {
    isSetSupported: (set: string, version = '1.1') =>
      set !== wanted.get('without') &&
      (set !== 'ExcelApi' || Number(version) <= Number(wanted.get('api') ?? '1.9')),
  },
  officeTheme: { isDarkTheme: true },
  document: { mode: 'readWrite', url: 'https://soap.example/ledger.xlsx' },
  partitionKey: undefined,
});
Object.assign(Office, {
  HostType: { Excel: 'Excel', Word: 'Word' },
  onReady: () => Promise.resolve({ host: wanted.get('host') ?? 'Excel' }),
});
Object.assign(CustomFunctions, { associate: (id: string) => associated.push(id) });
Object.assign(globalThis, { testExcel: { model, host, associated } });
