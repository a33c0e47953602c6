import { compareNames, nameKey } from '../kernel/names.ts';

export interface ColourCount {
  readonly colour: string;
  readonly tiles: number;
}

/** Tiles of each colour in a mosaic pattern, most first, then by name. Blank cells are no tiles. */
export function countTiles(pattern: Iterable<string>): ColourCount[] {
  const counts = new Map<string, { colour: string; tiles: number }>();
  for (const cell of pattern) {
    const colour = cell.trim();
    if (colour === '') continue;
    const count = counts.get(nameKey(colour));
    if (count === undefined) counts.set(nameKey(colour), { colour, tiles: 1 });
    else count.tiles += 1;
  }
  return [...counts.values()].sort((a, b) => b.tiles - a.tiles || compareNames(a.colour, b.colour));
}
