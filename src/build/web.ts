import { cpSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { injectManifest } from 'workbox-build';
import { inProject } from './folders.ts';
import { webPage } from './web-page.ts';

/**
 * Makes dist/web/ whole, after all else of the build: the workbench's page with its own start, which any web host
 * can serve, and a service worker that knows each file by its hash.
 */
const PAGE = inProject('dist/workbench/page');
const WEB = inProject('dist/web');

/** What the server's page has for itself, and what webpack put beside it that it never loads. */
const SERVERS_OWN = /^(start\.(js|css)|index\.html)$/u;
const WEBS_OWN = /^(book-work|starter)\.js$/u;

for (const file of readdirSync(PAGE).filter((name) => !SERVERS_OWN.test(name))) {
  if (WEBS_OWN.test(file)) renameSync(`${PAGE}/${file}`, `${WEB}/${file}`);
  else cpSync(`${PAGE}/${file}`, `${WEB}/${file}`);
}
for (const icon of ['icon-32.png', 'icon-192.png', 'icon-512.png', 'icon.svg']) {
  cpSync(inProject(`src/hosts/excel/icons/${icon}`), `${WEB}/${icon}`);
}
cpSync(inProject('src/hosts/web/manifest.webmanifest'), `${WEB}/manifest.webmanifest`);
cpSync(inProject('dist/THIRD-PARTY.txt'), `${WEB}/THIRD-PARTY.txt`);
writeFileSync(`${WEB}/index.html`, webPage(readFileSync(`${PAGE}/index.html`, 'utf8')));

const script = 'service-worker.js';
const { warnings } = await injectManifest({
  swSrc: `${WEB}/${script}`,
  swDest: `${WEB}/${script}`,
  globDirectory: WEB,
  globPatterns: ['**/*.{html,js,css,json,png,svg,webmanifest}'],
  maximumFileSizeToCacheInBytes: 20_000_000,
});
// A file left out would be missed without a line.
if (warnings.length > 0) throw new Error(warnings.join('\n'));
