/** What stands where the workbook's file should be. The server tells its pages, now and whenever it changes. */
export type FileNews = { readonly kind: 'stands'; readonly version: string } | Lost;

/** The file is gone, or nobody can read it any more. */
export interface Lost {
  readonly kind: 'lost';
  /** Which of it, and why. */
  readonly sentence: string;
  /** Until when the newest backup was the file, in milliseconds since 1970. */
  readonly backup?: number;
}

/** What became of the states that were replaced; told beside what stands in the file's place. */
export interface BackupNews {
  readonly kind: 'backups';
  /** The newest that another program wrote into since: what that saved is not in the workbook. */
  readonly writtenInto?: WrittenInto;
}

export interface WrittenInto {
  /** Until when it was the file, in milliseconds since 1970. */
  readonly until: number;
  readonly path: string;
}

export type News = FileNews | BackupNews;

/** Texts that the pane wants kept, by key; null takes one away. */
export type TextsToKeep = Readonly<Record<string, string | null>>;

/** How keeping ended: the texts are on the disk, or the sentence says why not. */
export type KeepAnswer =
  { readonly kind: 'kept' } | { readonly kind: 'refused'; readonly sentence: string };
