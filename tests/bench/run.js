import { execFileSync, spawnSync } from 'node:child_process';
import { cpus, loadavg } from 'node:os';
import { fileURLToPath } from 'node:url';
import { ask, loadFunctions, questions, stockQuestions } from './functions.js';
import { hashingPass } from './hashing-pass.js';
import { layouts, measureNative } from './native.js';
import { EDIT, EDITS } from './office-macro.js';
import { Figures, ROUNDS, timed } from './rounds.js';
import { editedMove, tables } from './workbook.js';

/**
 * `npm run bench`: the built functions on invented workbooks, as ratios to JSON.parse of the same
 * cells, to one hashing pass over them, and to native formulas. Each round parses its arrays afresh
 * and differs in one move from the one before.
 */
// `npm run bench -- workbench`, `-- pane`, `-- answers` or `-- plan` measures that instead, and nothing else.
if (['workbench', 'pane', 'answers', 'plan'].includes(process.argv[2] ?? '')) {
  await import(`./${process.argv[2]}.js`);
  process.exit();
}

const functions = loadFunctions();
console.log(
  `${cpus().length} × ${cpus()[0]?.model}, load ${loadavg()[0]?.toFixed(1)}, Node ${process.version}; ${ROUNDS} rounds, milliseconds and ratios.`,
);
const sizes = [1_000, 10_000, 100_000];
const measured = new Map(sizes.map((moves) => [moves, measure(moves)]));
const exponent = (name) =>
  Math.log10(measured.get(100_000).min(name) / measured.get(10_000).min(name)).toFixed(2);
console.log(
  `\nGrowth exponent from 10k to 100k moves (of the least): BOOK ${exponent('BOOK')}, BOOK and 1,500 answers ${exponent('BOOK + 1,500 answers')}, an edit ${exponent('edit: BOOK + 1,500 answers')}`,
);
for (const moves of [10_000, 100_000]) compareWithNative(moves);

function measure(moves) {
  const json = JSON.stringify(Object.values(tables(moves)));
  console.log(`\n${moves} moves, ${(json.length / 1e6).toFixed(1)} MB of JSON`);
  const figures = new Figures();
  for (let round = 0; round < ROUNDS; round += 1) figures.add(oneRound(json, round));
  figures.print([
    ['BOOK', 'JSON.parse'],
    ['BOOK', 'one hashing pass'],
  ]);
  const memory = fileURLToPath(new URL('memory.js', import.meta.url));
  process.stdout.write(
    execFileSync(process.execPath, ['--expose-gc', memory, String(moves)], { encoding: 'utf8' }),
  );
  return figures;
}

/** A book the functions have not met, all its answers, then the same after one edited move. */
function oneRound(json, round) {
  const [parseMs, ranges] = timed(() => JSON.parse(json));
  // Another catalogue and another move: nothing can be taken over from the round before.
  ranges[1][1][4] += (round + 1) / 100;
  ranges[3][editedMove(ranges[3])][4] -= round + 1;
  const [hashMs] = timed(() => hashingPass(ranges));
  const [bookMs, book] = timed(() => functions.get('BOOK')(...ranges));
  const [askMs] = timed(() => ask(functions, questions, book));
  const [againMs] = timed(() => ask(functions, questions, book));
  const edited = JSON.parse(json);
  edited[1][1][4] += (round + 1) / 100;
  edited[3][editedMove(edited[3])][4] -= round + 1.5;
  const [editMs] = timed(() => ask(functions, questions, functions.get('BOOK')(...edited)));
  const [handOverMs] = timed(() => JSON.parse(JSON.stringify(ranges)));
  return {
    'JSON.parse': parseMs,
    'one hashing pass': hashMs,
    BOOK: bookMs,
    '1,500 answers': askMs,
    '1,500 answers asked again (calls alone)': againMs,
    'BOOK + 1,500 answers': bookMs + askMs,
    'edit: BOOK + 1,500 answers': editMs,
    'handing the ranges over as JSON, there and back': handOverMs,
  };
}

function compareWithNative(moves) {
  if (spawnSync('soffice', ['--version']).error !== undefined) {
    console.log('\nLibreOffice is not here, so nothing is compared with native formulas.');
    return;
  }
  const data = tables(moves);
  const ours = ourNumbers(data);
  const { stdout } = spawnSync('soffice', ['--version'], { encoding: 'utf8' });
  console.log(
    `\n${moves} moves: on hand and value of 200 materials. The native engine is ${stdout.trim()} on ${cpus().length} cores; nothing is said of Excel.`,
  );
  console.log(
    `  ours: parse + BOOK + 400 answers ${ours.wholeMs.toFixed(1)} ms, an edit ${ours.editMs.toFixed(1)} ms (least of ${ROUNDS})`,
  );
  for (const [name, layout] of Object.entries(layouts)) {
    const native = measureNative(data, layout);
    checkEqual(native.before, ours.before, `${name}, before the edit`);
    checkEqual(native.after, ours.after, `${name}, after it`);
    const [recalc, edit] = [Math.min(...native.recalcMs), Math.min(...native.editMs)];
    console.log(
      `  ${name}: hard recalculation ${recalc} ms (${(recalc / ours.wholeMs).toFixed(1)}× ours; ${native.recalcMs.join(', ')}), an edit ${edit} ms (${(edit / ours.editMs).toFixed(2)}× ours; ${native.editMs.join(', ')}), equal to 1e-9`,
    );
  }
}

/** Ours, with the ten edits that the office makes too. */
function ourNumbers(data) {
  const json = JSON.stringify(Object.values(data));
  const whole = [];
  const edits = [];
  let [before, after] = [[], []];
  for (let round = 0; round < ROUNDS; round += 1) {
    const ranges = JSON.parse(json);
    ranges[1][1][3] += round + 1;
    const text = JSON.stringify(ranges);
    const [wholeMs, answers] = timed(() => answersTo(JSON.parse(text)));
    whole.push(wholeMs);
    before = answers;
    ranges[3][editedMove(ranges[3])][4] -= EDITS * EDIT;
    const [editMs, again] = timed(() => answersTo(ranges));
    edits.push(editMs);
    after = again;
  }
  return { wholeMs: Math.min(...whole), editMs: Math.min(...edits), before, after };
}

function answersTo(ranges) {
  return ask(functions, stockQuestions, functions.get('BOOK')(...ranges));
}

function checkEqual(native, ours, what) {
  native.forEach((number, at) => {
    const off = Math.abs(number - ours[at]);
    if (!(off <= 1e-9 * Math.max(1, Math.abs(number))))
      throw new Error(`${what}: ${stockQuestions[at]} is ${ours[at]}, natively ${number}.`);
  });
  if (native.length !== ours.length) throw new Error(`${what}: ${native.length} native numbers.`);
}
