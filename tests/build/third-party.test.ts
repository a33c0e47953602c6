import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { inProject } from '../support/in-project.ts';
import { built } from './built.ts';

const notices = built('dist/THIRD-PARTY.txt');

it.each([
  ['decimal.js', 'LICENCE.md'],
  ['lit-html', 'LICENSE'],
  ['@univerjs/core', 'LICENSE'],
  ['react', 'LICENSE'],
  ['rxjs', 'LICENSE.txt'],
  ['fflate', 'LICENSE'],
])('names %s with its version, and holds its licence', (name, licence) => {
  const folder = inProject(`node_modules/${name}`);
  const { version } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8')) as {
    version: string;
  };
  expect(notices).toContain(`\n${name} ${version} (`);
  expect(notices).toContain(readFileSync(`${folder}/${licence}`, 'utf8').trim());
});

it('names no package without its licence, and none that stays at home', () => {
  for (const notice of notices.split(`\n${'-'.repeat(72)}\n\n`).slice(1)) {
    expect([notice.split('\n', 1), notice.length > 500]).toEqual([notice.split('\n', 1), true]);
  }
  for (const name of ['vitest', 'exceljs', 'axe-core', '@microsoft/office-js']) {
    expect(notices).not.toContain(`\n${name} `);
  }
});
