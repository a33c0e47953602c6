import { Exact, zero } from '../kernel/exact.ts';
import { andThen, answer, type Result, wrong } from '../kernel/result.ts';
import { currencyDecimals } from '../money/currency.ts';
import { convert, type Liquid } from './convert.ts';
import { readFigure } from './typed-figure.ts';
import { findUnit, type Measure } from './units.ts';

/** What is typed in a place: what a number alone means there, and which units may stand beside one. */
export type AmountOf =
  | { readonly kind: 'number' }
  | { readonly kind: 'money'; readonly currency: string }
  | { readonly kind: 'time'; readonly unit: TimeUnit }
  /** In a measure; of a liquid, whose density leads from weight to volume. */
  | { readonly kind: 'quantity'; readonly unit: Measure; readonly of?: Liquid };

export type TimeUnit = 'minutes' | 'hours' | 'days';

/** An amount in the unit of its place. */
export interface TypedAmount {
  readonly value: Exact;
  /** How it was understood, such as "10 lb = 4,535.92 g"; undefined where a plain number was typed. */
  readonly conversion: string | undefined;
}

/**
 * Reads an amount of 0 or more as people type it: `9,50`, `$9`, `4h`, `10 lb`, `1 lb 4 oz`. Fails with a sentence that
 * says what to type where it can be read in two ways or can't be turned into the place's unit: nothing is guessed.
 */
export function readAmount(typed: string, amountOf: AmountOf): Result<TypedAmount> {
  const text = typed.normalize('NFKC').trim().replace(/\s+/gu, ' ');
  if (/^\d+(?:\.\d*)?$|^\.\d+$/u.test(text) && !isUnclearMoney(text, amountOf))
    return answer({ value: new Exact(text.replace(/\.$/u, '')), conversion: undefined });
  return andThen(valueOf(text, amountOf), (value) => {
    const shown = inWords(value, amountOf);
    const isSame = bare(text) === bare(shown);
    return answer({ value, conversion: isSame ? undefined : `${text} = ${shown}` });
  });
}

/** Without what parts thousands and words. */
const bare = (text: string): string => text.replace(/[ ,]/gu, '').toLowerCase();

function valueOf(text: string, amountOf: AmountOf): Result<Exact> {
  switch (amountOf.kind) {
    case 'number':
      return figureIn(text, PLAIN_NUMBER);
    case 'money':
      return moneyIn(text, amountOf.currency);
    case 'time':
      return andThen(partsOf(text, amountOf.unit), (parts) => timeIn(parts, amountOf.unit));
    case 'quantity':
      return andThen(partsOf(text, amountOf.unit), (parts) => quantityIn(parts, amountOf));
  }
}

/** The figure that a text is, or what to type. */
function figureIn(text: string, otherwise: string): Result<Exact> {
  const figure = readFigure(text);
  if (figure === undefined) return wrong(otherwise);
  if ('value' in figure) return answer(figure.value);
  const [thousands, decimals] = figure.either;
  return wrong(`Type ${thousands.toFixed()} or ${decimals.toFixed()}: it can be read as either.`);
}

/** Nobody pays thousandths: with three digits after it, a point may part thousands. */
const isUnclearMoney = (figure: string, amountOf: AmountOf): boolean =>
  amountOf.kind === 'money' &&
  currencyDecimals(amountOf.currency) < 3 &&
  /^[1-9]\d{0,2}\.\d{3}$/u.test(figure);

