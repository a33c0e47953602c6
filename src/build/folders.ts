import { fileURLToPath } from 'node:url';

/** The built tools stand in dist/build/, two folders below the project's own. */
const project = new URL('../../', import.meta.url);

/** A path inside the project, from its top folder. */
export const inProject = (path: string): string => fileURLToPath(new URL(path, project));
