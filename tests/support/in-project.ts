import { fileURLToPath } from 'node:url';

/** A path from the project's top folder. */
export const inProject = (path: string): string =>
  fileURLToPath(new URL(`../../${path}`, import.meta.url));
