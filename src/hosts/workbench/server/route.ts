import { timingSafeEqual } from 'node:crypto';

/** What of a request decides where it goes. */
export interface RequestFacts {
  readonly method: string;
  /** The request's target as sent: path and query. */
  readonly url: string;
  readonly host: string | undefined;
  readonly origin: string | undefined;
  readonly contentType: string | undefined;
  /** The browser's own word on who asks: "same-origin", "cross-site", … */
  readonly fetchSite: string | undefined;
}

export interface ServerFacts {
  /** The one host name that is answered, without its port. */
  readonly host: string;
  readonly port: number;
  readonly token: string;
}

export type Route =
  | { readonly kind: 'file'; readonly path: string }
  | { readonly kind: 'book' }
  | { readonly kind: 'save' }
  | { readonly kind: 'look' }
  | { readonly kind: 'take backup' }
  | { readonly kind: 'leave backup' }
  | { readonly kind: 'texts' }
  | { readonly kind: 'keep texts' }
  | { readonly kind: 'events' }
  | { readonly kind: 'denied'; readonly status: number; readonly sentence: string };

/** Decides what a request gets. Only this workbook's own host name, its token and our own page pass. */
export function route(request: RequestFacts, server: ServerFacts): Route {
  const host = `${server.host}:${server.port}`;
  if (request.host?.toLowerCase() !== host) {
    return denied(421, 'This address is not served here.');
  }
  const path = pathUnderToken(request.url, server.token);
  if (path === undefined) return denied(404, 'Nothing is here.');
  if (!path.startsWith('api/'))
    return readOnly(request, { kind: 'file', path: path || 'index.html' });
  if (!fromOurPage(request, host)) return denied(403, 'Only the workbench page may ask this.');
  switch (path) {
    case 'api/book':
      return readOnly(request, { kind: 'book' });
    case 'api/events':
      return readOnly(request, { kind: 'events' });
    case 'api/file':
      return readOnly(request, { kind: 'look' });
    case 'api/take-backup':
      return writing(request, { kind: 'take backup' });
    case 'api/leave-backup':
      return writing(request, { kind: 'leave backup' });
    case 'api/save':
      return writing(request, { kind: 'save' });
    case 'api/texts':
      return request.method === 'GET'
        ? { kind: 'texts' }
        : writing(request, { kind: 'keep texts' });
    default:
      return denied(404, 'Nothing is here.');
  }
}

function writing({ method, contentType }: RequestFacts, to: Route): Route {
  if (method !== 'POST') return denied(405, 'Saving takes a POST.');
  if (!/^application\/json\s*(;|$)/i.test(contentType ?? '')) {
    return denied(415, 'Saving takes JSON.');
  }
  return to;
}

function readOnly({ method }: RequestFacts, to: Route): Route {
  return method === 'GET' ? to : denied(405, 'Only GET is answered here.');
}

/** The decoded path below the token; undefined for a wrong token and for any path with tricks. */
function pathUnderToken(url: string, token: string): string | undefined {
  const [raw = ''] = url.split(/[?#]/, 1);
  const [, first = '', ...rest] = raw.split('/');
  if (!raw.startsWith('/') || rest.length === 0 || !sameText(first, token)) return undefined;
  const steps: string[] = [];
  for (const step of rest) {
    // Our own files have plain names; anything that needs escaping is not ours.
    if (!/^[A-Za-z0-9._-]*$/.test(step) || /^\.+$/.test(step)) return undefined;
    steps.push(step);
  }
  const path = steps.join('/');
  return path.includes('//') || path.startsWith('/') ? undefined : path;
}

function fromOurPage({ origin, fetchSite }: RequestFacts, host: string): boolean {
  const ourOrigin = origin === undefined || origin === `http://${host}`;
  return ourOrigin && (fetchSite === undefined || fetchSite === 'same-origin');
}

function sameText(a: string, b: string): boolean {
  const [left, right] = [Buffer.from(a), Buffer.from(b)];
  return left.length === right.length && timingSafeEqual(left, right);
}

function denied(status: number, sentence: string): Route {
  return { kind: 'denied', status, sentence };
}
