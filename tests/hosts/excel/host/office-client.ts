import { readFileSync } from 'node:fs';
import { createContext, Script } from 'node:vm';
import { inProject } from '../../../support/in-project.ts';
import { type ClientGlobals, connect } from './connect.ts';
import type { ExcelHost } from './excel-host.ts';

/** The script that Excel on the web's add-ins run, as its vendor publishes it; used as it is. */
export const CLIENT_SCRIPT = inProject(
  'node_modules/@microsoft/office-js/dist/excel-web-16.00.debug.js',
);

const script = new Script(readFileSync(CLIENT_SCRIPT, 'utf8'), { filename: CLIENT_SCRIPT });

/** What the vendor's script offers once it has run. */
export interface OfficeClient extends ClientGlobals {
  readonly Excel: typeof Excel;
  readonly Office: typeof Office;
  readonly CustomFunctions: {
    readonly Error: typeof CustomFunctions.Error;
    readonly ErrorCode: Readonly<Record<string, string>>;
  };
}

/** Which requirement sets the host has: by default all, else those of Excel up to a version. */
export type Supports = (set: string, version: string) => boolean;

/** Runs the vendor's script afresh, in a page with next to nothing in it, with `host` behind it. */
export function officeClient(host: ExcelHost, supports: Supports = () => true): OfficeClient {
  const page: Record<string, unknown> = {
    // One kind of Error and Promise with the code under test, as in a real page.
    Error,
    Promise,
    console,
    // The client tries a failed clean-up again after five seconds; no test waits for it.
    setTimeout: () => 0,
    location: { search: '', hash: '', href: 'https://localhost:3000/taskpane.html' },
    navigator: { userAgent: '', platform: '', language: 'en-US' },
    document: {
      readyState: 'loading',
      addEventListener: () => undefined,
      getElementsByTagName: () => [],
      createElement: () => ({}),
      cookie: '',
    },
    addEventListener: () => undefined,
  };
  page['window'] = page;
  script.runInContext(createContext(page));
  const client = page as unknown as OfficeClient;
  const context = { requirements: { isSetSupported: supports } };
  // The script has a check of requirement sets that it leaves off; tests want it on.
  client.OfficeExtension.CommonUtility._doApiNotSupportedCheck = true;
  client.OSF._OfficeAppFactory = { getContext: () => context };
  connect(client, host);
  return client;
}
