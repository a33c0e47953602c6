import { describe, expect, it } from 'vitest';
import { sentenceOfFault } from '../../../src/hosts/excel/host-fault.ts';
import { post } from './host/demo-book.ts';
import { ExcelHost, WIRE } from './host/excel-host.ts';
import { officeClient } from './host/office-client.ts';
import { open, untilAllIsStill } from './host/open.ts';
import { WorkbookModel } from './host/workbook-model.ts';

/** What the vendor's page tells of faults of one action; each is thrown by the client as it is. */
const ACTION_FAULTS: Readonly<Record<string, RegExp>> = {
  AccessDenied: /protected or open read-only.*Unprotect/,
  FilteredRangeConflict: /filter hides rows.*Clear the filter/,
  InsertDeleteConflict: /stands in the way of new rows.*move anything below/,
  NonBlankCellOffSheet: /no room left below the table/,
  MergedRangeConflict: /Merged cells.*Unmerge/,
  PivotTableRangeConflict: /pivot table.*Move it/,
  ItemNotFound: /vanished meanwhile.*Put it back/,
  InvalidReference: /deleted meanwhile/,
  InactiveWorkbook: /Another workbook is in front/,
  Conflict: /partner’s change/,
  RequestAborted: /broke off/,
  ServiceNotAvailable: /cannot be reached/,
  MemoryLimitReached: /no memory left/,
  ApiNotFound: /too old/,
};

/** What a whole sync can fail of, in Office's own numbers, which the client makes into codes. */
const WIRE_FAULTS: readonly (readonly [keyof typeof WIRE, RegExp])[] = [
  ['internal', /trouble of its own.*close and reopen/],
  ['cellEdit', /A cell is being edited.*Press Enter or Esc/],
  ['session', /ended this session.*Reload/],
  ['dialogOpen', /A window is open in Excel.*Close it/],
  ['throttled', /too many requests.*Wait a minute/],
  ['requestTooLarge', /more than Excel takes in one go/],
  ['responseTooLarge', /too large for Excel on the web to hand over.*Windows or Mac/],
  ['noCapability', /does not allow changes here/],
];

describe('what Excel throws, through its own client, is a sentence', () => {
  it.each(Object.entries(ACTION_FAULTS))('%s', async (code, sentence) => {
    const { host, port } = open();
    host.faults = [{ sync: 5, action: 0, code }];
    expect(await port.apply(post(1))).toEqual({
      kind: 'refused',
      sentence: expect.stringMatching(sentence) as string,
    });
  });

  it.each(WIRE_FAULTS)('%s', async (kind, sentence) => {
    const { host, port } = open();
    host.faults = [{ sync: 5, wire: WIRE[kind] }];
    expect(await port.apply(post(1))).toEqual({
      kind: 'refused',
      sentence: expect.stringMatching(sentence) as string,
    });
    const reading = open();
    // What is too large is asked for in smaller parts first; the sentence comes when none is left.
    reading.host.faults = [2, 4, 6, 8].map((sync) => ({ sync, wire: WIRE[kind] }));
    await expect(reading.port.load()).rejects.toThrow(sentence);
  });

  it('no answer at all, within a minute', async () => {
    const { host, port } = open();
    host.faults = [{ sync: 1, wire: 'silence' }];
    await expect(port.load()).rejects.toThrow(/took too long to answer/);
  });

  it('an event that cannot be registered', async () => {
    const sentences: string[] = [];
    const { host, port } = open(undefined, { onDeaf: (sentence) => sentences.push(sentence) });
    host.faults = [{ sync: 1, wire: WIRE.session }];
    port.onChange(() => undefined);
    await untilAllIsStill();
    expect(sentences).toEqual([expect.stringContaining('Reload the browser page')]);
  });

  it('anything else: what Excel said, and what to try', () => {
    expect(sentenceOfFault(new Error('Odd.'))).toMatch(/^Excel refused: Odd\. Try again/);
    expect(sentenceOfFault('odd')).toMatch(/^Excel refused: odd Try again/);
  });

  it('every code is one that the client script names, or the page listed above', () => {
    const { Excel: excel, OfficeExtension: extension } = officeClient(
      new ExcelHost(new WorkbookModel()),
    );
    const named = new Set<unknown>([
      ...Object.values(excel.ErrorCodes),
      ...Object.values(extension.CoreErrorCodes),
      ...Object.values(extension.ErrorCodes),
    ]);
    // On the vendor's page alone.
    const listed = ['ServiceNotAvailable', 'MemoryLimitReached'];
    for (const code of Object.keys(ACTION_FAULTS).filter((one) => !listed.includes(one))) {
      expect(named, code).toContain(code);
    }
  });
});
