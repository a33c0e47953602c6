/**
 * Error codes that a maker can do something about, each with the sentence to show. The codes are those
 * of https://learn.microsoft.com/office/dev/add-ins/testing/application-specific-api-error-handling
 * and of the client script itself (Excel.ErrorCodes, OfficeExtension.ErrorCodes).
 */
const SENTENCES: Readonly<Record<string, string>> = {
  InvalidOperationInCellEditMode:
    'A cell is being edited in Excel. Press Enter or Esc in the sheet, then try again.',
  WriteNotSupportedWhenModalDialogOpen: 'A window is open in Excel. Close it, then try again.',
  InactiveWorkbook: 'Another workbook is in front. Click into this workbook, then try again.',
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
  PivotTableRangeConflict:
    'A pivot table stands in the way of new table rows. Move it away, then try again.',
  ItemNotFound: 'A table, column or sheet vanished meanwhile. Put it back, then try again.',
  InvalidReference:
    'Rows were deleted meanwhile, perhaps by a partner. Look at the table, then try again.',
  Conflict: 'Excel could not join this with a partner’s change. Wait a moment, then try again.',
  RequestAborted: 'Excel broke off the request. Wait a moment, then try again.',
  GeneralException:
    'Excel ran into trouble of its own. Wait a moment, then try again; if it stays, save, close and reopen the workbook.',
  ActivityLimitReached: 'Excel is busy with too many requests. Wait a minute, then try again.',
  MemoryLimitReached: 'Excel has no memory left. Close other workbooks, then try again.',
  ServiceNotAvailable: 'Excel cannot be reached just now. Check the connection, then try again.',
  ConnectionFailure: 'The connection to Excel was lost. Check it, then try again.',
  InvalidOrTimedOutSession:
    'Excel on the web has ended this session. Reload the browser page, then try again.',
  Unauthenticated: 'You are signed out of Excel. Sign in, then try again.',
  Timeout: 'Excel took too long to answer. Wait a moment, then try again.',
  RequestPayloadSizeLimitExceeded:
    'This is more than Excel takes in one go. Split it into smaller batches.',
  ResponsePayloadSizeLimitExceeded:
    'A table is too large for Excel on the web to hand over in one go. Open the workbook in Excel for Windows or Mac, which has no such limit.',
  CannotRegisterEvent: 'Excel did not let the add-in listen for changes. Reload the pane.',
  HostRestartNeeded: 'The add-in was updated. Close Excel and open it again.',
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
