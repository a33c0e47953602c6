import { ask, loadFunctions, questions } from './functions.js';
import { tables } from './workbook.js';

/** Run by run.js with --expose-gc: memory of a book of so many moves, as multiples of its JSON. */
const moves = Number(process.argv[2]);
const jsonBytes = jsonOf(moves).length;
const functions = loadFunctions();

// A small book first, so that the code itself and what it keeps for any book don't count.
const small = functions.get('BOOK')(...Object.values(tables(1000)));
ask(functions, questions, small);
const start = inUse();
const { parsed, peak, answered } = whileArraysAreHeld();
const kept = inUse();
console.log(
  `  memory ÷ ${(jsonBytes / 1e6).toFixed(1)} MB of JSON: parsed arrays ${times(parsed - start)}; ` +
    `beside them BOOK grew the process by ${times(peak)} and kept, with 1,500 answers, ${times(answered - parsed)}; ` +
    `all that is kept when the arrays are gone ${times(kept - start)}`,
);

function whileArraysAreHeld() {
  const ranges = JSON.parse(jsonOf(moves));
  const parsed = inUse();
  const before = process.memoryUsage().rss;
  const book = functions.get('BOOK')(...ranges);
  const peak = Math.max(0, process.memoryUsage().rss - before);
  ask(functions, questions, book);
  return { parsed, peak, answered: inUse(), ranges: ranges.length };
}

function jsonOf(count) {
  return JSON.stringify(Object.values(tables(count)));
}

function times(bytes) {
  return (bytes / jsonBytes).toFixed(1);
}

/** Bytes in use after everything let go is collected; the second time takes what the first only marked. */
function inUse() {
  globalThis.gc();
  globalThis.gc();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return heapUsed + arrayBuffers;
}
