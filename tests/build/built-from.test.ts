import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { noteSources, staleBuild } from '../../src/build/built-from.ts';

const LONG_AGO = new Date(2020, 0, 1);

let project: string;
beforeEach(() => {
  project = mkdtempSync(join(tmpdir(), 'built-from-'));
  for (const file of [
    'manifest.xml',
    'package.json',
    'package-lock.json',
    'tsconfig.json',
    'webpack.config.js',
    'src/domain/melt.ts',
    'src/build/pictures/pane.png',
    'functions/index.ts',
    'README.md',
  ])
    write(file, 'as it was');
});
afterEach(() => {
  rmSync(project, { recursive: true });
});

/** Writes a file; by default one that has stood there since before the build. */
function write(file: string, text: string, when: Date = LONG_AGO): void {
  const path = join(project, file);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
  utimesSync(path, when, when);
}

const begin = (): void => {
  write('maps/build-began', '', new Date(2026, 0, 1));
};

function build(): void {
  begin();
  noteSources(project);
}

describe('a build that goes with the sources', () => {
  it('is one after which nothing changed, whatever the times say', () => {
    build();
    expect(staleBuild(project)).toBeUndefined();
    write('src/domain/melt.ts', 'as it was', new Date(2030, 0, 1));
    expect(staleBuild(project)).toBeUndefined();
  });

  it('stays one where only papers and README’s pictures change', () => {
    build();
    write('README.md', 'other words');
    write('src/workbook/README.md', 'words');
    write('src/build/pictures/pane.png', 'another picture');
    expect(staleBuild(project)).toBeUndefined();
  });
});

describe('a build that does not is named with the source and the command that mends it', () => {
  it.each([
    ['changed', 'src/domain/melt.ts'],
    ['added', 'src/domain/pour.ts'],
    ['changed outside src/', 'package-lock.json'],
  ])('%s: %s', (_, file) => {
    build();
    write(file, 'as it is now');
    expect(staleBuild(project)).toBe(`dist/ is older than ${file}: run "npm run build".`);
  });

  it('gone', () => {
    build();
    rmSync(join(project, 'functions/index.ts'));
    expect(staleBuild(project)).toContain('functions/index.ts');
  });

  it('changed while it was built, and so in either state', () => {
    begin();
    write('src/domain/melt.ts', 'as it was', new Date(2026, 0, 1, 0, 1));
    noteSources(project);
    expect(staleBuild(project)).toContain('src/domain/melt.ts');
  });

  it('never built whole', () => {
    expect(staleBuild(project)).toBe('dist/ is not of one whole build: run "npm run build".');
  });
});
