import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../', import.meta.url));
const filesIn = (folder: string): [string, string][] =>
  readdirSync(`${root}${folder}`, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => [`${folder}/${file}`, readFileSync(`${root}${folder}/${file}`, 'utf8')]);

const files = ['src', 'functions', 'taskpane', 'tests'].flatMap(filesIn);

describe.each(files)('%s', (file, text) => {
  it('keeps the rules of the house that the linter does not know', () => {
    // DEVELOPERS.md: one idea a file, kebab-case, nothing over 300 lines.
    expect(text.split('\n').length - 1, 'lines').toBeLessThanOrEqual(300);
    expect(file).toMatch(/^[a-z0-9/.-]+\.ts$/u);
    // A module that exports `then` is taken for a promise by dynamic import, which waits for ever.
    expect(text).not.toMatch(/^export\s+(?:async\s+)?(?:function\*?|const|let|class)\s+then\b/mu);
    expect(text).not.toMatch(/^export\s*\{[^}]*\b(?:as\s+then|then\s*[,}])/mu);
  });
});

describe('functions', () => {
  const longest = 50;
  // The starter workbook's sheets are laid out cell by cell: lists, whatever the syntax.
  const shipped = files.filter(([file]) => !/^(?:tests|src\/starter)\//u.test(file));

  it.each(shipped)(`in %s fit ${longest} lines`, (_, text) => {
    const lines = text.split('\n');
    const long: string[] = [];
    let start = -1;
    lines.forEach((line, at) => {
      // Prettier puts a top-level function's first and last line at the margin.
      if (/^(?:export )?(?:default )?(?:async )?function\b/u.test(line)) start = at;
      if (line === '}' && start >= 0) {
        if (at - start + 1 > longest)
          long.push(`${lines[start] ?? ''} has ${at - start + 1} lines`);
        start = -1;
      }
    });
    expect(long).toEqual([]);
  });
});

describe('exported names', () => {
  /** The layer that a file belongs to; what the two hosts and the files beside them export is read by themselves alone. */
  const layerOf = (file: string): string =>
    /^(?:src\/hosts\/\w+\/\w+(?=\/)|src\/hosts\/\w+|src\/\w+|functions|taskpane)/u.exec(
      file,
    )?.[0] ?? file;
  const declared =
    /^export (?:declare )?(?:abstract )?(?:async )?(?:const|function\*?|class|interface|type|enum) (\w+)/gmu;

  it('stand for one thing, whatever the layer', () => {
    const layers = new Map<string, Set<string>>();
    // A stand-in has to bear the name of what it stands in for.
    for (const [file, text] of files.filter(([file]) => !/^tests\/|\/stand-ins\//u.test(file))) {
      for (const [, name = ''] of text.matchAll(declared)) {
        layers.set(name, (layers.get(name) ?? new Set()).add(layerOf(file)));
      }
    }
    const twice = [...layers].filter(([, known]) => known.size > 1);
    expect(twice.map(([name, known]) => `${name}: ${[...known].join(', ')}`)).toEqual([]);
  });
});
