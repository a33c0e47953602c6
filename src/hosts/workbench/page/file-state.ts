import type { SaveAnswer, SaveRequest, SheetEdits } from '../../xlsx/image.ts';
import type { FileNews, Lost } from '../protocol.ts';
import type { Changes, Taken } from './changes.ts';
import type { Connection } from './connection.ts';
import { joinEdits } from './join-edits.ts';

/** Where the workbook stands against its file. */
export type SaveState =
  | { readonly kind: 'saved' }
  | { readonly kind: 'saving' }
  /** It could not be written, or it is gone or damaged; `backup` as in `Lost`. */
  | { readonly kind: 'not saved'; readonly sentence: string; readonly backup?: number | undefined }
  /** No server is heard: nobody knows of the file, and nothing is written until it is back. */
  | { readonly kind: 'not connected' }
  /** The file was changed by something else; nothing is written any more until it is loaded again. */
  | { readonly kind: 'changed outside' };

/** A save whose answer is not known yet. */
export interface UnderWay {
  readonly request: SaveRequest;
  readonly taken: Taken;
}

/** What is known of the file: the version we stand on, and whether it is still the file's own. */
export function createFileState(changes: Changes, connection: Connection, firstVersion: string) {
  const listeners = new Set<(state: SaveState) => void>();
  let version = firstVersion;
  let isOutside = false;
  let refused: string | undefined;
  let lost: Lost | undefined;
  let underWay: UnderWay | undefined;
  const hasUnsaved = () => changes.isWaiting || underWay !== undefined;
  const state = (): SaveState => {
    if (isOutside) return { kind: 'changed outside' };
    if (!connection.isOpen) return { kind: 'not connected' };
    const sentence = refused ?? lost?.sentence;
    if (sentence !== undefined) return { kind: 'not saved', sentence, backup: lost?.backup };
    return { kind: hasUnsaved() ? 'saving' : 'saved' };
  };
  const tell = () => {
    for (const listener of listeners) listener(state());
  };
  connection.onChange(tell);
  return {
    get state() {
      return state();
    },
    get version() {
      return version;
    },
    get isOutside() {
      return isOutside;
    },
    get hasUnsaved() {
      return hasUnsaved();
    },
    /** What a save sent now goes over. */
    get base(): Pick<SaveRequest, 'baseVersion' | 'after'> {
      if (underWay === undefined) return { baseVersion: version };
      return { baseVersion: underWay.request.baseVersion, after: underWay.request.id };
    },
    onState: (listener: (state: SaveState) => void) => void listeners.add(listener),
    unsaved(): readonly SheetEdits[] {
      const waiting = changes.isWaiting ? lookAt(changes) : [];
      return joinEdits(underWay?.request.edits ?? [], waiting);
    },
    edited() {
      refused = undefined;
      tell();
    },
    begin(next: UnderWay) {
      [underWay, refused] = [next, undefined];
      tell();
    },
    end(answer: SaveAnswer) {
      const ended = underWay;
      underWay = undefined;
      if (answer.kind === 'saved') {
        ended?.taken.saved();
        [version, lost] = [answer.version, undefined];
      } else {
        ended?.taken.returned();
        if (answer.kind === 'refused') refused = answer.sentence;
        else isOutside = true;
      }
      tell();
    },
    /** Whether news say no more than we know. */
    isAsTold: (news: FileNews) =>
      news.kind === 'stands'
        ? news.version === version && lost === undefined
        : news.sentence === lost?.sentence,
    /** Takes what the file itself shows; no save may be under way. */
    see(news: FileNews | undefined) {
      if (news === undefined) return;
      lost = news.kind === 'lost' ? news : undefined;
      if (news.kind === 'stands' && news.version !== version) isOutside = true;
      tell();
    },
  };
}

function lookAt(changes: Changes): Taken['edits'] {
  const taken = changes.take();
  taken.returned();
  return taken.edits;
}
