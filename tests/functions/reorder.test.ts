import { describe, expect, it } from 'vitest';
import { errorOf, loadFunctions } from '../support/worksheet-functions.ts';
import { ranges, type Tables, withRows, withSetting, workshop } from '../support/small-book.ts';

const call = await loadFunctions();
const bookOf = (tables: Tables): unknown => call('BOOK', ...ranges(tables));

/** Use of clear base on three days of March: 100 g each, once in two moves. */
const used = withRows(
  workshop,
  'LedgerLines',
  ['E0', '2024-02-29', 'used', 'Clear base', -900, '', '', '', '', ''],
  ['E1', '2024-03-01', 'used', 'Clear base', -100, '', '', '', '', ''],
  ['E2', '2024-03-05', 'used', 'Clear base', -60, '', '', '', '', ''],
  ['E3', '2024-03-05', 'used', 'Clear base', -40, '', '', '', '', ''],
  ['E4', '2024-03-10', 'used', 'Clear base', -100, '', '', '', '', ''],
  ['E5', '2024-03-10', 'wasted', 'Clear base', -77, '', '', '', '', ''],
  ['E6', '2024-03-11', 'used', 'Clear base', -999, '', '', '', '', ''],
);

describe('REORDERPOINT', () => {
  // Ten days to 10 March: mean 30; squares about it 3 × 70² + 7 × 30² = 21000, over 9 days.
  const sdSquared = 21_000 / 9;

  it('takes mean and sample SD of daily use over the History days, days without use as 0', () => {
    // Lead 6 days, SD 2, service 90 %: z = 1.2815515655 (table of normal quantiles).
    const expected = 30 * 6 + 1.2815515655 * Math.sqrt(6 * sdSquared + 30 ** 2 * 2 ** 2);
    expect(call('REORDERPOINT', 'Clear base', bookOf(used), '2024-03-10')).toBeCloseTo(expected, 7);
  });

  it('takes Service % of Settings where the material has none', () => {
    const white = withRows(used, 'LedgerLines', [
      'F1',
      '2024-03-03',
      'used',
      'White base',
      -100,
      '',
      '',
      '',
      '',
      '',
    ]);
    // Mean 10, SD 100 ÷ √10; lead 6 days.
    const at = (z: number): number => 60 + z * Math.sqrt(6 * 1000);
    expect(call('REORDERPOINT', 'White base', bookOf(white), '2024-03-10')).toBeCloseTo(
      at(1.644853627),
      6,
    );
    const sure = withSetting(white, 'Service %', 99);
    expect(call('REORDERPOINT', 'White base', bookOf(sure), '2024-03-10')).toBeCloseTo(
      at(2.326347874),
      6,
    );
  });

  it('does not count use that was taken back', () => {
    const undone = withRows(
      used,
      'LedgerLines',
      ['F1', '2024-03-09', 'used', 'Clear base', -500, '', '', 'T9', '', ''],
      ['F2', '2024-03-10', 'reversed', 'Clear base', 500, '', '', 'T9', '', 'F1'],
    );
    expect(call('REORDERPOINT', 'Clear base', bookOf(undone), '2024-03-10')).toBe(
      call('REORDERPOINT', 'Clear base', bookOf(used), '2024-03-10'),
    );
  });

  it('is 0 where use lies before the History days', () => {
    expect(call('REORDERPOINT', 'Clear base', bookOf(used), '2024-09-01')).toBe(0);
  });

  it.each([
    ['nothing was used yet', 'Box', /Box has no use recorded yet.*Record batches first/],
    ['nothing was used by that day', 'Clear base', /no use recorded yet/],
  ])('answers #N/A where %s', (_, material, sentence) => {
    const { code, message } = errorOf(() =>
      call('REORDERPOINT', material, bookOf(used), '2024-02-01'),
    );
    expect(code).toBe('#N/A');
    expect(message).toMatch(sentence);
  });

  it('answers #N/A without lead days', () => {
    const oil = withRows(used, 'LedgerLines', [
      'F1',
      '2024-03-03',
      'used',
      'Orange oil',
      -1,
      '',
      '',
      '',
      '',
      '',
    ]);
    const { code, message } = errorOf(() =>
      call('REORDERPOINT', 'Orange oil', bookOf(oil), '2024-03-10'),
    );
    expect(code).toBe('#N/A');
    expect(message).toMatch(/Fill in Lead days for Orange oil in Materials/);
  });

  it('refuses an unknown material', () => {
    expect(errorOf(() => call('REORDERPOINT', 'Bxo', bookOf(used))).message).toMatch(
      /Did you mean "Box"\?/,
    );
  });
});

/** Base used in lumps of 100 g on every tenth day of the 90 to 30 October; the demo's kind of use. */
const lumps = withRows(
  withSetting(workshop, 'History days', 90),
  'LedgerLines',
  ...Array.from({ length: 9 }, (_, index) => [
    `L${index}`,
    `2024-${String(8 + Math.floor(index / 3)).padStart(2, '0')}-${['10', '20', '30'][index % 3] ?? ''}`,
    'used',
    'White base',
    -100,
    '',
    '',
    '',
    '',
    '',
  ]),
);

