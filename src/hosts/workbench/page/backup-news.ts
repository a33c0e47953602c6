import type { WrittenInto } from '../protocol.ts';
import { element, show, timeInWords } from './elements.ts';
import type { Saver } from './saver.ts';
import type { FileHome } from './file-home.ts';

/**
 * Says that another program saved into a state that this page had replaced, and offers to take it. Which of the two is
 * right nobody but the maker knows. `letGo` is called before the page loads anew.
 */
export function showBackupNews(
  { connection, backups }: Pick<FileHome, 'connection' | 'backups'>,
  saver: Pick<Saver, 'hasUnsaved'>,
  letGo: () => void,
): void {
  let told: WrittenInto | undefined;
  connection.onBackups(({ writtenInto }) => {
    told = writtenInto;
    show('backup-news-text', told === undefined ? '' : sentenceOf(told));
    element('backup-news').hidden = told === undefined;
  });
  element('backup-take').addEventListener('click', () => {
    if (told === undefined) return;
    void backups?.take(told.until).then((sentence) => {
      if (sentence !== undefined) show('backup-news-text', sentence);
      // Cells that are not saved yet stay to be kept: the page says then that the file changed.
      else if (!saver.hasUnsaved) {
        letGo();
        location.reload();
      }
    });
  });
  element('backup-leave').addEventListener('click', () => {
    if (told !== undefined) void backups?.leave(told.until);
  });
}

const sentenceOf = ({ until, path }: WrittenInto): string =>
  `Another program still had open what this file was until ${timeInWords(until)}, and has saved into it since. ` +
  `What it saved is not in this workbook but in ${path}. Close the workbook in that program first. ` +
  'To look before you choose, open that file as any workbook. What stands here now is kept as a backup as well.';
