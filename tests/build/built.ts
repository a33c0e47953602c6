import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** A path from the project's top folder. */
export const inProject = (path: string): string =>
  fileURLToPath(new URL(`../../${path}`, import.meta.url));

/** The text of a file that `npm run build` writes. */
export function built(path: string): string {
  const file = inProject(path);
  if (!existsSync(file)) throw new Error(`${path} is not there. Run "npm run build" first.`);
  return readFileSync(file, 'utf8');
}
