/** Excel's error codes that a maker can do something about, each with the sentence to show. */
const SENTENCES: Readonly<Record<string, string>> = {
  InvalidOperationInCellEditMode:
    'A cell is being edited in Excel. Press Enter or Esc in the sheet, then try again.',
  AccessDenied:
    'Excel does not allow changes here: the sheet or workbook is protected or open read-only. Unprotect it (Review tab) or save your own copy, then try again.',
  FilteredRangeConflict:
    'A filter hides rows of a table that has to grow. Clear the filter (Data tab), then try again.',
  InsertDeleteConflict:
    'Something on the sheet stands in the way of new rows. Clear filters, and move anything below the table, then try again.',
  NonBlankCellOffSheet:
    'The sheet has no room left below the table. Delete what stands at its very bottom, then try again.',
  MergedRangeConflict:
    'Merged cells stand in the way of new table rows. Unmerge them, then try again.',
  InactiveWorkbook: 'Another workbook is in front. Click into this workbook, then try again.',
  ItemNotFound: 'A table or sheet vanished meanwhile. Reload the pane, then try again.',
  RequestAborted: 'Excel broke off the request. Wait a moment, then try again.',
  HostIsBusy: 'Excel is busy. Wait a moment, then try again.',
  ActivityLimitReached: 'Excel is busy with too many requests. Wait a minute, then try again.',
  ServiceNotAvailable: 'Excel cannot be reached just now. Check the connection, then try again.',
  Timeout: 'Excel took too long to answer. Wait a moment, then try again.',
  RequestPayloadSizeLimitExceeded:
    'This is more than Excel takes in one go. Split it into smaller batches.',
  ResponsePayloadSizeLimitExceeded:
    'A table is too large for Excel to hand over in one go. Move old rows to another workbook.',
  ApiNotFound: 'This Excel is too old for the add-in. Update Excel, then try again.',
};

/** Turns whatever Excel threw into one sentence for the maker. */
export function sentenceOfFault(problem: unknown): string {
  const code = (problem as { readonly code?: unknown } | null)?.code;
  const known = typeof code === 'string' ? SENTENCES[code] : undefined;
  if (known !== undefined) return known;
  const detail = problem instanceof Error ? problem.message : String(problem);
  return `Excel refused: ${detail} Try again; if it stays, save, close and reopen the workbook.`;
}
