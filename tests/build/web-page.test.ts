import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { webPage } from '../../src/build/web-page.ts';
import { safetyHeaders } from '../../src/hosts/workbench/server/headers.ts';
import { built, builtFile } from './built.ts';

const html = built('dist/web/index.html');

describe('dist/web', () => {
  it('forbids in itself what the server’s page is forbidden by headers', () => {
    const rules = (text: string) => text.split('; ').sort();
    const [, said = ''] = /http-equiv="Content-Security-Policy" content="([^"]+)"/.exec(html) ?? [];
    const headers = rules(safetyHeaders['Content-Security-Policy'] ?? '');
    // A page can’t forbid in itself to be framed: its script refuses to start there.
    const withoutFrames = headers.filter((rule) => rule !== "frame-ancestors 'none'");
    expect(rules(said)).toEqual([...withoutFrames, "manifest-src 'self'"].sort());
    expect(html.indexOf('Content-Security-Policy')).toBeLessThan(html.indexOf('<link'));
    expect(html).not.toContain('<style');
  });

  it('names nothing that is not beside it', () => {
    const named = [...html.matchAll(/(?:src|href)="([^"]+)"/g)].map(([, path = '']) => path);
    const manifest = JSON.parse(built('dist/web/manifest.webmanifest')) as {
      readonly icons: readonly { readonly src: string }[];
    };
    const all = [...named, ...manifest.icons.map(({ src }) => src), 'service-worker.js'];
    expect(all.length).toBeGreaterThan(6);
    expect(all.filter((path) => !existsSync(builtFile(`dist/web/${path}`)))).toEqual([]);
  });

  it('keeps all that it may load for when there is no line', () => {
    const worker = built('dist/web/service-worker.js');
    for (const file of [
      'index.html',
      'web.js',
      'grid.js',
      'pane.js',
      'book-work.js',
      'starter.js',
      'functions.json',
    ]) {
      expect([file, new RegExp(`url:"${file}"|"url":"${file}"`).test(worker)]).toEqual([
        file,
        true,
      ]);
    }
    expect(worker).not.toMatch(/\bself\.__WB_MANIFEST\b/);
  });
});

it('is not made of a page that lacks what is replaced', () => {
  expect(() => webPage('<meta charset="utf-8" />')).toThrow('index.html does not hold');
});