function moneyIn(text: string, currency: string): Result<Exact> {
  const figure = /\d[\d.,'’ ]*|[.,]\d+/u.exec(text)?.[0].trim() ?? '';
  const sign = text.replace(figure, '').trim();
  if (sign.includes('%')) return wrong(`Type the amount in ${currency}, not a percent.`);
  const isOwn = sign === '' || signsOf(currency).includes(sign.toUpperCase());
  const isOther = /^(?:\p{Sc}|[a-z]{3}|[a-z]{1,2}\p{Sc})$/iu.test(sign);
  if (!isOwn) {
    return wrong(
      isOther
        ? `Money is in ${currency} here, as Settings say. Type what it is in ${currency}.`
        : PLAIN_NUMBER,
    );
  }
  if (!isUnclearMoney(figure, { kind: 'money', currency })) return figureIn(figure, PLAIN_NUMBER);
  const places = currencyDecimals(currency);
  return wrong(
    `Type ${figure.replace('.', '')} or ${new Exact(figure).toFixed(places)}: it can be read as either.`,
  );
}

/** What may stand beside an amount of a currency: its code and its signs. */
function signsOf(currency: string): string[] {
  const shown = (['narrowSymbol', 'symbol'] as const).flatMap((currencyDisplay) =>
    new Intl.NumberFormat('en', { style: 'currency', currency, currencyDisplay })
      .formatToParts(0)
      .flatMap(({ type, value }) => (type === 'currency' ? [value.toUpperCase()] : [])),
  );
  return [currency, ...shown];
}

/** A figure with the word beside it; the word may be left out of the last, as in 1h30. */
interface Part {
  readonly figure: Exact;
  readonly word: string;
}

function partsOf(text: string, unit: string): Result<Part[]> {
  const otherwise = /\d ?\p{L}/u.test(text) ? aNumberOf(unit) : PLAIN_NUMBER;
  const parts: Part[] = [];
  let rest = text;
  while (rest !== '') {
    const found = /^(\d[\d.,'’ ]*|[.,]\d+)(\p{L}[\p{L} .]*)?/u.exec(rest);
    if (found === null) return wrong(otherwise);
    const [all, figure = '', word = ''] = found;
    const read = figureIn(figure.trim(), otherwise);
    if (!read.ok) return read;
    parts.push({ figure: read.value, word: word.trim() });
    rest = rest.slice(all.length).trim();
  }
  return parts.length === 0 ? wrong(otherwise) : answer(parts);
}

const minutesIn: ReadonlyMap<string, number> = new Map([
  ...['m', 'min', 'mins', 'minute', 'minutes'].map((word) => [word, 1] as const),
  ...['h', 'hr', 'hrs', 'hour', 'hours'].map((word) => [word, 60] as const),
  ...['d', 'day', 'days'].map((word) => [word, 1440] as const),
  ...['w', 'wk', 'week', 'weeks'].map((word) => [word, 10_080] as const),
]);

/** Hours and minutes lead to each other, days and weeks too; a day of work is no 24 hours. */
function timeIn(parts: readonly Part[], unit: TimeUnit): Result<Exact> {
  const ownMinutes = minutesIn.get(unit) ?? 1;
  let minutes = zero;
  for (const [at, { figure, word }] of parts.entries()) {
    const isRest = word === '' && at > 0 && at === parts.length - 1;
    const size = word === '' && at === 0 ? ownMinutes : isRest ? 1 : sizeOf(word);
    if (size === undefined || size >= 1440 !== (unit === 'days') || (isRest && unit === 'days'))
      return wrong(aNumberOf(unit));
    minutes = minutes.plus(figure.times(size));
  }
  return answer(toBeShown(minutes.div(ownMinutes)));
}

const sizeOf = (word: string): number | undefined =>
  minutesIn.get(word.toLowerCase().replace(/\.$/u, ''));

type Quantity = Extract<AmountOf, { readonly kind: 'quantity' }>;

const PIECES = /^(?:pcs?|pieces?|each|bars?)\.?$/iu;

function quantityIn(parts: readonly Part[], amountOf: Quantity): Result<Exact> {
  const otherwise = aNumberOf(amountOf.unit);
  let total = zero;
  for (const { figure, word } of parts) {
    const unit = unitOf(word, amountOf);
    if (unit === undefined || (word === '' && parts.length > 1)) return wrong(otherwise);
    const part = inOwnUnit(figure, unit, amountOf);
    if (!part.ok) return part;
    total = total.plus(part.value);
  }
  return answer(total);
}

/** The unit that a word names in its place; undefined where it names none. */
function unitOf(word: string, { unit }: Quantity): string | undefined {
  if (word === '') return unit;
  if (PIECES.test(word)) return 'each';
  return [word, word.replace(/\.$/u, '')].find((name) => findUnit(name) !== undefined);
}

function inOwnUnit(figure: Exact, from: string, { unit, of }: Quantity): Result<Exact> {
  const [source, target] = [findUnit(from)?.dimension, findUnit(unit)?.dimension];
  if (source === target)
    return andThen(convert(figure, from, unit), (value) =>
      answer(from.toLowerCase() === unit ? value : toBeShown(value)),
    );
  if (source === 'count' || target === 'count') return wrong(aNumberOf(unit));
  // Who measures in ml means ounces of volume as often as of weight.
  if (target === 'volume' && /^(?:oz|ounces?)\.?$/iu.test(from))
    return wrong(`Type ${figure.toFixed()} fl oz if it was measured, or its ml.`);
  const crossesMass = source === 'mass' || target === 'mass';
  const crossesDrops = source === 'drops' || target === 'drops';
  if (crossesMass && of?.densityGPerMl === undefined) return unknownWay(unit, of, 'Density g/ml');
  if (crossesDrops && of?.dropsPerMl === undefined) return unknownWay(unit, of, 'Drops per ml');
  return andThen(convert(figure, from, unit, of), (value) => answer(toBeShown(value)));
}

const unknownWay = (unit: string, of: Liquid | undefined, column: string): Result<never> =>
  wrong(
    of === undefined
      ? `Type it in ${unit}.`
      : `Type it in ${unit}, or fill in ${column} for ${of.name} in Materials.`,
  );

/**
 * What a conversion gives is taken as it is shown, so that what a maker says yes to is what is recorded: to
 * hundredths, and to six digits where those say more, as no bench scale does.
 */
const toBeShown = (value: Exact): Exact =>
  value.toSignificantDigits(Math.max(6, value.trunc().toFixed().length + 2));

/** An amount with its unit, as `readAmount` reads it. */
function inWords(value: Exact, amountOf: AmountOf): string {
  switch (amountOf.kind) {
    case 'number':
      return withThousands(value, 0);
    case 'money': {
      const minor = currencyDecimals(amountOf.currency);
      const places = Math.max(value.decimalPlaces(), minor);
      // Three digits after the point would be asked back.
      return `${withThousands(value, minor < 3 && places === 3 ? 4 : places)} ${amountOf.currency}`;
    }
    case 'time':
      return `${withThousands(value, 0)} ${amountOf.unit === 'minutes' ? 'min' : amountOf.unit}`;
    case 'quantity':
      return `${withThousands(value, 0)} ${amountOf.unit === 'each' ? 'pieces' : amountOf.unit}`;
  }
}

/** With its thousands parted by commas, but for one comma alone, which could be the sign before decimals. */
function withThousands(value: Exact, places: number): string {
  const [whole = '', decimals] = value.toFixed(Math.max(places, value.decimalPlaces())).split('.');
  if (decimals === undefined && whole.length <= 6) return whole;
  const parted = whole.replace(/\B(?=(?:\d{3})+$)/gu, ',');
  return decimals === undefined ? parted : `${parted}.${decimals}`;
}

const PLAIN_NUMBER = 'Type a plain number, 0 or more.';

const aNumberOf = (unit: string): string =>
  unit === 'each' ? PLAIN_NUMBER : `Type a number of ${unit}, 0 or more.`;
