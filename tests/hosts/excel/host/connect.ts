import type { ExcelHost } from './excel-host.ts';

/** What of the vendor's script a host is put behind. */
export interface ClientGlobals {
  readonly OSF: {
    readonly DDA: { RichApi: unknown };
    /** Where the script looks for `Office.context`. */
    _OfficeAppFactory: { readonly getContext: () => unknown };
  };
  readonly OfficeExtension: {
    readonly CommonUtility: { _doApiNotSupportedCheck: boolean };
    readonly CoreErrorCodes: object;
    readonly ErrorCodes: object;
    readonly Constants: { readonly eventWorkbookId: string };
    _testSetRichApiMessageReadyImpl(ready: () => Promise<void>): void;
    _testTriggerRichApiMessageEvent(message: unknown): void;
  };
}

/** The numbers on the wire of Office's messages: of events, and of "a table changed". */
const EVENT_CATEGORY = 65_536;
const TABLE_CHANGED = 101;

/** Puts `host` behind the client's script. */
export function connect(client: ClientGlobals, host: ExcelHost): void {
  client.OSF.DDA.RichApi = { executeRichApiRequestAsync: host.receive.bind(host) };
  client.OfficeExtension._testSetRichApiMessageReadyImpl(() => Promise.resolve());
  host.onEvent = (event) =>
    client.OfficeExtension._testTriggerRichApiMessageEvent({
      entries: [
        {
          messageCategory: EVENT_CATEGORY,
          messageType: TABLE_CHANGED,
          targetId: client.OfficeExtension.Constants.eventWorkbookId,
          message: JSON.stringify({ ...event, worksheetId: '', address: '' }),
          isRemoteOverride: event.source === 'Remote',
        },
      ],
    });
}
