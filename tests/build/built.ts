import { existsSync, readFileSync } from 'node:fs';
import { staleBuild } from '../../src/build/built-from.ts';
import { inProject } from '../support/in-project.ts';

// Whoever imports this looks at dist/: a stale one would pass tests of code that is no longer there.
const stale = staleBuild(inProject('.'));
if (stale !== undefined) throw new Error(stale);

/** Where a file stands that `npm run build` writes. */
export function builtFile(path: string): string {
  const file = inProject(path);
  if (!existsSync(file)) throw new Error(`${path} is not there: run "npm run build".`);
  return file;
}

/** Its text. */
export const built = (path: string): string => readFileSync(builtFile(path), 'utf8');
