import type { SaveAnswer, SaveRequest, WorkbookImage } from '../../../xlsx/image.ts';
import type { FileNews, KeepAnswer, Lost, TextsToKeep } from '../protocol.ts';
import type { Connection } from './connection.ts';
import type { FunctionHelp } from './function-help.ts';
import type { Saver } from './saver.ts';

/** Where the workbook that the page shows lives: it is read there, and saved there. */
export interface FileHome {
  readonly connection: Connection;
  /** Why nothing can be changed from this page, as a sentence; undefined where it can. */
  readonly readsOnly?: string | undefined;
  /**
   * Reads the workbook, and tells after each piece which share of it is read. Throws with a sentence
   * when it cannot be read.
   */
  book(told: (share: number) => Promise<void>): Promise<WorkbookImage>;
  /** What the functions tell of themselves; nothing where that was not built. */
  functionHelp(): Promise<readonly FunctionHelp[]>;
  /** The pane's texts that are kept with the workbook. */
  texts(): Promise<Readonly<Record<string, string>>>;
  /** Has the pane's texts kept; every failure comes back as a refusal with a sentence. */
  keepTexts(texts: TextsToKeep): Promise<KeepAnswer>;
  /** What stands in the file's place now; undefined where nobody answers. */
  look(): Promise<FileNews | undefined>;
  /**
   * Saves. Where the line ends before the answer, asks again as soon as it is back, since nobody knows
   * whether it was saved: so this resolves only once that is known.
   */
  save(request: SaveRequest): Promise<SaveAnswer>;
  /** Notes what was just typed, where the page's own end would lose it before it is saved. */
  note?(request: SaveRequest): void;
  /** Sends a save while the page goes away, and hears no answer. */
  sendLast(request: SaveRequest): void;
  /** Called once the workbook is open; after `letGo` the page goes without asking. */
  opened?(saver: Saver, letGo: () => void): void;
  /** The states that were replaced, where they are kept. */
  readonly backups?: Backups;
}

export interface Backups {
  /**
   * Has a backup put in the file's place, the one that was it until that time or the newest; the sentence
   * says why it was not.
   */
  take(until?: number): Promise<string | undefined>;
  /** What was written into the backup of that time is left there, and no more is said of it. */
  leave(until: number): Promise<void>;
}

/** There is no workbook to be read in the file's place. */
export class FileLost extends Error {
  override readonly name = 'FileLost';
  readonly backup: number | undefined;

  constructor({ sentence, backup }: Lost) {
    super(sentence);
    this.backup = backup;
  }
}

/** What the functions tell of themselves, from the file beside the page. */
export async function helpBesidePage(): Promise<readonly FunctionHelp[]> {
  const response = await fetch('functions.json');
  if (!response.ok) return [];
  return ((await response.json()) as { readonly functions: readonly FunctionHelp[] }).functions;
}
