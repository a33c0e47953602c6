import { pagePolicy } from '../hosts/workbench/policy.ts';

/**
 * The workbench's page for a host that sends files and nothing else: it starts by its own script, and says in itself
 * what a server would say in headers. Throws where the page lacks what is replaced.
 */
export function webPage(html: string): string {
  const head = [
    // First of all: what stands before it is under no policy.
    `<meta http-equiv="Content-Security-Policy" content="${[...pagePolicy, "manifest-src 'self'"].join('; ')}" />`,
    '<meta name="referrer" content="no-referrer" />',
    '<meta name="theme-color" content="#fbfbfa" media="(prefers-color-scheme: light)" />',
    '<meta name="theme-color" content="#1b1e20" media="(prefers-color-scheme: dark)" />',
    '<link rel="manifest" href="manifest.webmanifest" />',
  ];
  const changes: readonly (readonly [string, string])[] = [
    ['<meta charset="utf-8" />', ['<meta charset="utf-8" />', ...head].join('\n    ')],
    ['<link rel="icon" href="data:," />', '<link rel="icon" href="icon-32.png" />'],
    ['href="start.css"', 'href="web.css"'],
    ['src="start.js"', 'src="web.js"'],
  ];
  return changes.reduce((page, [from, to]) => {
    if (page.split(from).length !== 2) throw new Error(`index.html does not hold ${from} once.`);
    return page.replace(from, to);
  }, html);
}
