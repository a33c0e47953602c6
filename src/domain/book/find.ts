import { misreadHint } from './batch-code.ts';
import { one } from '../kernel/exact.ts';
import { didYouMean, nameKey, quoted } from '../kernel/names.ts';
import { answer, type Result, wrong, wrongBecause } from '../kernel/result.ts';
import { convert } from '../measure/convert.ts';
import type { Batch, Book, Design, Fair, Item, Material, Mold, Named, Soap } from './book.ts';
import type { BarSet, Partner, SellingPlace } from './trade.ts';

/** The tables that names are looked up in; a book under construction has them too. */
export type Catalogue = Pick<Book, 'materials' | 'molds' | 'colours' | 'designs' | 'places'>;

const LEFTOVER = ' leftover';
const TIMES = ' × ';
const SECONDS = ' seconds';
const AT = ' @ ';

export const leftoverName = (soap: Soap): string => `${soap.name}${LEFTOVER}`;
export const spareName = (soap: Soap, mold: Mold): string => `${soap.name}${TIMES}${mold.name}`;
export const secondsName = (design: Design): string => `${design.name}${SECONDS}`;
export const placedName = (design: Design, place: SellingPlace): string =>
  `${design.name}${AT}${place.name}`;

export const findMaterial = (book: Catalogue, name: string): Result<Material> =>
  find(book.materials, name, 'a material in Materials', byName);
export const findMold = (book: Catalogue, name: string): Result<Mold> =>
  find(book.molds, name, 'a mold in Molds', byName);
export const findDesign = (book: Catalogue, name: string): Result<Design> =>
  find(book.designs, name, 'a design in Designs', byName);
export const findFair = (fairs: Named<Fair>, name: string): Result<Fair> =>
  find(fairs, name, 'a fair in Fairs', ({ fair }) => fair);
export const findPlace = (places: Named<SellingPlace>, name: string): Result<SellingPlace> =>
  find(places, name, 'a place in Places', byName);
export const findSet = (sets: Named<BarSet>, name: string): Result<BarSet> =>
  find(sets, name, 'a set in Sets', byName);
export const findPartner = (partners: Named<Partner>, name: string): Result<Partner> =>
  find(partners, name, 'a partner in Partners', byName);
export function findBatch(batches: Named<Batch>, id: string): Result<Batch> {
  const found = find(batches, id, 'a batch in Batches', ({ batch }) => batch);
  return found.ok ? found : wrongBecause(() => `${found.failure.sentence}${misreadHint(id)}`);
}

/** A colour, or a base taken as soap just as it is. */
export function findSoap(book: Catalogue, name: string): Result<Soap> {
  const colour = book.colours.get(nameKey(name));
  if (colour !== undefined) return answer(colour);
  const material = book.materials.get(nameKey(name));
  if (material?.kind === 'base') return answer(soapOfBase(material));
  if (material !== undefined) {
    return wrong(
      `"${material.name}" has the kind ${material.kind} and is not a colour in Colours or a base in Materials. Name a base, or a colour whose recipe takes it.`,
    );
  }
  return wrongBecause(
    () =>
      `${quoted(name)} is not a colour in Colours or a base in Materials.${didYouMean(name, soapNames(book))}`,
  );
}

/** Uncoloured soap: the base and nothing else. */
function soapOfBase(base: Material): Soap {
  const ingredient = { kind: 'material', material: base } as const;
  // A base is weighed or measured, never counted, so there is always a way.
  const perG = convert(one, 'g', base.unit, base);
  const stockPerG = perG.ok ? perG.value : one;
  const line = { ingredient, amount: one, measure: 'g', g: one, stockPerG } as const;
  return { name: base.name, lines: [line], recipeG: one, base };
}

/**
 * Any stock item by name: a material, "Teal leftover", "Teal × Small tiles", a design's bars, its seconds
 * ("Tide Pool seconds") or those that lie at a place ("Tide Pool @ Harbour shop").
 */
export function findItem(book: Catalogue, name: string): Result<Item> {
  const key = nameKey(name);
  const material = book.materials.get(key);
  if (material !== undefined) return answer(itemOfMaterial(material));
  const design = book.designs.get(key);
  if (design !== undefined) return answer(itemOfBars(design));
  const made = findMade(book, name);
  if (made !== undefined) return answer(made);
  return wrongBecause(
    () =>
      `${quoted(name)} is not a stock item: not in Materials or Designs, nor a colour's "leftover", "colour × mold", a design's "seconds" or "design @ place".${didYouMean(name, itemNames(book, name))}`,
  );
}