describe('SERVICECHECK', () => {
  const [lines, weeks] = [6, 52];

  it('spills both points, their service, which to trust and why, then a year by weeks', () => {
    const book = bookOf(lumps);
    const spill = call('SERVICECHECK', 'White base', book, '2024-10-30') as unknown[][];
    expect(spill[0]).toEqual(['Line', 'Usual formula', 'Own days']);
    expect(spill).toHaveLength(1 + lines + weeks);
    const [, asked, point, service, , trust, words, firstWeek] = spill;
    expect(asked).toEqual(['Service % asked', 95, 95]);
    expect(point?.[1]).toBeCloseTo(
      call('REORDERPOINT', 'White base', book, '2024-10-30') as number,
    );
    expect(point?.[2]).toBeGreaterThan(Number(point?.[1]));
    expect(service?.[1]).toBeLessThan(90);
    expect(service?.[2]).toBeGreaterThanOrEqual(94);
    expect(trust).toEqual(['Trust it', 'no', 'yes']);
    expect(words?.[1]).toMatch(/used in lumps, on 9 of 90 days/u);
    expect(firstWeek?.[0]).toBe('Week 1');
  });

  it('is the same at each asking, and of each day its own', () => {
    const book = bookOf(lumps);
    const ask = (day: string) => call('SERVICECHECK', 'white base', book, day);
    expect(ask('2024-10-30')).toEqual(ask('2024-10-30'));
    expect(ask('2024-09-15')).not.toEqual(ask('2024-10-30'));
  });

  it.each([
    ['a name that is none', 'Pink base', '2024-10-30', '#VALUE!', /Pink base/u],
    ['no use yet', 'Blue mica', '2024-10-30', '#N/A', /no use recorded yet/u],
    ['no use lately', 'White base', '2025-06-01', '#N/A', /not used in the last 90 days/u],
  ])('%s: a sentence', (_, material, day, code, sentence) => {
    const error = errorOf(() => call('SERVICECHECK', material, bookOf(lumps), day));
    expect(error.code).toBe(code);
    expect(error.message).toMatch(sentence);
  });
});

describe('SAFETYSTOCK', () => {
  it('leaves out what is blank', () => {
    const plain = call('SAFETYSTOCK', 95, 5, 10);
    expect(call('SAFETYSTOCK', 95, 5, 10, '', '')).toBe(plain);
    expect(call('SAFETYSTOCK', 95, 5, 10, null, undefined)).toBe(plain);
    expect(call('SAFETYSTOCK', 95, 5, 10, 30)).toBe(plain);
  });

  it.each([
    [[-1, 5, 10], /^service % is -1\. Give/],
    [[100, 5, 10], /less than 100/],
    [[120, 5, 10], /less than 100/],
    [[5e-324, 5, 10], /Give 1 or more/],
    [[95, -5, 10], /^sd of daily use is -5\. Give 0 or more\.$/],
    [[95, 5, -1], /^lead days is -1\. Give 0 or more\.$/],
    [['', 5, 10], /service % is blank/],
    [[95, 4, 9, -2, 2], /^mean daily use is -2\./],
    [[95, 4, 9, 2, -2], /^sd of lead days is -2\./],
    [[95, '5', 10], /is "5", which is text: set the cell's format to Number and type it again\.$/],
    [[95, 'five', 10], /"five", which is not a number/],
    [[95, 5, 10, 30, 'x'], /sd of lead days is "x"/],
    [[95, 4, 9, '', 2], /mean daily use is blank/],
    [[0.5, 4, 9], /^service % is 0\.5\. Give 50 if 50 % is meant\.$/],
    [[0.95, 4, 9], /^service % is 0\.95\. Give 95 if 95 % is meant\.$/],
    [[0.999, 4, 9], /Give 99\.9 if 99\.9 % is meant/],
  ])('refuses %j', (args, sentence) => {
    const { code, message } = errorOf(() => call('SAFETYSTOCK', ...args));
    expect(code).toBe('#VALUE!');
    expect(message).toMatch(sentence);
  });

  it('never answers with what is no number', () => {
    const { code, message } = errorOf(() => call('SAFETYSTOCK', 95, 1e308, 1e308));
    expect(code).toBe('#VALUE!');
    expect(message).toMatch(/too large for a cell/);
  });
});

describe('ORDERSIZE', () => {
  it('is 0 where nothing is used', () => {
    expect(call('ORDERSIZE', 0, 30, 15)).toBe(0);
  });

  it('divides by nothing without a holding cost', () => {
    const { code, message } = errorOf(() => call('ORDERSIZE', 1000, 30, 0));
    expect(code).toBe('#DIV/0!');
    expect(message).toMatch(/^holding cost per unit is 0:/);
  });

  it.each([
    [[-1, 30, 15], /^yearly use is -1\. Give 0 or more\.$/],
    [[1000, -30, 15], /^cost per order is -30\./],
    [[1000, 30, -15], /^holding cost per unit is -15\./],
    [['', 30, 15], /^yearly use is blank/],
    [[1000, 'x', 15], /^cost per order is "x"/],
  ])('refuses %j', (args, sentence) => {
    const { code, message } = errorOf(() => call('ORDERSIZE', ...args));
    expect(code).toBe('#VALUE!');
    expect(message).toMatch(sentence);
  });
});
