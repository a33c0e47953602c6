/**
 * Stands in for the grid's `cjk-regex`, which brings 430 kB of Unicode tables along: the browser has
 * them itself. The grid asks only whether a text holds such signs, to choose where its lines may break.
 */
const scripts = ['Han', 'Katakana', 'Hiragana', 'Hangul', 'Bopomofo']
  .map((script) => String.raw`\p{Script=${script}}`)
  .join('');

/** Blocks of punctuation, by their code points in the Unicode character database. */
const blocks = String.raw`\u3000-\u303f\u3190-\u319f\u31c0-\u31ef\u3200-\u33ff\ufe10-\ufe1f\ufe30-\ufe6f\uff00-\uffef`;

const matching = (set: string) => ({ toRegExp: () => new RegExp(`[${set}]`, 'u') });

export const letters = () => matching(scripts);
export const punctuations = () => matching(blocks);
export const all = () => matching(scripts + blocks);
