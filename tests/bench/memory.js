import { ask, loadFunctions, questions } from './functions.js';
import { tables } from './workbook.js';

/** Run by run.js with --expose-gc: memory of a book of so many moves, as multiples of its JSON. */
const moves = Number(process.argv[2]);
const jsonBytes = jsonOf(moves).length;
const functions = loadFunctions();

const start = inUse();
let ranges = JSON.parse(jsonOf(moves));
const parsed = inUse();
const before = process.resourceUsage().maxRSS;
const book = functions.get('BOOK')(...ranges);
const peak = Math.max(0, process.resourceUsage().maxRSS - before) * 1024;
ask(functions, questions, book);
const answered = inUse();
ranges = undefined;
const kept = inUse();
console.log(
  `  memory ÷ ${(jsonBytes / 1e6).toFixed(1)} MB of JSON: parsed arrays ${times(parsed - start)}; ` +
    `beside them BOOK grew the process by ${times(peak)} and kept, with 1,500 answers, ${times(answered - parsed)}; ` +
    `all that is kept when the arrays are gone ${times(kept - start)}`,
);

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
