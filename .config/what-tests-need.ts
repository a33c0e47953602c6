import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';

/** What a test file needs: nothing but the sources; what `npm run build` writes; or a browser, and perhaps that too. */
export type Need = 'unit' | 'built' | 'browser';

/** What brings a need along, for each file that imports it, be it by way of others. */
const BRINGS: Readonly<Record<string, Need>> = {
  'tests/build/built.ts': 'built',
  'tests/support/chromium.ts': 'browser',
};

/** The test files below `root`/tests by what they need, read off what they import: there is no list to keep. */
export function testsByNeed(root: string): Readonly<Record<Need, readonly string[]>> {
  const found: Record<Need, string[]> = { unit: [], built: [], browser: [] };
  const names = readdirSync(join(root, 'tests'), { recursive: true, encoding: 'utf8' });
  for (const name of names.filter((each) => each.endsWith('.test.ts')).sort()) {
    const file = join('tests', name);
    const needs = new Set(reached(root, file).map((other) => BRINGS[other]));
    found[needs.has('browser') ? 'browser' : needs.has('built') ? 'built' : 'unit'].push(file);
  }
  return found;
}

const IMPORT = /^(?:import|export) (?!type )(?:[^;']* from )?'(\.[^']+\.ts)';$/gmu;

/** The files of tests/ that a file imports, itself and those of its imports too. */
function reached(root: string, file: string, known = new Set<string>()): string[] {
  if (known.has(file)) return [];
  known.add(file);
  const text = readFileSync(join(root, file), 'utf8');
  for (const [, path = ''] of text.matchAll(IMPORT)) {
    const other = normalize(join(dirname(file), path));
    if (other.startsWith('tests/')) reached(root, other, known);
  }
  return [...known];
}
