import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { manifestFor } from '../../src/build/manifest-host.ts';
import { inProject } from '../support/in-project.ts';

const manifest = readFileSync(inProject('manifest.xml'), 'utf8');

describe('the manifest for another host', () => {
  it.each([
    ['https://soap.example', 'https://soap.example/taskpane.html', 'https://soap.example'],
    ['https://soap.example/', 'https://soap.example/taskpane.html', 'https://soap.example'],
    [
      'https://soap.example:8443/a/b/',
      'https://soap.example:8443/a/b/taskpane.html',
      'https://soap.example:8443',
    ],
    ['https://localhost:3000', 'https://localhost:3000/taskpane.html', 'https://localhost:3000'],
  ])('%s', (host, page, domain) => {
    const rewritten = manifestFor(manifest, host);
    expect(rewritten).toContain(`<bt:Url id="Pane.Url" DefaultValue="${page}"/>`);
    expect(rewritten).toContain(`<AppDomain>${domain}</AppDomain>`);
    const addresses = [...rewritten.matchAll(/DefaultValue="(https:[^"]+)"/g)].map(
      ([, url]) => url,
    );
    expect(addresses).toHaveLength(11);
    for (const address of addresses) expect(address).toMatch(page.replace('taskpane.html', ''));
  });

  it('in the repository’s own host is the manifest itself, but for nothing', () => {
    expect(manifestFor(manifest, 'https://localhost:3000')).toBe(manifest);
  });

  it.each(['', 'soap.example', 'http://soap.example', 'https://soap.example/?a=1', 'javascript:1'])(
    'refuses %j with a sentence',
    (host) => {
      expect(() => manifestFor(manifest, host)).toThrow(/POUR_LEDGER_HOST.*https:/);
    },
  );
});
