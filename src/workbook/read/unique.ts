import { nameKey } from '../../domain/kernel/names.ts';

/**
 * Whether two of the names are one and the same by `nameKey`. A ledger has a name of its own for each
 * line, so a key is made only of those few whose hashes, by `hashOfName`, are equal.
 */
export function hasRepeats(names: readonly string[], hashes: Int32Array): boolean {
  // Open addressing, at most half full: each slot holds the place of a name, counted from 1.
  const slots = new Int32Array(2 ** Math.ceil(Math.log2(names.length * 2 + 1)));
  for (let place = 0; place < names.length; place += 1) {
    const hash = hashes[place] as number;
    let slot = hash & (slots.length - 1);
    for (let other = slots[slot] as number; other !== 0; other = slots[slot] as number) {
      if (hashes[other - 1] === hash && isSame(names[other - 1], names[place])) return true;
      slot = (slot + 1) & (slots.length - 1);
    }
    slots[slot] = place + 1;
  }
  return false;
}

const isSame = (a = '', b = ''): boolean => nameKey(a) === nameKey(b);

/** A hash that is the same for all spellings of a name; few others share it. */
export function hashOfName(name: string, isKey = false): number {
  let hash = 0;
  for (let i = 0; i < name.length; i += 1) {
    const letter = name.charCodeAt(i);
    // Spaces and letters beyond the plain ones differ in more than case.
    if (!isKey && (letter <= 0x20 || letter > 0x7e)) return hashOfName(nameKey(name), true);
    hash = Math.imul(hash ^ (letter | SMALL), 0x01000193);
  }
  return hash ^ (hash >>> 15);
}

/** The bit by which plain small letters differ from capitals. */
const SMALL = 0x20;
