import { readFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { runInThisContext } from 'node:vm';

/**
 * `npm run bench`: the built functions on generated ledgers, as ratios to JSON.parse of the same
 * cells. Each round parses its arrays afresh and changes one move, so that no answer is remembered.
 */
const ROUNDS = 5;
const MATERIALS = 200;
const AS_OF = 46_800;

// `npm run bench -- workbench` measures that instead, and nothing else.
if (process.argv[2] === 'workbench') {
  await import('./workbench.js');
  process.exit();
}

const functions = loadFunctions();
console.log(
  `${cpus().length} cores, Node ${process.version}; min, median and max of ${ROUNDS} rounds, the first cold.`,
);
for (const moves of [1_000, 10_000, 100_000]) measure(moves);

function measure(moves) {
  const json = JSON.stringify(tables(moves));
  const rounds = Array.from({ length: ROUNDS }, (_, round) => oneRound(json, round));
  console.log(`\n${moves} moves, ${(json.length / 1e6).toFixed(1)} MB of JSON`);
  for (const name of Object.keys(rounds[0])) {
    const values = rounds.map((round) => round[name]).sort((a, b) => a - b);
    const [min, median, max] = [values[0], values[Math.floor(ROUNDS / 2)], values.at(-1)].map(
      (value) => value.toFixed(2),
    );
    console.log(`  ${name.padEnd(34)} ${min.padStart(9)} ${median.padStart(9)} ${max.padStart(9)}`);
  }
}

function oneRound(json, round) {
  const [parseMs, ranges] = timed(() => JSON.parse(json));
  ranges[2][1][4] -= round + 1;
  const [bookMs, book] = timed(() => functions.get('BOOK')(...ranges));
  const ask = (id) =>
    timed(() => {
      for (let i = 0; i < MATERIALS; i += 1) functions.get(id)(`Material ${i}`, book, AS_OF);
    })[0];
  return {
    'JSON.parse, ms': parseMs,
    'BOOK ÷ JSON.parse': bookMs / parseMs,
    'ONHAND × 200 ÷ JSON.parse': ask('ONHAND') / parseMs,
    'STOCKVALUE × 200 ÷ JSON.parse': ask('STOCKVALUE') / parseMs,
    'REORDERPOINT × 200 ÷ JSON.parse': ask('REORDERPOINT') / parseMs,
  };
}

function timed(work) {
  const start = performance.now();
  const result = work();
  return [performance.now() - start, result];
}

/** Materials, lots and a ledger of used moves over five years; every material is used. */
function tables(moves) {
  const materials = [['Material', 'Kind', 'Unit', 'Pack size', 'Pack price', 'Lead days']];
  const lots = [['Lot', 'Material', 'Received', 'Quantity', 'Paid', 'Freight']];
  for (let i = 0; i < MATERIALS; i += 1) {
    materials.push([`Material ${i}`, i % 3 === 0 ? 'base' : 'colourant', 'g', 1000, 10 + i, 5]);
    for (let k = 0; k < 10; k += 1) {
      lots.push([`L-${i}-${k}`, `Material ${i}`, 45_000 + k * 100, moves, 500 + k, 12]);
    }
  }
  const ledger = [
    ['Entry', 'When', 'Reason', 'Material', 'Quantity', 'Lot', 'Value', 'Batch', 'By', 'Note'],
  ];
  for (let i = 0; i < moves; i += 1) {
    const material = (i * 7919) % MATERIALS;
    const batch = `B-${Math.floor(i / 20)}`;
    const quantity = -((i * 104_729) % 40_000) / 1000;
    const day = 45_000 + Math.floor((i * 1800) / moves);
    ledger.push([
      `${batch}.${i % 20}`,
      day,
      'used',
      `Material ${material}`,
      quantity,
      `L-${material}-0`,
      '',
      batch,
      'Me',
      '',
    ]);
  }
  return [materials, lots, ledger];
}

function loadFunctions() {
  const found = new Map();
  globalThis.CustomFunctions = { associate: (id, fn) => found.set(id, fn), Error };
  runInThisContext(readFileSync(new URL('../../dist/functions.js', import.meta.url), 'utf8'));
  return found;
}
