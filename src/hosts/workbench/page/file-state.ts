import type { SaveAnswer, SaveRequest, SheetEdits } from '../../../xlsx/image.ts';
import type { FileNews, Lost } from '../protocol.ts';
import type { Changes, TakenEdits } from './changes.ts';
import type { FileHome } from './file-home.ts';
import { joinEdits } from './join-edits.ts';

/** Where the workbook stands against its file. */
export type SaveState =
  | { readonly kind: 'saved' }
  | { readonly kind: 'saving' }
  /** It could not be written, or it is gone or damaged; `backup` as in `Lost`. */
  | { readonly kind: 'not saved'; readonly sentence: string; readonly backup?: number | undefined }
  /** The workbook can only be looked at from this page. */
  | { readonly kind: 'reads only'; readonly sentence: string }
  /** No server is heard: nobody knows of the file, and nothing is written until it is back. */
  | { readonly kind: 'not connected' }
  /** The file was changed by something else; nothing is written any more until it is loaded again. */
  | { readonly kind: 'changed outside' };

/** A save whose answer is not known yet. */
export interface UnderWay {
  readonly request: SaveRequest;
  readonly taken: TakenEdits;
}

type Home = Pick<FileHome, 'connection' | 'readsOnly'>;

/** What is known of the file: the version we stand on, and whether it is still the file's own. */
export class FileState {
  version: string;
  isOutside = false;
  private refused: string | undefined;
  private lost: Lost | undefined;
  private underWay: UnderWay | undefined;
  private readonly changes: Changes;
  private readonly home: Home;
  private readonly listeners = new Set<() => void>();

  constructor(changes: Changes, home: Home, version: string) {
    this.changes = changes;
    this.home = home;
    this.version = version;
    home.connection.onChange(() => {
      this.tell();
    });
  }

  get state(): SaveState {
    if (this.isOutside) return { kind: 'changed outside' };
    const { readsOnly } = this.home;
    if (readsOnly !== undefined) return { kind: 'reads only', sentence: readsOnly };
    if (!this.home.connection.isOpen) return { kind: 'not connected' };
    const sentence = this.refused ?? this.lost?.sentence;
    if (sentence !== undefined) return { kind: 'not saved', sentence, backup: this.lost?.backup };
    return { kind: this.hasUnsaved ? 'saving' : 'saved' };
  }

  get hasUnsaved(): boolean {
    return this.changes.isWaiting || this.underWay !== undefined;
  }

  /** What a save sent now goes over. */
  get base(): Pick<SaveRequest, 'baseVersion' | 'after'> {
    if (this.underWay === undefined) return { baseVersion: this.version };
    const { baseVersion, id } = this.underWay.request;
    return { baseVersion, after: id };
  }

  onState(listener: () => void): void {
    this.listeners.add(listener);
  }

  unsaved(): readonly SheetEdits[] {
    const waiting = this.changes.isWaiting ? lookAt(this.changes) : [];
    return joinEdits(this.underWay?.request.edits ?? [], waiting);
  }

  /** The same without answers of formulas: quick to tell after each change. */
  typed(): readonly SheetEdits[] {
    return joinEdits(this.underWay?.request.edits ?? [], this.changes.typed());
  }

  edited(): void {
    this.refused = undefined;
    this.tell();
  }

  begin(underWay: UnderWay): void {
    this.underWay = underWay;
    this.refused = undefined;
    this.tell();
  }

  end(answer: SaveAnswer): void {
    const ended = this.underWay;
    this.underWay = undefined;
    if (answer.kind === 'saved') {
      ended?.taken.saved();
      this.version = answer.version;
      this.lost = undefined;
    } else {
      ended?.taken.returned();
      if (answer.kind === 'refused') this.refused = answer.sentence;
      else this.isOutside = true;
    }
    this.tell();
  }

  /** Whether news say no more than we know. */
  isAsTold(news: FileNews): boolean {
    return news.kind === 'stands'
      ? news.version === this.version && this.lost === undefined
      : news.sentence === this.lost?.sentence;
  }

  /** Takes what the file itself shows; no save may be under way. */
  see(news: FileNews): void {
    this.lost = news.kind === 'lost' ? news : undefined;
    if (news.kind === 'stands' && news.version !== this.version) this.isOutside = true;
    this.tell();
  }

  private tell(): void {
    for (const listener of this.listeners) listener();
  }
}

function lookAt(changes: Changes): TakenEdits['edits'] {
  const taken = changes.take();
  taken.returned();
  return taken.edits;
}