export const itemOfMaterial = (material: Material): Item => ({
  kind: 'material',
  name: material.name,
  unit: material.unit,
  material,
});
export const itemOfBars = (design: Design): Item => ({
  kind: 'bars',
  name: design.name,
  unit: 'each',
  design,
});
export const itemOfSeconds = (design: Design): Item => ({
  kind: 'seconds',
  name: secondsName(design),
  unit: 'each',
  design,
});
export const itemAtPlace = (design: Design, place: SellingPlace): Item => ({
  kind: 'placed',
  name: placedName(design, place),
  unit: 'each',
  design,
  place,
});
export const itemOfLeftover = (soap: Soap): Item => ({
  kind: 'leftover',
  name: leftoverName(soap),
  unit: 'g',
  soap,
});
export const itemOfSpare = (soap: Soap, mold: Mold): Item => ({
  kind: 'spare',
  name: spareName(soap, mold),
  unit: 'each',
  soap,
  mold,
});

/** What was made, by the name that stock of it is kept under; a design's own name is none of them. */
export const findMade = (book: Catalogue, name: string): Item | undefined =>
  readingsOfMade(book, name)[0];

/** All that such a name can be read as: a book in order has at most one. */
export function readingsOfMade(book: Catalogue, name: string): readonly Item[] {
  const key = nameKey(name);
  return [
    ...findLeftover(book, key),
    ...findSpares(book, key),
    ...findSeconds(book, key),
    ...findPlaced(book, key),
  ];
}

function findSeconds(book: Catalogue, key: string): Item[] {
  if (!key.endsWith(SECONDS)) return [];
  const design = book.designs.get(key.slice(0, -SECONDS.length));
  return design === undefined ? [] : [itemOfSeconds(design)];
}

/** A design's own name may hold the sign, so every place where it stands is tried. */
function findPlaced(book: Catalogue, key: string): Item[] {
  const found: Item[] = [];
  if (book.places.size === 0) return found;
  for (let at = key.indexOf(AT); at >= 0; at = key.indexOf(AT, at + 1)) {
    const design = book.designs.get(key.slice(0, at));
    const place = book.places.get(key.slice(at + AT.length));
    if (design !== undefined && place !== undefined) found.push(itemAtPlace(design, place));
  }
  return found;
}

function findLeftover(book: Catalogue, key: string): Item[] {
  if (!key.endsWith(LEFTOVER)) return [];
  const soap = findSoap(book, key.slice(0, -LEFTOVER.length));
  return soap.ok ? [itemOfLeftover(soap.value)] : [];
}

function findSpares(book: Catalogue, key: string): Item[] {
  const found: Item[] = [];
  // A colour's own name may hold the sign, so every place where it stands is tried.
  for (let at = key.indexOf(TIMES); at >= 0; at = key.indexOf(TIMES, at + 1)) {
    const soap = findSoap(book, key.slice(0, at));
    const mold = book.molds.get(nameKey(key.slice(at + TIMES.length)));
    if (soap.ok && mold !== undefined) found.push(itemOfSpare(soap.value, mold));
  }
  return found;
}

/** Soaps whose own names hold the sign of spare pieces: only theirs can be read in two ways. */
export function soapsWithSign(book: Catalogue): Soap[] {
  const names = [...soapNames(book)].filter((name) => nameKey(name).includes(TIMES));
  return names.flatMap((name) => {
    const soap = findSoap(book, name);
    return soap.ok ? [soap.value] : [];
  });
}

function* soapNames(book: Catalogue): Iterable<string> {
  for (const colour of book.colours.values()) yield colour.name;
  for (const material of book.materials.values()) if (material.kind === 'base') yield material.name;
}

function* itemNames(book: Catalogue, like: string): Iterable<string> {
  for (const material of book.materials.values()) yield material.name;
  for (const design of book.designs.values()) yield design.name;
  for (const soap of soapNames(book)) yield `${soap}${LEFTOVER}`;
  if (nameKey(like).includes('second'))
    for (const design of book.designs.values()) yield secondsName(design);
  if (like.includes('@')) yield* placedNames(book);
  if (SPARE_LIKE.test(like)) yield* spareNames(book);
}

function* placedNames(book: Catalogue): Iterable<string> {
  for (const design of book.designs.values())
    for (const place of book.places.values()) yield placedName(design, place);
}

/** What may be meant for a spare's name, though its sign is an x or a star. */
const SPARE_LIKE = /×|\s[x*]\s/iu;

function* spareNames(book: Catalogue): Iterable<string> {
  for (const soap of soapNames(book))
    for (const mold of book.molds.values())
      if (mold.makes !== 'bars') yield `${soap}${TIMES}${mold.name}`;
}

const byName = ({ name }: { readonly name: string }): string => name;

function find<T>(
  things: Named<T>,
  name: string,
  what: string,
  nameOf: (thing: T) => string,
): Result<T> {
  const found = things.get(nameKey(name));
  if (found !== undefined) return answer(found);
  return wrongBecause(
    () => `${quoted(name)} is not ${what}.${didYouMean(name, [...things.values()].map(nameOf))}`,
  );
}
