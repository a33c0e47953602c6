import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Written as webpack begins, so that a source changed meanwhile is known; an empty file. */
const BEGAN = 'maps/build-began';

/** What a whole build ends with: each source's path and hash. In maps/, so it is never shipped. */
const BUILT_FROM = 'maps/built-from.json';

const FOLDERS = ['src', 'functions', 'taskpane'];
const FILES = [
  'manifest.xml',
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'webpack.config.js',
];

/** What stands beside the sources and goes into no build: papers, and README's pictures. */
const NOT_BUILT = /\.md$|^src\/build\/pictures\/.*\.png$/u;

/** Notes which sources the build is of, but for those changed since it began: of them it may hold either state. */
export function noteSources(project: string): void {
  const began = statSync(join(project, BEGAN)).mtimeMs;
  const built = sourcesIn(project).filter((path) => statSync(join(project, path)).mtimeMs < began);
  writeFileSync(join(project, BUILT_FROM), JSON.stringify(hashesOf(project, built), undefined, 1));
}

/**
 * What is wrong with dist/ and the command that mends it; undefined where it was built from the very sources that are
 * there now. By content: what a clone or a worktree says of times means nothing.
 */
export function staleBuild(project: string): string | undefined {
  const noted = join(project, BUILT_FROM);
  if (!existsSync(noted)) return 'dist/ is not of one whole build: run "npm run build".';
  const then = JSON.parse(readFileSync(noted, 'utf8')) as Record<string, string>;
  const now = hashesOf(project, sourcesIn(project));
  const changed = Object.keys({ ...now, ...then }).find((path) => now[path] !== then[path]);
  return changed && `dist/ is older than ${changed}: run "npm run build".`;
}

function sourcesIn(project: string): string[] {
  const below = FOLDERS.filter((folder) => existsSync(join(project, folder))).flatMap((folder) =>
    readdirSync(join(project, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map(({ parentPath, name }) => join(parentPath, name).slice(join(project, '/').length)),
  );
  return [...FILES, ...below.map((path) => path.replaceAll('\\', '/'))]
    .filter((path) => !NOT_BUILT.test(path))
    .sort();
}

const hashesOf = (project: string, paths: readonly string[]): Record<string, string> =>
  Object.fromEntries(
    paths.map((path) => [
      path,
      createHash('sha256')
        .update(readFileSync(join(project, path)))
        .digest('base64url'),
    ]),
  );
