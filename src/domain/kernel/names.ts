/**
 * The form in which two spellings of one name are equal (contract §4): after Unicode NFKC, whatever the
 * case, without outer or repeated spaces and without characters that can't be seen.
 */
export function nameKey(name: string): string {
  // Most names are plain already, and a ledger of years has many.
  if (PLAIN.test(name)) return name.toLowerCase();
  const seen = name.normalize('NFKC').replace(UNSEEN, '').replace(/\s+/gu, ' ').trim();
  // Up and down again, since some letters have several small forms: Σ is σ or ς.
  return seen.toUpperCase().toLowerCase().normalize('NFKC');
}

/** Printable ASCII without outer or repeated spaces. */
const PLAIN = /^[!-~]+(?: [!-~]+)*$/u;

/** Joiners, marks of direction, soft hyphens and the like, and control characters that are no space. */
const UNSEEN = /\p{Default_Ignorable_Code_Point}|(?!\s)\p{Cc}|[\ufff9-\ufffb]/gu;

/** Orders lots (contract §4): letter by letter, as two names are compared. */
export function compareLots(a: string, b: string): number {
  const [one, other] = [nameKey(a), nameKey(b)];
  return one < other ? -1 : one > other ? 1 : 0;
}

const asPeopleOrder = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/**
 * Orders names as a person would: "Tide 2" before "Tide 10". Same on every machine. Only one and the
 * same name is equal, so that a sorted list never depends on the order in which it came.
 */
export function compareNames(a: string, b: string): number {
  return asPeopleOrder.compare(a, b) || (a < b ? -1 : a > b ? 1 : 0);
}

/** A name or cell as a sentence shows it: on one line, cut to a length that leaves room for the rest. */
export function shortened(cell: string | number | boolean): string {
  const shown = String(cell).slice(0, 1000).replace(/\s+/gu, ' ');
  return shown.length > LONGEST_SHOWN ? `${shown.slice(0, LONGEST_SHOWN)}…` : shown;
}

const LONGEST_SHOWN = 40;

/** The same in quotation marks. */
export const quoted = (cell: string | number | boolean): string =>
  `"${shortened(typeof cell === 'boolean' ? String(cell).toUpperCase() : cell)}"`;

/** Whether a cell's text is what a number looks like: it was typed or pasted where cells take text. */
export const isNumberAsText = (cell: unknown): cell is string =>
  typeof cell === 'string' && /^\s*[-+]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[-+]?\d+)?\s*$/iu.test(cell);

/** What is wrong with such a cell, after the cell. */
export const NUMBER_AS_TEXT = "which is text: set the cell's format to Number and type it again";

/** ` Did you mean "Teal"?` for the nearest known name, or "" where none is near. */
export function didYouMean(name: string, known: Iterable<string>): string {
  const nearest = nearestName(name, known);
  return nearest === undefined ? '' : ` Did you mean ${quoted(nearest)}?`;
}

/** Nobody mistypes a name of this length and means another; comparing two such would take long. */
const LONGEST_SLIP = 60;

/**
 * The known name fewest single-letter edits away, if few enough to be a slip; else the shortest that
 * holds the name as whole words, as "Harbour Fair" does "Harbour".
 */
export function nearestName(name: string, known: Iterable<string>): string | undefined {
  const wanted = nameKey(name);
  if (wanted.length > LONGEST_SLIP) return undefined;
  let best: string | undefined;
  let holding: string | undefined;
  // As many edits as there are letters would turn it into anything.
  const mostEdits = Math.min(wanted.length - 1, Math.max(2, Math.floor(wanted.length / 3)));
  let bestEdits = mostEdits + 1;
  for (const candidate of known) {
    // Names too long or too short to be near are passed over before their spelling is looked at.
    if (Math.abs(candidate.length - wanted.length) > LONGEST_SLIP) continue;
    const key = nameKey(candidate);
    if (` ${key} `.includes(` ${wanted} `) && candidate.length < (holding?.length ?? Infinity))
      holding = candidate;
    const edits = editDistance(wanted, key, bestEdits);
    if (edits < bestEdits) {
      best = candidate;
      bestEdits = edits;
    }
  }
  return best ?? holding;
}

/** Edits (insert, delete, replace) from one text to another; gives up at `limit`. */
function editDistance(from: string, to: string, limit: number): number {
  if (Math.abs(from.length - to.length) >= limit) return limit;
  let previous = Array.from({ length: to.length + 1 }, (_, index) => index);
  for (let i = 1; i <= from.length; i += 1) {
    const current = [i];
    for (let j = 1; j <= to.length; j += 1) {
      const replaced = (previous[j - 1] ?? 0) + (from[i - 1] === to[j - 1] ? 0 : 1);
      current.push(Math.min(replaced, (previous[j] ?? 0) + 1, (current[j - 1] ?? 0) + 1));
    }
    if (Math.min(...current) >= limit) return limit;
    previous = current;
  }
  return previous[to.length] ?? limit;
}
