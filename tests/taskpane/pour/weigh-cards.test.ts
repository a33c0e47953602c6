import { describe, expect, it } from 'vitest';
import { readDay } from '../../../src/domain/kernel/day.ts';
import type { TableData } from '../../../src/workbook/port.ts';
import { cautionsFor } from '../../../taskpane/pour/cautions.ts';
import { newDraft } from '../../../taskpane/pour/draft.ts';
import { amount } from '../../../taskpane/format.ts';
import { planOfDraft, type PlannedPour } from '../../../taskpane/pour/pour-of-draft.ts';
import { amountOf, cardsOf } from '../../../taskpane/pour/weigh-cards.ts';
import { bookOf } from '../book-of.ts';
import { rowsOf, smallWorkshop, withRows } from '../small-workshop.ts';

const today = readDay('2026-11-25') ?? 0;

function planned(
  design: string,
  bars: string,
  tables: readonly TableData[] = smallWorkshop,
): PlannedPour {
  const draft = { ...newDraft('B', '2026-11-25'), design, bars };
  const plan = planOfDraft(bookOf(tables), draft, today);
  if (!plan.ok) throw new Error(plan.failure.sentence);
  return plan.value;
}

describe('cardsOf', () => {
  /*
   * Worked by hand from contract §3 for 6 bars: Mist tiles 72 = 2 fills × 26 g = 52 g, of which 15/25
   * Blue and 10/25 Pearl. By a scale of 1 g that is 31 and 21. Blue tiles 72 − 10 spare = 62 → 2 fills
   * = 52 g + 31 g = 83 g, 12 of it leftover; of the 71 others 5.66 drops, 6, are 0.3 g, and the base is
   * rounded up. Pearl 21 g: 0.146 of it mica.
   */
  it('stands in pouring order, parents before the blend, leftovers first', () => {
    const shown = cardsOf(planned('Harbour Light', '6').plan).map(
      ({ title, meltG, uses, lines }) => ({
        title: meltG === undefined ? title : `${title}, ${amount(meltG, 'g').text}`,
        uses,
        lines: lines.map((line) => `${amountOf(line)} ${line.name}`),
      }),
    );
    expect(shown).toEqual([
      {
        title: 'Blue, 83 g',
        uses: ['2 fills of Small tiles (72 pieces)', '31 g kept for blends below'],
        lines: ['12 g Blue leftover', '71 g Clear base', '6 drops Blue liquid'],
      },
      {
        title: 'Pearl, 21 g',
        uses: ['21 g kept for blends below'],
        lines: ['21 g White base', '0.15 g Pearl mica'],
      },
      {
        title: 'Mist, 52 g',
        uses: ['2 fills of Small tiles (72 pieces)'],
        lines: ['31 g Blue', '21 g Pearl'],
      },
      {
        title: 'Clear base, 360 g',
        uses: ['360 g to pour into the bars'],
        lines: ['360 g Clear base'],
      },
      {
        title: 'Into and onto the bars',
        uses: [],
        lines: ['10 Blue × Small tiles', '6 g Sweet orange', '1.8 ml Rubbing alcohol', '6 Wrapper'],
      },
    ]);
  });

  it('never says 0 drops: it says what to do about less than half of one', () => {
    const weak = withRows(smallWorkshop, 'Colours', (rows) =>
      rows.map((row) => (row[1] === 'Blue liquid' ? ['Blue', 'Blue liquid', 0.6, 'drops'] : row)),
    );
    // 71 g of 100.03 take 0.43 drops.
    const drops = cardsOf(planned('Harbour Light', '6', weak).plan)[0]?.lines[2];
    expect(drops && amountOf(drops)).toBe('less than half a drop: leave it out, or melt more');
  });

  it('says which pinch takes a finer scale than the workbook’s', () => {
    const hints = cardsOf(planned('Harbour Light', '6').plan).flatMap(({ lines }) =>
      lines.filter(({ hint }) => hint.includes('finer')).map(({ name }) => name),
    );
    expect(hints).toEqual(['Pearl mica']);
  });

  it('says where spare pieces are enough', () => {
    const tables = withRows(smallWorkshop, 'LedgerLines', () =>
      rowsOf([
        'M-1|2026-10-05|spare|Mist × Small tiles|72||0.5|||',
        'M-2|2026-10-05|spare|Blue × Small tiles|72||0.5|||',
      ]),
    );
    const mist = cardsOf(planned('Harbour Light', '6', tables).plan).find(
      ({ title }) => title === 'Mist',
    );
    expect(mist?.uses).toEqual(['Nothing to melt: the spare pieces on hand are enough.']);
    expect(mist?.lines).toEqual([]);
  });

  it('says in ml what nobody would count in drops', () => {
    const blue = (bars: string) =>
      cardsOf(planned('Harbour Light', bars).plan)[0]?.lines.find(({ unit }) => unit === 'drops');
    expect(blue('6')?.hint).toBe('');
    // 30 bars: 360 − 10 → 10 fills = 260 g + 156 g for Mist = 416 − 12; × 8 ÷ 100.4 drops, ÷ 20 ml.
    expect(blue('30')?.hint).toBe('about 1.6 ml');
  });

  it('gives every line a key of its own', () => {
    const keys = cardsOf(planned('Harbour Light', '6').plan).flatMap(({ lines }) =>
      lines.map(({ key }) => key),
    );
    expect(new Set(keys).size).toBe(keys.length);
  });
});

