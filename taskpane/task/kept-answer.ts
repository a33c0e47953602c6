/**
 * Keeps the answer to what was asked last, for as long as the very same is asked: a page is drawn far
 * more often than what it shows changes.
 */
export function keptAnswer<Q extends readonly unknown[], A>(
  work: (...asked: Q) => A,
): (...asked: Q) => A {
  let last: { readonly asked: Q; readonly answer: A } | undefined;
  return (...asked) => {
    const isSame = last?.asked.every((part, index) => Object.is(part, asked[index])) === true;
    if (last === undefined || !isSame) last = { asked, answer: work(...asked) };
    return last.answer;
  };
}
