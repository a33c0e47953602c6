import { readdirSync, readFileSync, statSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inProject } from '../support/in-project.ts';

const PAGE = 'tests/REFERENCES.md';
const ID = /§?[A-Z]?\d+[a-e]?/gu;
/** Ids after the word, in one sentence: "REFERENCES G10, G11", "REFERENCES §7a". */
const CITED = /\bREFERENCES ((?:§?[A-Z]?\d+[a-e]?(?:, | and )?)+)/gu;
/** What a fresh clone brings itself or leaves out. */
const OTHERS = new Set(['node_modules', 'dist', 'maps', '.git', 'package-lock.json']);

const textOf = (file: string): string => readFileSync(inProject(file), 'utf8');
const matches = (text: string, what: RegExp): string[] =>
  [...text.matchAll(what)].map(([whole, group]) => group ?? whole);

const files = readdirSync(inProject('.'))
  .filter((name) => !OTHERS.has(name))
  .flatMap((name) =>
    statSync(inProject(name)).isDirectory()
      ? readdirSync(inProject(name), { recursive: true, encoding: 'utf8' }).map(
          (file) => `${name}/${file}`,
        )
      : [name],
  )
  .filter((file) => /\.(?:[cm]?[jt]s|md|json|ya?ml|html|css|xml)$/u.test(file));

const citedIn = (file: string): string[] =>
  // A comment may break its line between two ids.
  matches(textOf(file).replace(/\n\s*(?:\/\/|\*)/gu, ''), CITED).flatMap((ids) => matches(ids, ID));

const page = textOf(PAGE);
const inPage = new Set([
  ...matches(page, /^\| ([A-Z]\d+) +\|/gmu),
  ...matches(page, /^\*\*([A-Z]\d+)\*\*/gmu),
  ...matches(page, /^#+ (\d+[a-e]?) /gmu).map((section) => `§${section}`),
]);

/** The page's "Held by `file`: ids; `file`: ids." as pairs. */
const held = matches(
  page.replace(/\n(?!\n)/gu, ' '),
  /Held by (.+?\.)(?: {1,2}\S| *\n|$)/gu,
).flatMap((list) =>
  [...list.matchAll(/`([^`]+)`: ([^;.]+)/gu)].map(
    ([, file = '', ids = '']) => [file, matches(ids, ID)] as const,
  ),
);

const code = files.filter((file) => file.endsWith('.ts') && !file.startsWith('tests/tidy/'));

describe(PAGE, () => {
  it('holds each id once', () => {
    const ids = matches(page, /^\| ([A-Z]\d+) +\|/gmu);
    expect(ids.length).toBeGreaterThan(200);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('has every row that code and tests cite', () => {
    const cited = code.flatMap((file) => citedIn(file).map((id) => `${id} in ${file}`));
    expect(cited.length).toBeGreaterThan(50);
    expect(cited.filter((line) => !inPage.has(line.split(' ')[0] ?? ''))).toEqual([]);
  });

  it('is named only with a row', () => {
    const bare = code.filter(
      (file) =>
        matches(textOf(file), /\bREFERENCES\b/gu).length >
        matches(textOf(file).replace(/\n\s*(?:\/\/|\*)/gu, ''), CITED).length,
    );
    expect(bare).toEqual([]);
  });

  it('says where its rows are held', () => {
    expect(held.length).toBeGreaterThan(15);
  });

  it.each(held)('%s cites the rows it is said to hold', (file, ids) => {
    expect(citedIn(file)).toEqual(expect.arrayContaining([...ids]));
  });

  it('says of every test that cites rows which it holds', () => {
    const told = new Set(held.flatMap(([file, ids]) => ids.map((id) => `${id} in ${file}`)));
    const cited = code
      .filter((file) => file.startsWith('tests/'))
      .flatMap((file) => citedIn(file).map((id) => `${id} in ${file}`));
    expect(cited.filter((line) => !told.has(line))).toEqual([]);
  });
});

it('no file rests on a folder beside the repository', () => {
  const outside = /(?<![\w.-])\/work\/|\.\.\/shared\/|(?<![\w./-])shared\//u;
  const resting = files.filter(
    (file) => file !== 'tests/tidy/references.test.ts' && outside.test(textOf(file)),
  );
  expect(resting).toEqual([]);
});
