import { readFileSync } from 'node:fs';
import { runInThisContext } from 'node:vm';
import { AS_OF, colours, designs, materials } from './workbook.js';

/** The built functions by id, loaded as a spreadsheet loads them. */
export function loadFunctions() {
  const found = new Map();
  globalThis.CustomFunctions = { associate: (id, fn) => found.set(id, fn), Error };
  runInThisContext(readFileSync(new URL('../../dist/functions.js', import.meta.url), 'utf8'));
  return found;
}

/** The numbers that native formulas work out too: on hand and value of each material. */
export const stockQuestions = materials.flatMap((name) => [
  ['ONHAND', name, 'book', AS_OF],
  ['STOCKVALUE', name, 'book', AS_OF],
]);

/** 1,500 cells that depend on BOOK, as a workbook of this size may hold. */
export const questions = [
  ...stockQuestions,
  ...materials.flatMap((name) => [
    ['UNITCOST', name, 'book', AS_OF],
    ['REORDERPOINT', name, 'book', AS_OF],
    ['ONHAND', name, 'book', AS_OF - 365],
  ]),
  ...designs.flatMap((name) => [
    ['COSTPERBAR', name, 'book', 12, AS_OF],
    ['CANMAKE', name, 'book'],
    ['ONHAND', name, 'book', AS_OF],
    ['STOCKVALUE', name, 'book', AS_OF],
    ['MATERIALS', name, 12, 'book'],
    ['MELTSHEET', name, 12, 'book'],
  ]),
  ...colours.flatMap((name) => [
    ['ONHAND', `${name} leftover`, 'book', AS_OF],
    ['STOCKVALUE', `${name} leftover`, 'book', AS_OF],
    ['UNITCOST', `${name} leftover`, 'book', AS_OF],
  ]),
  ...designs.slice(0, 20).map((name) => ['COSTLINES', name, 'book', 12, AS_OF]),
];

/** The answers to some questions about a book. */
export const ask = (functions, asked, book) =>
  asked.map(([id, ...args]) =>
    functions.get(id)(...args.map((arg) => (arg === 'book' ? book : arg))),
  );
