import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { built, builtFile } from './built.ts';

const filesIn = (folder: string, ends: string): string[] =>
  readdirSync(builtFile(folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith(ends))
    .map((file) => `${folder}/${file}`)
    .sort();

/** Code made from text, which the pages' content security policy forbids. */
const CODE_FROM_TEXT = /\beval\(|\bnew Function\(|(?<![\w.$])Function\(["'`]/g;

/**
 * Libraries of the grid that hold such code and never reach it here: one looks for the global object
 * where neither `global` nor `self` is one, one revives a function handed over by a remote engine.
 */
const NEVER_REACHED = /Function\("return this"\)\(\)|new Function\(`return \$\{\w+\}`\)\(\)/g;

const OFFICE_SCRIPT = 'https://appsforoffice.microsoft.com/lib/1/hosted/office.js';

describe('the workbench', () => {
  const files = ['.js', '.html', '.css'].flatMap((ends) =>
    ['dist/workbench', 'dist/web'].flatMap((folder) => filesIn(folder, ends)),
  );

  it('has a page and a server', () => {
    expect(files).toEqual(
      expect.arrayContaining([
        'dist/workbench/page/index.html',
        'dist/workbench/page/start.css',
        'dist/workbench/page/start.js',
        'dist/workbench/server.js',
      ]),
    );
  });

  it('is shipped without the tests’ handle, which is built apart', () => {
    const handle = /pourLedgerWorkbench|test-handle/;
    expect(built('for-tests/test-handle.js')).toMatch(handle);
    // The script that takes README's pictures is made on demand, for whoever works on this, and brings the handle along.
    const shipped = filesIn('dist', '').filter((file) => file !== 'dist/build/screenshots.js');
    const texts = shipped.filter((file) => /\.(js|html|css|json|txt)$/.test(file));
    expect(texts.length).toBeGreaterThan(10);
    expect(texts.filter((file) => handle.test(built(file)))).toEqual([]);
    expect(shipped.filter((file) => handle.test(file))).toEqual([]);
  });

  it.each(files)('%s never loads Office.js', (file) => {
    expect(built(file)).not.toMatch(/appsforoffice|office\.js|Office\.onReady|Excel\.run/i);
  });
});

/** The scripts of the add-in, with those that the pane loads when first needed. */
const inExcel = readdirSync(builtFile('dist'))
  .filter((file) => file.endsWith('.js'))
  .map((file) => `dist/${file}`);

describe('what runs in a browser', () => {
  // What dist/web has of the workbench's page is the very same file.
  const own = ['web', 'service-worker'].map((name) => `dist/web/${name}.js`);
  const scripts = [...filesIn('dist/workbench/page', '.js'), ...own, ...inExcel];

  it.each(scripts)('%s makes no code from text, but for what the grid never reaches', (file) => {
    const text = built(file);
    const known = file.startsWith('dist/workbench/page/') ? text.replace(NEVER_REACHED, '') : text;
    expect(known.match(CODE_FROM_TEXT)).toBeNull();
  });

  it.each(scripts)('%s keeps its map apart', (file) => {
    expect(built(file)).not.toContain('sourceMappingURL');
    const map = built(`${file.replace('dist', 'maps')}.map`);
    expect(() => JSON.parse(map) as unknown).not.toThrow();
  });

  it('is shipped without maps', () => {
    expect(filesIn('dist', '.map')).toEqual([]);
  });
});

/** Names of kinds of XML, which look like addresses and are never asked for. */
const NAMES_OF_XML =
  /^http:\/\/(www\.w3\.org\/(2000\/(svg|xmlns\/)|XML\/1998\/namespace)$|schemas\.(openxmlformats|microsoft)\.(org|com)\/|purl\.org\/dc\/)/;

/** The home of a library, in its licence line. */
const LICENCE_LINE = 'https://github.com/MikeMcl/decimal.js';

describe('what runs in Excel', () => {
  it.each(inExcel)('%s names no place outside', (file) => {
    const places = [...new Set(built(file).match(/\bhttps?:\/\/[^\s"'`)]+/g))].filter(
      (place) => !NAMES_OF_XML.test(place) && place !== LICENCE_LINE,
    );
    expect(places).toEqual([]);
  });
});

describe('dist/taskpane.html', () => {
  const html = built('dist/taskpane.html');

  it('loads the host’s script from its own place, the functions, the pane, and nothing else', () => {
    const sources = [...html.matchAll(/(?:src|href)="([^"]+)"/g)];
    expect(sources.map(([, source]) => source)).toEqual([
      'icons/icon-32.png',
      OFFICE_SCRIPT,
      'functions.js',
      'taskpane.js',
    ]);
  });

  it('holds the functions once: the pane’s own script brings no second copy', () => {
    expect(built('dist/functions.js')).toContain('.associate(');
    expect(built('dist/taskpane.js')).not.toContain('.associate(');
  });
});
