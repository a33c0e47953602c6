import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { MAPS } from './source-maps.ts';

interface Package {
  readonly name: string;
  readonly version: string;
  readonly license?: string;
  readonly author?: string | { readonly name: string };
}

/** A bundled source inside a package, up to the package's own folder. */
const PACKAGE_FOLDER = /^webpack:\/\/[^/]*\/\.\/(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//u;

/**
 * The notices that go out with `dist/`: every package of which the bundles hold code, as their source
 * maps tell, with its licence and the licence's text: the package's own, or else the standard one.
 */
export function thirdPartyNotices(project: string): string {
  const home = join(project, MAPS);
  // The tools in build/ stay at home.
  const maps = readdirSync(home, { recursive: true, encoding: 'utf8' }).filter(
    (path) => path.endsWith('.js.map') && dirname(path) !== 'build',
  );
  const folders = new Set<string>();
  for (const map of maps) {
    const text = readFileSync(join(home, map), 'utf8');
    const { sources } = JSON.parse(text) as { sources: readonly string[] };
    for (const source of sources) {
      const folder = PACKAGE_FOLDER.exec(source)?.[1];
      if (folder !== undefined) folders.add(folder);
    }
  }
  const notices = [...folders].map((folder) => noticeOf(project, join(project, folder))).sort();
  return [
    'Pour Ledger is built with these packages. Each keeps its own licence.\n',
    ...notices,
  ].join(`\n${'-'.repeat(72)}\n\n`);
}

function noticeOf(project: string, folder: string): string {
  const { name, version, license, author } = JSON.parse(
    readFileSync(join(folder, 'package.json'), 'utf8'),
  ) as Package;
  const texts = readdirSync(folder)
    .filter((file) => /^(licen[cs]e|notice)/iu.test(file))
    .map((file) => readFileSync(join(folder, file), 'utf8').trim());
  if (texts.length === 0) texts.push(standardText(project, license ?? '', holderOf(name, author)));
  return [`${name} ${version} (${license ?? 'see below'})`, ...texts].join('\n\n') + '\n';
}

/** The licence in its standard words, for a package that names it and brings no text. Throws for any other licence. */
function standardText(project: string, license: string, holder: string): string {
  // The Apache licence names no holder, so ours says the same.
  if (license === 'Apache-2.0') return readFileSync(join(project, 'LICENSE'), 'utf8').trim();
  if (!['MIT', 'ISC'].includes(license)) {
    throw new Error(`No text is known for the licence "${license}".`);
  }
  const text = readFileSync(join(project, `src/build/licences/${license}.txt`), 'utf8');
  return `Copyright (c) ${holder}\n\n${text.trim()}`;
}

const holderOf = (name: string, author: Package['author']): string =>
  (typeof author === 'string' ? author.replace(/\s*<.*$/u, '') : author?.name) ??
  `the authors of ${name}`;
