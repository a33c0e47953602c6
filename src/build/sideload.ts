import { posix } from 'node:path';

/** What makes Excel on one operating system find the add-in. */
export interface Sideloading {
  /** Copies the manifest to this file. */
  readonly copyTo?: string;
  /** Runs this program. */
  readonly command?: readonly [program: string, ...args: string[]];
  /** What the maker does next. */
  readonly next: readonly string[];
}

/**
 * What Excel's vendor has one do for Excel on the web, which works from any system:
 * https://learn.microsoft.com/office/dev/add-ins/testing/sideload-office-add-ins-for-testing
 */
const onTheWeb = (manifest: string): readonly string[] => [
  'Open a workbook in Excel on the web, in a browser on this machine.',
  'Home tab, Add-ins, More Add-ins, My Add-ins, Upload My Add-in:',
  `choose ${manifest}`,
];

/** How to sideload the add-in `id` whose manifest file is `manifest`. */
export function sideloading(
  platform: NodeJS.Platform,
  home: string,
  id: string,
  manifest: string,
): Sideloading {
  if (platform === 'darwin') {
    // https://learn.microsoft.com/office/dev/add-ins/testing/sideload-an-office-add-in-on-mac
    const folder = 'Library/Containers/com.microsoft.Excel/Data/Documents/wef';
    return {
      copyTo: posix.join(home, folder, `${id}.manifest.xml`),
      next: ['Quit Excel and open it again.', 'Home tab, Add-ins: choose Pour Ledger.'],
    };
  }
  if (platform === 'win32') {
    // The vendor's own office-addin-dev-settings (registerAddIn) sets this same value.
    const key = 'HKCU\\SOFTWARE\\Microsoft\\Office\\16.0\\Wef\\Developer';
    return {
      command: ['reg', 'add', key, '/v', id, '/t', 'REG_SZ', '/d', manifest, '/f'],
      next: ['Close Excel and open it again.', 'Home tab, Add-ins: choose Pour Ledger.'],
    };
  }
  return {
    next: ['There is no Excel for this system, but Excel on the web works:', ...onTheWeb(manifest)],
  };
}
