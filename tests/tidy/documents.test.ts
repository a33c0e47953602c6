import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { NAMESPACE, questions } from '../../functions/records/index.ts';
import { inProject } from '../support/in-project.ts';

const textOf = (file: string): string => readFileSync(inProject(file), 'utf8');
const matches = (text: string, what: RegExp): string[] =>
  [...text.matchAll(what)].map(([, found = '']) => found);
const [developers, readme] = [textOf('DEVELOPERS.md'), textOf('README.md')];
/** What is decided for one place stands beside it. */
const rooms = ['domain', 'workbook', 'hosts', 'build'].map((room) => `src/${room}/README.md`);
const pages = [
  'DEVELOPERS.md',
  'README.md',
  ...rooms,
  '.github/CONTRIBUTING.md',
  '.github/CHANGELOG.md',
];
const links = pages.flatMap((page) =>
  matches(textOf(page), /\]\((?!https?:)([^)]+)\)/g).map((to) => [page, to] as const),
);
const { scripts, dependencies, devDependencies } = JSON.parse(textOf('package.json')) as Readonly<
  Record<'scripts' | 'dependencies' | 'devDependencies', Readonly<Record<string, string>>>
>;

/** Every file and folder of the repository's own. */
const paths = ['src', 'functions', 'taskpane', 'tests', '.config'].flatMap((folder) => [
  folder,
  ...readdirSync(inProject(folder), { recursive: true, encoding: 'utf8' }).map(
    (file) => `${folder}/${file}`,
  ),
]);

/** A path may leave out the folders before it, such as kernel/result.ts. */
const stands = (path: string): boolean => {
  const plain = path.replace(/\/$/, '');
  return paths.some((one) => one === plain || one.endsWith(`/${plain}`));
};

/** The map's paths: names before two spaces or more, each in the last folder that stands at the margin. */
function pathsOfMap(): string[] {
  let top = '';
  const map = /```\n(src\/domain\/[^]+?)```/.exec(developers)?.[1] ?? '';
  return map.split('\n').flatMap((line) => {
    const [, margin = '', names = ''] = /^( *)(\S.*?) {2,}\S/.exec(line) ?? [];
    if (margin === '' && names !== '') top = names;
    // Deeper lines go on with the sentence above.
    if (names === '' || margin.length > 2) return [];
    return names.split(' ').map((name) => (margin === '' ? name : `${top}${name}`));
  });
}

describe('DEVELOPERS.md and README.md', () => {
  const told = [developers, ...rooms.map(textOf)].join('\n');
  const words = matches(told, /`([^`\n]+)`/g).flatMap((span) => span.split(' '));
  const named = words.filter(
    (word) => /^[\w.-]+(\/[\w.-]*)+$|\.(ts|js|json)$/.test(word) && !word.startsWith('dist/'),
  );

  it.each([...new Set([...named, ...pathsOfMap()])])('%s is there', (path) => {
    expect(stands(path)).toBe(true);
  });

  it('name the folders of the map', () => {
    expect(pathsOfMap().length).toBeGreaterThan(30);
  });

  it.each(links)('%s leads to %s', (page, to) => {
    expect(existsSync(inProject(join(dirname(page), to)))).toBe(true);
  });

  it.each([...new Set(matches(developers + readme, /`npm run ([\w-]+)/g))])(
    'npm run %s runs',
    (name) => {
      expect(scripts).toHaveProperty(name);
    },
  );

  it('README’s table of functions is that of their records', () => {
    const rows = questions.map(([asked, group]) => {
      const names = Object.keys(group).map((id) => `\`${NAMESPACE}.${id}\``);
      return `${asked} | ${names.join(', ')}`;
    });
    const [, table = ''] = /\| ask .*\n\|[- |]+\|\n((?:\|.*\|\n)+)/.exec(readme) ?? [];
    expect(matches(table, /^\| (.*) \|$/gm).map((row) => row.replace(/ +/g, ' ').trim())).toEqual(
      rows,
    );
  });
});

it('the manifest bears the package’s version', () => {
  const { version } = JSON.parse(textOf('package.json')) as { readonly version: string };
  expect(matches(textOf('manifest.xml'), /<Version>([^<]+)</g)).toEqual([`${version}.0`]);
});

describe('the table of dependencies', () => {
  const rows = matches(developers, /## Dependencies\n([^]+)/g)
    .flatMap((text) => matches(text, /^\|(.+)\|$/gm))
    .map((row) => row.split('|').map((cell) => cell.trim()))
    .slice(2)
    .flatMap(([names = '', licence = '']) => names.split(', ').map((name) => [name, licence]));

  it('names every package, and no other', () => {
    const ours = Object.keys({ ...dependencies, ...devDependencies });
    expect(rows.map(([name]) => name).sort()).toEqual(ours.sort());
  });

  it.each(rows)('%s is under the licence %s', (name, licence) => {
    const { license } = JSON.parse(textOf(`node_modules/${name}/package.json`)) as {
      readonly license: string;
    };
    // A package that names a file instead of a licence has terms of its own.
    expect(license === 'LICENSE' ? 'its vendor’s own' : license).toBe(licence);
  });
});
