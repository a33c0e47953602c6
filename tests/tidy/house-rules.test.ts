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
