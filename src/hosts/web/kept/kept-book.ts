import type { SaveRequest } from '../../../xlsx/image.ts';

/** A workbook that this browser keeps. Times are milliseconds since 1970. */
export interface KeptBook {
  readonly id: string;
  /** As its file is called. */
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly version: string;
  readonly keptAt: number;
  /** The save that made it what it is. */
  readonly save?: string;
  /** The file on the device that it is saved back into. */
  readonly file?: LinkedFile | undefined;
  /** What was handed over last as a download. */
  readonly handedOver?: State;
}

/** A state of a workbook, and when it was put somewhere. */
export interface State {
  readonly version: string;
  readonly at: number;
}

export interface LinkedFile extends State {
  readonly handle: FileHandle;
  /** The version that is being written into it: after a sudden end it may hold either. */
  readonly intends?: string;
}

/** What of the browser's handle on a file is used; its permissions are not among TypeScript's own types. */
export interface FileHandle extends FileSystemFileHandle {
  queryPermission?(wish: { readonly mode: 'readwrite' }): Promise<PermissionState>;
  requestPermission?(wish: { readonly mode: 'readwrite' }): Promise<PermissionState>;
}

/** What a page that went away had not saved yet. */
export type LastWords = Pick<SaveRequest, 'id' | 'baseVersion' | 'after' | 'edits'>;
