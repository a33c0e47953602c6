import { existsSync, readFileSync } from 'node:fs';
import { loadFunctions } from './functions.js';

/**
 * `npm run bench -- answers`: single answers that could grow faster than what they are asked of, on
 * invented books made to be hard for each. Every one is held to half a second
 * of processor time, since other work on the machine counts in the clock's. Where the system tells it, the
 * main thread's own share stands beside it: whoever asks waits for that, while others collect what was dropped.
 */
const GOAL_MS = 500;
const BATCHES = 10_000;
const DAY = 45_000;

const functions = loadFunctions();
const call = (id, ...cells) => functions.get(id)(...cells);

const materials = [
  ['Material', 'Kind', 'Unit', 'Pack size', 'Pack price', 'INCI', 'Allergens'],
  ['Clear base', 'base', 'g', 1000, 8, 'Glycerin', ''],
  ['Tint', 'colourant', 'g', 10, 8, 'Mica', ''],
];
const lots = (quantity) => [
  ['Lot', 'Material', 'Received', 'Quantity', 'Paid'],
  ['L1', 'Clear base', DAY, quantity, quantity / 100],
  ['L2', 'Tint', DAY, quantity, quantity / 10],
];

/** A colour of each level blended from all of the level before. */
function blends(levels, wide) {
  const colours = [['Colour', 'Ingredient', 'Amount', 'Measure']];
  for (let level = 0; level < levels; level += 1)
    for (let at = 0; at < wide; at += 1)
      if (level === 0) {
        colours.push([`C0-${at}`, 'Clear base', 100 + at, 'g'], [`C0-${at}`, 'Tint', 1, 'g']);
      } else
        for (let of = 0; of < wide; of += 1)
          colours.push([`C${level}-${at}`, `C${level - 1}-${of}`, 1 + of, 'g']);
  return call(
    'BOOK',
    materials,
    lots(1e6),
    colours,
    [['Design'], ['Bar']],
    [
      ['Design', 'Layer', 'Part', 'Item', 'Per bar', 'Per'],
      ['Bar', '1', 'pour', `C${levels - 1}-0`, 100, 'g'],
    ],
  );
}

/** Batches of which each melts what the one before left over; with the lots named, or kept by hand without. */
function chained(isNamed) {
  const moves = [['Entry', 'When', 'Reason', 'Material', 'Quantity', 'Lot', 'Value', 'Batch']];
  const batches = [['Batch', 'Poured', 'Design', 'Bars']];
  for (let at = 0; at < BATCHES; at += 1) {
    const batch = `B-${at}`;
    const day = DAY + 1 + Math.floor(at / 6);
    const add = (...cells) => moves.push([`${batch}.${moves.length}`, day, ...cells, batch]);
    const named = (lot) => (isNamed ? lot : '');
    batches.push([batch, day, 'Bar', 2]);
    add('used', 'Clear base', -90, named('L1'), -0.9);
    if (at > 0) add('used', 'Slate leftover', -10, named(`B-${at - 1}`), -0.1);
    add('left over', 'Slate leftover', 10, named(batch), 0.1);
    add('made', 'Bar', 2, named(batch), 0.9);
    add('sold', 'Bar', -2, named(batch), -0.9);
  }
  return call(
    'BOOK',
    materials,
    lots(1e6),
    moves,
    batches,
    [
      ['Colour', 'Ingredient', 'Amount', 'Measure'],
      ['Slate', 'Clear base', 99, 'g'],
      ['Slate', 'Tint', 1, 'g'],
    ],
    [['Design'], ['Bar']],
    [
      ['Design', 'Layer', 'Part', 'Item', 'Per bar', 'Per'],
      ['Bar', '1', 'pour', 'Slate', 40, 'g'],
    ],
  );
}

/** One design of many layers, each of a colour of its own. */
function layered(count) {
  const each = Array.from({ length: count }, (_, at) => at);
  return call(
    'BOOK',
    materials,
    lots(1e9),
    [
      ['Colour', 'Ingredient', 'Amount', 'Measure'],
      ...each.flatMap((at) => [
        [`C${at}`, 'Clear base', 100 + at, 'g'],
        [`C${at}`, 'Tint', 1, 'g'],
      ]),
    ],
    [['Design'], ['Bar']],
    [
      ['Design', 'Layer', 'Part', 'Item', 'Per bar', 'Per'],
      ...each.map((at) => ['Bar', `${at}`, 'pour', `C${at}`, 1 + (at % 7), 'g']),
    ],
  );
}

const history = Array.from({ length: 10_000 }, (_, at) => [
  20 + Math.round(9 * Math.sin(at / 2)) + ((at * 7919) % 5),
]);

const asked = [
  ['INGREDIENTS, 19 levels of 2', () => blends(19, 2), (book) => call('INGREDIENTS', 'Bar', book)],
  ['INGREDIENTS, 19 levels of 8', () => blends(19, 8), (book) => call('INGREDIENTS', 'Bar', book)],
  ['CHECKS, 19 levels of 8', () => blends(19, 8), (book) => call('CHECKS', 'Bar', book)],
  ['CHECKS, chained batches', () => chained(true), (book) => call('CHECKS', 'Bar', book)],
  ['RECALL, lots named', () => chained(true), (book) => call('RECALL', 'L1', book)],
  ['RECALL, no lots', () => chained(false), (book) => call('RECALL', 'L1', book)],
  ['TRACE of a lot, lots named', () => chained(true), (book) => call('TRACE', 'L1', book)],
  ['TRACE of a lot, no lots', () => chained(false), (book) => call('TRACE', 'L1', book)],
  [
    'TRACE of the last batch',
    () => chained(false),
    (book) => call('TRACE', `B-${BATCHES - 1}`, book),
  ],
  ['STOCKLIST, no lots', () => chained(false), (book) => call('STOCKLIST', book)],
  ['CANMAKE, 10,000 layers', () => layered(10_000), (book) => call('CANMAKE', 'Bar', book)],
  ['COSTPERBAR, 10,000 layers', () => layered(10_000), (book) => call('COSTPERBAR', 'Bar', book)],
  ['FORECAST, 10,000 values', () => history, (values) => call('FORECAST', values, 12)],
  [
    'FORECAST, 10,000 values, season 365',
    () => history,
    (values) => call('FORECAST', values, 12, 365),
  ],
  ['FORECASTFIT, 10,000 values', () => history, (values) => call('FORECASTFIT', values, 12)],
];

/** Processor time of the main thread in ms, on Linux. */
const SCHEDULED = `/proc/self/task/${process.pid}/schedstat`;
const mainMs = existsSync(SCHEDULED)
  ? () => Number(readFileSync(SCHEDULED, 'utf8').split(' ')[0]) / 1e6
  : undefined;

for (const [name, prepare, ask] of asked) {
  const prepared = prepare();
  const [before, mainBefore] = [process.cpuUsage(), mainMs?.()];
  ask(prepared);
  const { user, system } = process.cpuUsage(before);
  const ms = (user + system) / 1000;
  const main = mainMs ? `, main thread ${(mainMs() - mainBefore).toFixed(0)}` : '';
  console.log(
    `${name}: ${ms.toFixed(0)} ms${ms > GOAL_MS ? ` (goal ${GOAL_MS}: not met)` : ''}${main}`,
  );
}
