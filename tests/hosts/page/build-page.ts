import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { bundleForBrowser } from '../../support/bundle-page.ts';

const root = fileURLToPath(new URL('../../..', import.meta.url));

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

/** The folder of the page, bundled around the test's own functions. */
export const buildPage = async (): Promise<string> =>
  bundleForBrowser('start', './tests/hosts/page/entry.ts', {
    'index.html': await readFile(`${root}/src/hosts/workbench/page/index.html`, 'utf8'),
    'functions.json': JSON.stringify(HELP),
  });