describe('planOfDraft', () => {
  it.each([
    [{ design: '' }, 'Choose a design.'],
    [{ design: 'Gone' }, '"Gone" is no longer in Designs. Choose another, or put it back.'],
    [{ poured: '' }, 'Date poured is blank. Choose the day.'],
    [
      { poured: '2026-11-26' },
      'Date poured is 26 Nov 2026, which is still to come. Choose today or before.',
    ],
    [{ bars: ' ' }, 'Good bars wanted is blank. Type how many you want.'],
    [{ bars: '0' }, 'Good bars wanted is 0. Type a whole number, 1 or more.'],
    [{ bars: '12 pans' }, 'Good bars wanted is "12 pans". Type a plain number, 0 or more.'],
  ])('%j is answered with a sentence', (told, sentence) => {
    const draft = { ...newDraft('B', '2026-11-25'), design: 'Harbour Light', bars: '6', ...told };
    const plan = planOfDraft(bookOf(smallWorkshop), draft, today);
    expect(!plan.ok && plan.failure.sentence).toBe(sentence);
  });
});

describe('cautionsFor', () => {
  const words = (design: string, tables?: readonly TableData[]) =>
    cautionsFor(planned(design, '6', tables).plan).join(' ');

  it('warns of alcohol, powder and fragrance only where they are used', () => {
    expect(words('Harbour Light')).toMatch(
      /60 °C.*microwave.*Alcohol burns.*Dry powder.*fragrance.*gloves.*flame.*local rules/su,
    );
    expect(words('Plain Wave')).toMatch(/60 °C.*microwave.*local rules/su);
    expect(words('Plain Wave')).not.toMatch(/Alcohol|powder|fragrance/u);
  });

  it.each([
    ['extra', 'Glycerin', 'Glycerin', false],
    ['extra', 'Isopropyl 91', '', true],
    ['extra', 'Surgical alcohol', '', true],
    ['extra', 'Thinner', 'Alcohol Denat. 95; Aqua 5', true],
    ['fragrance', 'Rose', 'Benzyl Alcohol', false],
    ['extra', 'Emulsifier', 'Cetyl Alcohol', false],
    ['fragrance', 'Citrus in ethanol', '', true],
  ])('%s %s (%s) burns: %s', (kind, name, inci, burns) => {
    expect(words('Plain Wave', painted(kind, name, inci, 'g')).includes('Alcohol burns')).toBe(
      burns,
    );
  });

  it.each([
    ['colourant', 'Titanium dioxide', 'CI 77891', 'g', true],
    ['colourant', 'Ultramarine powder', 'CI 77007', 'g', true],
    ['extra', 'Oatmeal', '', 'g', true],
    ['colourant', 'Silver', 'Mica', 'ml', true],
    ['colourant', 'Blue liquid dye', 'CI 42090', 'g', false],
    ['colourant', 'Blue dye', 'CI 42090', 'ml', false],
    ['extra', 'Glycerin', 'Glycerin', 'g', false],
    ['extra', 'Isopropyl 91', '', 'g', false],
    ['fragrance', 'Orange oil', '', 'g', false],
    ['packaging', 'Shredded paper', '', 'g', false],
  ])('%s %s (%s, %s) may dust: %s', (kind, name, inci, unit, dusts) => {
    expect(words('Plain Wave', painted(kind, name, inci, unit)).includes('its dust')).toBe(dusts);
  });

  it('asks for gloves with a fragrance, whatever it is called', () => {
    expect(words('Plain Wave', painted('fragrance', 'Orange oil', '', 'ml'))).toMatch(
      /Undiluted fragrance irritates skin and eyes/u,
    );
  });
});

/** Plain Wave with one material more on the bar. */
function painted(kind: string, name: string, inci: string, unit: string): readonly TableData[] {
  const materials = withRows(smallWorkshop, 'Materials', (rows) => [
    ...rows,
    [name, kind, unit, '', '', 10, 1, inci],
  ]);
  const part = { fragrance: 'scent', packaging: 'pack' }[kind] ?? 'paint';
  return withRows(materials, 'Layers', (rows) => [
    ...rows,
    ['Plain Wave', '2', part, name, '', 1, unit],
  ]);
}
