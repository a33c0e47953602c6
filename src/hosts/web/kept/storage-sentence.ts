/** Why the browser could not keep something, and what to do. */
export function storageSentence(error: unknown): string {
  if (error instanceof Error && error.name === 'QuotaExceededError') {
    return (
      'This browser has no room left, so nothing was saved; what it kept before is as it was. ' +
      'Make room on the device or remove workbooks that you no longer need here, then try again. ' +
      'Download hands you the workbook with your last cells meanwhile.'
    );
  }
  const why = error instanceof Error ? error.message : String(error);
  return `The browser could not keep the workbook (${why}). What it kept before is as it was.`;
}

export const REMOVED =
  'This workbook is no longer kept in this browser: another tab removed it. Its cells can be kept as a text file while this page is open.';
