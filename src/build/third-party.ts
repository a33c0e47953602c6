import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

interface Package {
  readonly name: string;
  readonly version: string;
  readonly license?: string;
}

/** A bundled source inside a package, up to the package's own folder. */
const PACKAGE_FOLDER = /^webpack:\/\/[^/]*\/\.\/(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//u;

/**
 * The notices that go out with `dist/`: every package of which the bundles hold code, as their source
 * maps tell, with its licence and the licence's text where the package brings one.
 */
export function thirdPartyNotices(project: string): string {
  const dist = join(project, 'dist');
  // The tools in build/ stay at home.
  const maps = readdirSync(dist, { recursive: true, encoding: 'utf8' }).filter(
    (path) => path.endsWith('.js.map') && dirname(path) !== 'build',
  );
  const folders = new Set<string>();
  for (const map of maps) {
    const text = readFileSync(join(dist, map), 'utf8');
    const { sources } = JSON.parse(text) as { sources: readonly string[] };
    for (const source of sources) {
      const folder = PACKAGE_FOLDER.exec(source)?.[1];
      if (folder !== undefined) folders.add(folder);
    }
  }
  const notices = [...folders].map((folder) => noticeOf(join(project, folder))).sort();
  return [
    'Pour Ledger is built with these packages. Each keeps its own licence.\n',
    ...notices,
  ].join(`\n${'-'.repeat(72)}\n\n`);
}

function noticeOf(folder: string): string {
  const { name, version, license } = JSON.parse(
    readFileSync(join(folder, 'package.json'), 'utf8'),
  ) as Package;
  const texts = readdirSync(folder)
    .filter((file) => /^(licen[cs]e|notice)/iu.test(file))
    .map((file) => readFileSync(join(folder, file), 'utf8').trim());
  return [`${name} ${version} (${license ?? 'see below'})`, ...texts].join('\n\n') + '\n';
}
