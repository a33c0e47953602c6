import { html, nothing } from 'lit';
import type { Asked, Question } from '../task/question.ts';
import { noticeBar } from './notice.ts';
import { tickLine } from './tick-line.ts';

/** Each question with the yes to tick; `onSure` takes the keys of all that are ticked then. */
export function askFirst(
  questions: readonly Question[],
  { sure = [] }: Asked,
  onSure: (sure: readonly string[]) => void,
) {
  if (questions.length === 0) return nothing;
  return html`${questions.map(({ key, sentence, yes }, index) =>
    noticeBar(
      { kind: 'warn', text: sentence },
      tickLine(`sure-${String(index)}`, sure.includes(key), yes, (isTicked) => {
        const others = sure.filter((known) => known !== key);
        onSure(isTicked ? [...others, key] : others);
      }),
    ),
  )}`;
}
