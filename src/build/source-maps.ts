import { existsSync, mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** Where the bundles' source maps lie, in the same folders as the bundles in dist/. */
export const MAPS = 'maps';

/** Moves the source maps, which nobody who runs the add-in needs, out of dist/; those of bundles that are gone go too. */
export function putMapsApart(project: string): void {
  const [dist, maps] = [join(project, 'dist'), join(project, MAPS)];
  for (const map of mapsIn(dist)) {
    mkdirSync(dirname(join(maps, map)), { recursive: true });
    renameSync(join(dist, map), join(maps, map));
  }
  for (const map of mapsIn(maps)) {
    if (!existsSync(join(dist, map.slice(0, -'.map'.length)))) rmSync(join(maps, map));
  }
}

const mapsIn = (folder: string): string[] =>
  existsSync(folder)
    ? readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((path) =>
        /\.(js|css)\.map$/u.test(path),
      )
    : [];
