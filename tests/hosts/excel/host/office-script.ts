/**
 * Follows the vendor's client script in a real browser page: puts the test's Excel behind it, with the
 * small workshop open, and adds what office.js itself brings. The page's address says what differs:
 * ?host=Word, ?api=1.8, ?without=SharedRuntime, ?book=none,
 * ?editing, ?web and ?lines=50000 of ledger.
 */
import type { Cell } from '../../../../src/workbook/port.ts';
import { workshop } from '../../../support/small-book.ts';
import { type ClientGlobals, connect } from './connect.ts';
import { ExcelHost } from './excel-host.ts';
import { withLedger } from './long-ledger.ts';
import { modelOf, withBookCells } from './model-of.ts';

type WorksheetFunction = (...args: readonly unknown[]) => Cell;

const wanted = new URLSearchParams(location.search);
const associated = new Map<string, WorksheetFunction>();
const model = withBookCells(modelOf(withLedger(workshop, Number(wanted.get('lines') ?? 0))), {
  handle: 'a handle of yesterday',
  onHand: 51,
});
model.calculation.answer = (name, args) => {
  const answer = associated.get(name.replace('POUR.', ''));
  if (answer === undefined) throw new Error(`${name} is not there.`);
  return answer(...args);
};
if (wanted.get('book') === 'none') model.names.clear();
model.cellBeingEdited = wanted.has('editing');
const host = new ExcelHost(model);

const context = {
  requirements: {
    isSetSupported: (set: string, version = '1.1') =>
      set !== wanted.get('without') &&
      (set !== 'ExcelApi' || Number(version) <= Number(wanted.get('api') ?? '1.9')),
  },
  platform: wanted.has('web') ? 'OfficeOnline' : 'PC',
  officeTheme: { isDarkTheme: true },
  document: { mode: 'readWrite', url: 'https://soap.example/ledger.xlsx' },
  partitionKey: undefined,
};
const page = globalThis as unknown as ClientGlobals;
page.OSF._OfficeAppFactory = { getContext: () => context };
connect(page, host);
Object.assign(Office, {
  PlatformType: { OfficeOnline: 'OfficeOnline', PC: 'PC' },
  HostType: { Excel: 'Excel', Word: 'Word' },
  onReady: () => Promise.resolve({ host: wanted.get('host') ?? 'Excel' }),
});
Object.assign(CustomFunctions, {
  associate: (id: string, answer: WorksheetFunction) => associated.set(id, answer),
});
Object.assign(globalThis, { testExcel: { model, host, associated } });
