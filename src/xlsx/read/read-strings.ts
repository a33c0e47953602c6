import { typedText } from '../xml/xml-text.ts';
import { walkXml } from '../xml/xml-walk.ts';

/** The texts of xl/sharedStrings.xml in order; runs of rich text are joined, phonetic guides left out. */
export function readStrings(part: string, source: string): readonly string[] {
  const strings: string[] = [];
  let text = '';
  let inText = false;
  let inPhonetic = false;
  walkXml(part, source, {
    open(name) {
      if (name === 'si') text = '';
      else if (name === 'rPh') inPhonetic = true;
      else if (name === 't') inText = !inPhonetic;
    },
    text(piece) {
      if (inText) text += piece;
    },
    close(name) {
      if (name === 'si') strings.push(typedText(text));
      else if (name === 'rPh') inPhonetic = false;
      else if (name === 't') inText = false;
    },
  });
  return strings;
}
