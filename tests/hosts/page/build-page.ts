import { copyFile, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { bundleForBrowser } from '../../support/bundle-page.ts';

const root = fileURLToPath(new URL('../../..', import.meta.url));

/** Bundles the page around the test's own functions into `folder`. */
export async function buildPage(folder: string): Promise<void> {
  await bundleForBrowser({ start: './tests/hosts/page/entry.ts' }, folder);
  await writeFile(`${folder}/functions.json`, JSON.stringify(HELP));
  await copyFile(`${root}/src/hosts/workbench/page/index.html`, `${folder}/index.html`);
}

/** As the metadata generator writes it, for one of the test's functions. */
const HELP = {
  functions: [
    {
      id: 'SHARE',
      description: 'What share one amount is of another.',
      parameters: [
        { name: 'part', description: 'The smaller amount.', type: 'any' },
        { name: 'wholeAmount', description: 'All of it.', optional: true, type: 'any' },
      ],
    },
  ],
};
