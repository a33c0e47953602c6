/** What the page may load and do: only what this server gives it. The grid needs styles inline. */
const policy = [
  "default-src 'none'",
  "script-src 'self'",
  "connect-src 'self'",
  "img-src 'self' data:",
  "style-src 'self' 'unsafe-inline'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** Headers of every answer; the maker's workbook is kept nowhere. */
export const safetyHeaders: Readonly<Record<string, string>> = {
  'Content-Security-Policy': policy,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cache-Control': 'no-store',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
};

/** Headers of the page's own files: the browser keeps them and asks each time whether they changed. */
export const keptByBrowser = { ...safetyHeaders, 'Cache-Control': 'no-cache' };
