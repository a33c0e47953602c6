/** What the page may load and do: only what comes from its own place. The grid needs styles inline. */
export const pagePolicy: readonly string[] = [
  "default-src 'none'",
  "script-src 'self'",
  "connect-src 'self'",
  "img-src 'self' data:",
  "style-src 'self' 'unsafe-inline'",
  "base-uri 'none'",
  "form-action 'none'",
];
