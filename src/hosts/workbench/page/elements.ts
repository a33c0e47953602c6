/** An element of index.html by its id. */
export function element(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (!found) throw new Error(`The page has no element ${id}.`);
  return found;
}

/** Puts a text into the element with that id; "" hides it. */
export function show(id: string, text: string): void {
  const target = element(id);
  if (target.textContent !== text) target.textContent = text;
  target.hidden = text === '';
}

/** A time in milliseconds as a sentence names it: "28 Nov 2026, 14:03". */
export const timeInWords = (time: number): string =>
  new Date(time).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
