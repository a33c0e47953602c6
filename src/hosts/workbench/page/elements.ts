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
