import { AS_OF, designs, tables } from './workbook.js';

/** Workbooks of so many moves as a host holds them, by what is the matter with them. */
export const workbooks = {
  sound,
  /** Both lack batches that the other has, and a few lines differ. */
  'other copy': (moves) => otherCopy(sound(moves)),
  'batches lost': (moves) => changed(sound(moves), 'Batches', () => []),
  'used moves lost': (moves) =>
    changed(sound(moves), 'Moves', (rows) => rows.filter((_, at) => at % 20 !== 3)),
  'every move twice': (moves) =>
    changed(sound(moves / 2), 'Moves', (rows) => [
      ...rows,
      ...rows.map((row) => row.with(0, `${row[0]}.2`)),
    ]),
  'every id twice': (moves) => changed(sound(moves / 2), 'Moves', (rows) => [...rows, ...rows]),
  'reversals of nothing': (moves) =>
    changed(sound(moves), 'Moves', (rows) =>
      rows.map((row, at) =>
        at % 20 === 3 ? row.with(2, 'reversed').with(9, `${row[0]}.no`) : row,
      ),
    ),
};

/** The share of the batches that only this workbook has, and the share that only the other copy has. */
const OURS = 0.02;
const THEIRS = 0.1;

/** The bench's tables, with Batches, Sales, Plan and Fairs beside them. */
function sound(moves) {
  const { settings, materials, lots, moves: ledger, molds, colours, ...recipes } = tables(moves);
  const pours = balanced(ledger);
  const lines = (make) => pours.map((rows, at) => make(at, rows));
  return [
    table('Settings', settings),
    table('Materials', materials),
    // Enough of everything for one more pour.
    table(
      'Lots',
      lots.map((row, at) => (at % 10 === 0 && at > 0 ? row.with(3, row[3] + 100_000) : row)),
    ),
    table('Moves', [ledger[0], ...pours.flat()]),
    table('Molds', molds),
    table('Colours', colours),
    table('Designs', recipes.designs),
    table('Layers', recipes.layers),
    table('Batches', [
      ['Batch', 'Poured', 'Design', 'Bars', 'Good', 'Minutes', 'State', 'Note'],
      ...lines((at, [[, day]]) => [`B-${at}`, day, designOf(at), 12, 12, 60, 'posted', '']),
    ]),
    table('Sales', [
      ['Sale', 'Sold on', 'Design', 'Bars', 'Price each', 'Fair', 'Fees'],
      ...lines((at, [[, day]]) => [`S-${at}.01`, day, designOf(at), 12, 6.5, '', 0]),
    ]),
    table('Fairs', [
      ['Fair', 'Opens', 'Stall fee', 'Hours'],
      ['Quay Fair', AS_OF + 90, 40, 8],
    ]),
    table('Plan', [
      ['Plan line', 'Design', 'Bars', 'Ready by', 'Fair'],
      ...designs.slice(0, 20).map((design, at) => [`P-${at}`, design, 24, AS_OF + 80, 'Quay Fair']),
    ]),
  ];
}

const table = (name, [headers, ...rows]) => ({ name, headers, rows });
const designOf = (at) => designs[at % designs.length];

/** The ledger by batches of twenty moves; what bars are worth is what the batch used. */
function balanced([, ...rows]) {
  return Array.from({ length: rows.length / 20 }, (_, at) => {
    const batch = rows.slice(at * 20, at * 20 + 20);
    const used = batch.slice(0, 18).reduce((sum, row) => sum - row[6], 0);
    const worth = Math.round(used * 100) / 100;
    return [...batch.slice(0, 18), batch[18].with(6, worth), batch[19].with(6, -worth)];
  });
}

const changed = (all, name, change) =>
  all.map((one) => (one.name === name ? { ...one, rows: change(one.rows) } : one));

/** What somebody else's copy holds: batches of its own in place of our last ones, and some other notes. */
function otherCopy(all) {
  const pours = all.find(({ name }) => name === 'Batches').rows.length;
  const numberOf = ([id]) => Number(/\d+/u.exec(id)[0]);
  const asTheirs = (row) =>
    row.map((cell) => (typeof cell === 'string' ? cell.replace(/^(?=[BS]-\d)/u, 'T') : cell));
  const own = ['Moves', 'Batches', 'Sales'].reduce(
    (copy, name) =>
      changed(copy, name, (rows) => {
        const old = rows.filter((row) => numberOf(row) < pours * (1 - OURS));
        return [
          ...old,
          ...old.filter((row) => numberOf(row) >= pours * (1 - OURS - THEIRS)).map(asTheirs),
        ];
      }),
    all,
  );
  return changed(own, 'Batches', (rows) =>
    rows.map((row, at) => (at % 250 === 0 ? row.with(7, 'Cut a day late') : row)),
  );
}
