import type { FileNews } from '../protocol.ts';

/** How a look at the file came about: by the clock, or since something moved in its folder. */
export type Occasion = 'clock' | 'move';

/**
 * Looks at the file and tells what stands there. That it is lost is told only when the clock's look finds
 * it so once more: a program that is just writing it will have finished by then.
 */
export function tellOfFile(
  look: () => Promise<FileNews>,
  tell: (news: FileNews) => void,
): (occasion: Occasion) => Promise<void> {
  let wasLost = false;
  return async (occasion) => {
    const news = await look();
    const isSure = news.kind === 'stands' || (wasLost && occasion === 'clock');
    wasLost = news.kind === 'lost';
    if (isSure) tell(news);
  };
}
