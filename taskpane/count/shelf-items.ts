import type { Book, Item } from '../../src/domain/book/book.ts';
import { findItem, itemOfMaterial } from '../../src/domain/book/find.ts';
import type { materialKinds } from '../../src/domain/book/words.ts';
import type { Exact } from '../../src/domain/kernel/exact.ts';
import { compareNames, nameKey } from '../../src/domain/kernel/names.ts';
import { andThen, answer, type Result } from '../../src/domain/kernel/result.ts';
import { madeItems } from '../../src/domain/reorder/stock-list.ts';
import { quantityOfItem, readTyped, readWhole } from '../typed-number.ts';
import { typedAt } from '../task/typed.ts';
import type { CountDraft } from './draft.ts';

/** Kinds of item in the order of a shelf, as the maker calls them. */
export const shelfKinds = {
  base: 'Bases',
  colourant: 'Colourants',
  fragrance: 'Fragrances',
  extra: 'Extras',
  packaging: 'Packaging',
  leftover: 'Leftover soap',
  spare: 'Spare tiles and embeds',
  bars: 'Bars',
  seconds: 'Seconds',
  placed: 'Bars at places',
} as const satisfies Record<
  (typeof materialKinds)[number] | Exclude<Item['kind'], 'material'>,
  string
>;

export type ShelfKind = keyof typeof shelfKinds;

/** Items of one kind, by name. */
export interface ShelfGroup {
  readonly kind: ShelfKind;
  readonly title: string;
  readonly items: readonly Item[];
}

/**
 * Everything that can be counted, whether or not the ledger thinks there is any: a blind count shows
 * nothing of what to expect.
 */
export function shelfGroups(book: Book, draft: CountDraft): ShelfGroup[] {
  const items = new Map<string, Item>();
  const add = (item: Item): void => void items.set(nameKey(item.name), item);
  for (const material of book.materials.values()) add(itemOfMaterial(material));
  for (const item of madeItems(book)) add(item);
  for (const name of draft.also) {
    const found = findItem(book, name);
    if (found.ok) add(found.value);
  }
  const sorted = [...items.values()].sort((a, b) => compareNames(a.name, b.name));
  return Object.entries(shelfKinds).flatMap(([key, title]) => {
    const kind = key as ShelfKind;
    const ofKind = sorted.filter((item) => kindOf(item) === kind);
    return ofKind.length === 0 ? [] : [{ kind, title, items: ofKind }];
  });
}

const kindOf = (item: Item): ShelfKind =>
  item.kind === 'material' ? item.material.kind : item.kind;

/** What was counted of one item, or undefined where nothing was typed. */
export function countOf(item: Item, draft: CountDraft): Result<Exact> | undefined {
  const typed = typedAt(draft.counts, item.name);
  if (typed === undefined || typed.trim() === '') return undefined;
  const read = readTyped(typed, item.name, quantityOfItem(item));
  if (item.unit !== 'each' || item.kind === 'material') return read;
  return andThen(readWhole(typed, item.name, 0), () => read);
}

/** Everything counted, or the first figure that can't be read. */
export function countsOf(
  book: Book,
  draft: CountDraft,
): Result<{ readonly item: Item; readonly counted: Exact }[]> {
  const counts: { item: Item; counted: Exact }[] = [];
  for (const { items } of shelfGroups(book, draft)) {
    for (const item of items) {
      const counted = countOf(item, draft);
      if (counted === undefined) continue;
      if (!counted.ok) return counted;
      counts.push({ item, counted: counted.value });
    }
  }
  return answer(counts);
}
