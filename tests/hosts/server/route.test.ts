import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { route, type RequestFacts } from '../../../src/hosts/workbench/server/route.ts';

const token = 'abcDEF_-123';
const host = 'f00d.localhost';
const server = { host, port: 4180, token };
const get = (url: string, more: Partial<RequestFacts> = {}): RequestFacts => ({
  method: 'GET',
  url,
  host: `${host}:4180`,
  origin: undefined,
  contentType: undefined,
  fetchSite: undefined,
  ...more,
});
const save = (more: Partial<RequestFacts> = {}) =>
  get(`/${token}/api/save`, {
    method: 'POST',
    contentType: 'application/json',
    origin: `http://${host}:4180`,
    fetchSite: 'same-origin',
    ...more,
  });

describe('where requests go', () => {
  it.each([
    ['the page', get(`/${token}/`), { kind: 'file', path: 'index.html' }],
    ['its script', get(`/${token}/start.js?v=1`), { kind: 'file', path: 'start.js' }],
    ['a part in a folder', get(`/${token}/icons/a-1.svg`), { kind: 'file', path: 'icons/a-1.svg' }],
    ['the book', get(`/${token}/api/book`), { kind: 'book' }],
    ['news', get(`/${token}/api/events`), { kind: 'events' }],
    ['a save', save(), { kind: 'save' }],
    ['a look at the file', get(`/${token}/api/file`), { kind: 'look' }],
    ['the pane’s texts', get(`/${token}/api/texts`), { kind: 'texts' }],
    ['keeping texts', save({ url: `/${token}/api/texts` }), { kind: 'keep texts' }],
    ['taking a backup', save({ url: `/${token}/api/take-backup` }), { kind: 'take backup' }],
    ['leaving a backup', save({ url: `/${token}/api/leave-backup` }), { kind: 'leave backup' }],
    [
      'a save with a charset',
      save({ contentType: 'application/json; charset=utf-8' }),
      { kind: 'save' },
    ],
    [
      'the name in any letters',
      get(`/${token}/`, { host: 'F00D.localhost:4180' }),
      { kind: 'file', path: 'index.html' },
    ],
  ] as const)('%s', (_what, facts, to) => {
    expect(route(facts, server)).toEqual(to);
  });

  it.each([
    ['another host', get(`/${token}/`, { host: 'evil.example:4180' }), 421],
    ['another port', get(`/${token}/`, { host: `${host}:4181` }), 421],
    ['no port', get(`/${token}/`, { host }), 421],
    // Whoever held these before may have left something in the browser.
    ['this machine by number', get(`/${token}/`, { host: '127.0.0.1:4180' }), 421],
    ['this machine by its usual name', get(`/${token}/`, { host: 'localhost:4180' }), 421],
    ['another workbook’s name', get(`/${token}/`, { host: 'f00e.localhost:4180' }), 421],
    ['a name below it', get(`/${token}/`, { host: `a.${host}:4180` }), 421],
    ['no host', get(`/${token}/`, { host: undefined }), 421],
    [
      'a host that only begins right',
      get(`/${token}/`, { host: `${host}:4180.evil.example` }),
      421,
    ],
    ['no token', get('/'), 404],
    ['a page without token', get('/index.html'), 404],
    ['the token without its slash', get(`/${token}`), 404],
    ['another token', get('/abcDEF_-124/'), 404],
    ['a longer token', get(`/${token}x/`), 404],
    ['an absolute address', get(`http://evil.example/${token}/`), 404],
    ['no path', get('*'), 404],
    ['steps up', get(`/${token}/../server.js`), 404],
    ['steps up, escaped', get(`/${token}/%2e%2e/server.js`), 404],
    ['steps up, by backslash', get(`/${token}/..\\server.js`), 404],
    ['a slash, escaped', get(`/${token}/a%2fb`), 404],
    ['an empty step', get(`/${token}//etc/passwd`), 404],
    ['a null byte', get(`/${token}/a%00.js`), 404],
    ['an unknown service', get(`/${token}/api/other`), 404],
    ['reading by POST', get(`/${token}/api/book`, { method: 'POST' }), 405],
    ['saving by GET', save({ method: 'GET' }), 405],
    ['saving by PUT', save({ method: 'PUT' }), 405],
    ['texts by a form', save({ url: `/${token}/api/texts`, contentType: 'text/plain' }), 415],
    ['texts from elsewhere', save({ url: `/${token}/api/texts`, origin: 'null' }), 403],
    ['a backup by GET', get(`/${token}/api/take-backup`), 405],
    ['leaving one by GET', get(`/${token}/api/leave-backup`), 405],
    ['a backup from elsewhere', save({ url: `/${token}/api/take-backup`, origin: 'null' }), 403],
    ['a form', save({ contentType: 'application/x-www-form-urlencoded' }), 415],
    ['plain text', save({ contentType: 'text/plain' }), 415],
    ['JSON in name only', save({ contentType: 'application/jsonp' }), 415],
    ['no type', save({ contentType: undefined }), 415],
    ['another origin', save({ origin: 'http://evil.example' }), 403],
    ['no real origin', save({ origin: 'null' }), 403],
    ['another port’s origin', save({ origin: `http://${host}:3000` }), 403],
    ['this machine’s other names', save({ origin: 'http://localhost:4180' }), 403],
    ['a cross-site reader', get(`/${token}/api/book`, { fetchSite: 'cross-site' }), 403],
    ['a same-site reader', get(`/${token}/api/events`, { fetchSite: 'same-site' }), 403],
  ])('%s is denied', (_what, facts, status) => {
    expect(route(facts, server)).toMatchObject({ kind: 'denied', status });
  });
});

describe('addresses made up at random', () => {
  const pieces = [
    '..',
    '.',
    '/',
    '\\',
    '%2e',
    '%2f',
    '%5c',
    '%00',
    '%',
    'api',
    'a.js',
    '?',
    '#',
    ':',
    '~',
    'é',
  ];

  it('never lead out of the page’s folder, nor past the token', () => {
    fc.assert(
      fc.property(
        fc.boolean(),
        fc.array(fc.oneof(fc.constantFrom(...pieces), fc.string({ maxLength: 4 })), {
          maxLength: 9,
        }),
        (hasToken, steps) => {
          const url = `${hasToken ? `/${token}/` : '/'}${steps.join('')}`;
          const answer = route(get(url), server);
          if (!hasToken && !url.startsWith(`/${token}/`)) expect(answer.kind).toBe('denied');
          if (answer.kind !== 'file') return;
          const inside = new URL(answer.path, 'file:///page/').pathname;
          expect(inside.startsWith('/page/')).toBe(true);
          // eslint-disable-next-line no-control-regex -- a control character in a path is the trick
          expect(answer.path).not.toMatch(/[\\%\u0000-\u001f]|^\//u);
          // A name may hold dots ("0.."); a step of nothing else leads elsewhere.
          expect(answer.path.split('/').filter((step) => /^\.{1,2}$/u.test(step))).toEqual([]);
        },
      ),
      { numRuns: 2000 },
    );
  });
});
