/** Invented workbooks for the bench: 200 materials, 40 colours, 60 designs of 12 layers, five years of moves. */
export const MATERIALS = 200;
export const COLOURS = 40;
export const DESIGNS = 60;
export const FIRST_DAY = 45_000;
export const AS_OF = 46_800;
const DAYS = 1800;
const LOTS_EACH = 10;

const numbered = (word, count) =>
  Array.from({ length: count }, (_, at) => `${word} ${String(at).padStart(3, '0')}`);
export const materials = numbered('Material', MATERIALS);
export const colours = numbered('Colour', COLOURS);
export const designs = numbered('Design', DESIGNS);

/** The tables as BOOK takes them: rows of cells with their headers first. */
export function tables(moves) {
  const ledger = movesOf(moves);
  return {
    settings: [
      ['Setting', 'Value'],
      ['Labour rate per hour', 18],
    ],
    materials: [
      ['Material', 'Kind', 'Unit', 'Pack size', 'Pack price', 'Lead days'],
      ...materials.map((name, at) => [name, kindOf(at), 'g', 1000, 10 + at, 5]),
    ],
    lots: lotsFor(ledger),
    moves: [
      ['Entry', 'When', 'Reason', 'Material', 'Quantity', 'Lot', 'Value', 'Batch', 'By', 'Note'],
      ...ledger,
    ],
    molds: [
      ['Mold', 'Makes', 'Cavities', 'Fill g', 'Scrape g'],
      ['Small tiles', 'tiles', 36, 25, 2],
    ],
    colours: [
      ['Colour', 'Ingredient', 'Amount', 'Measure'],
      ...colours.flatMap((name, at) => [
        [name, materials[(at % 60) * 3], 500, 'g'],
        [name, materials[at * 3 + 1], 5, 'g'],
      ]),
    ],
    designs: [
      ['Design', 'Labour minutes', 'Setup minutes', 'Yield %'],
      ...designs.map((name) => [name, 6, 40, 95]),
    ],
    layers: [
      ['Design', 'Layer', 'Part', 'Item', 'Mold', 'Per bar', 'Per'],
      ...designs.flatMap(layersOf),
    ],
  };
}

const kindOf = (at) => (at % 3 === 0 ? 'base' : 'colourant');

const layersOf = (design, at) => [
  ...Array.from({ length: 10 }, (_, layer) => [
    design,
    layer + 1,
    'tiles',
    colours[(at + layer) % COLOURS],
    'Small tiles',
    3 + layer,
    'each',
  ]),
  [design, 11, 'pour', colours[at % COLOURS], '', 60, 'g'],
  [design, 12, 'paint', materials[(at % 60) * 3 + 1], '', 0.5, 'g'],
];

/** The row of the last move that uses a material, which the bench edits; headers are row 0. */
export const editedMove = (moves) => moves.findLastIndex((row) => row[5].startsWith('L-'));

/** A gram of a lot costs so many thousandths. */
const costOf = (material, lot) => 5 + ((material * 7 + lot * 13) % 40);

/** Batches of twenty moves: materials and leftover soap used, soap left over, bars made and sold. */
function movesOf(count) {
  return Array.from({ length: count }, (_, at) => {
    const number = Math.floor(at / 20);
    const batch = `B-${number}`;
    const entry = `${batch}.${at % 20}`;
    const day = FIRST_DAY + Math.floor((at * DAYS) / count);
    const row = (reason, item, quantity, lot, value) => [
      entry,
      day,
      reason,
      item,
      quantity,
      lot,
      value,
      batch,
      'Me',
      '',
    ];
    const design = designs[number % DESIGNS];
    const leftover = `${colours[number % COLOURS]} leftover`;
    if (at % 20 === 16 && number >= COLOURS)
      return row('used', leftover, -12.5, `B-${number - COLOURS}`, -0.25);
    if (at % 20 === 17) return row('left over', leftover, 12.5, batch, 0.25);
    if (at % 20 === 18) return row('made', design, 12, batch, 30);
    if (at % 20 === 19) return row('sold', design, -12, batch, -30);
    const material = ((number * 17 + (at % 20)) * 7919) % MATERIALS;
    const lot = Math.floor((at * LOTS_EACH) / count);
    const thousandths = 1 + ((at * 104_729) % 40_000);
    const value = -(thousandths * costOf(material, lot)) / 1_000_000;
    return row('used', materials[material], -thousandths / 1000, `L-${material}-${lot}`, value);
  });
}

/** Ten lots of each material, all but the last used up by the moves that name them. */
function lotsFor(ledger) {
  const used = new Map();
  for (const [, , , , quantity, lot] of ledger)
    if (lot.startsWith('L-')) used.set(lot, (used.get(lot) ?? 0) + Math.round(-quantity * 1000));
  const rows = materials.flatMap((name, material) =>
    Array.from({ length: LOTS_EACH }, (_, lot) => {
      const id = `L-${material}-${lot}`;
      const thousandths = (used.get(id) ?? 1000) + (lot === LOTS_EACH - 1 ? 500_000 : 0);
      const landed = (thousandths * costOf(material, lot)) / 1_000_000;
      const day = FIRST_DAY + Math.floor((lot * DAYS) / LOTS_EACH);
      return [id, name, day, thousandths / 1000, landed, 0];
    }),
  );
  return [['Lot', 'Material', 'Received', 'Quantity', 'Paid', 'Freight'], ...rows];
}
