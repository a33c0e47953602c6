import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import budgets from './budgets.json' with { type: 'json' };
import { builtFile } from './built.ts';

/** Scripts and style sheets of a built path: the file itself, or all in the folder. */
function loaded(path: string): Buffer[] {
  const full = builtFile(path);
  const files = statSync(full).isDirectory()
    ? readdirSync(full, { recursive: true, encoding: 'utf8' }).map((file) => join(full, file))
    : [full];
  return files.filter((file) => /\.(js|css)$/.test(file)).map((file) => readFileSync(file));
}

const kB = (bytes: number): number => Math.ceil(bytes / 1000);
const sum = (sizes: readonly number[]): number => sizes.reduce((all, size) => all + size, 0);

describe('what a browser loads', () => {
  it.each(Object.entries(budgets))('%s keeps within its budget', (path, budget) => {
    const parts = loaded(path);
    const size = {
      kB: kB(sum(parts.map(({ length }) => length))),
      gzipKB: kB(sum(parts.map((part) => gzipSync(part, { level: 9 }).length))),
    };
    expect(size.kB, 'raw').toBeLessThanOrEqual(budget.kB);
    expect(size.gzipKB, 'gzipped').toBeLessThanOrEqual(budget.gzipKB);
    // A budget far above the size holds nothing: lower it.
    expect(budget.kB, 'the budget').toBeLessThanOrEqual(size.kB * 1.5);
    expect(budget.gzipKB, 'the budget').toBeLessThanOrEqual(size.gzipKB * 1.5);
  });

  it('has a budget, whichever script of Excel it is', () => {
    const scripts = readdirSync(builtFile('dist')).filter((file) => file.endsWith('.js'));
    const budgeted = Object.keys(budgets).filter((path) => path.endsWith('.js'));
    expect(scripts.map((file) => `dist/${file}`).sort()).toEqual(budgeted.sort());
  });
});
