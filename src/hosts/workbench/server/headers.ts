import { pagePolicy } from '../policy.ts';

const policy = [...pagePolicy, "frame-ancestors 'none'"].join('; ');

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
