/** Tells a listener of each handle that a worksheet function was asked about and no memory holds. */
export type TellMissing = (listener: (handle: string) => void) => void;

/** Excel's page, which functions.js and taskpane.js share: the one leaves there what the other listens to. */
interface SharedPage {
  pourLedgerMissingBooks?: TellMissing;
}

/** Called by functions.js, which comes first. */
export function offerMissingBooks(tell: TellMissing): void {
  (globalThis as SharedPage).pourLedgerMissingBooks = tell;
}

/** Called by taskpane.js, which comes later; where the functions are not in this page, nobody tells. */
export function hearOfMissingBooks(
  listener: (handle: string) => void,
  page: object = globalThis,
): void {
  (page as SharedPage).pourLedgerMissingBooks?.(listener);
}
