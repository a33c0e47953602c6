/** An error as Excel reports it for one action, by a code of Excel.ErrorCodes. */
export class HostFault extends Error {
  readonly code: string;

  constructor(code: string) {
    super(`${code}: (Excel's own wording)`);
    this.code = code;
  }
}
