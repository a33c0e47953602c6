/** A button with its words and what it does; while that is under way it can't be pressed again. */
export function button(words: string, press: () => Promise<void> | void): HTMLButtonElement {
  const made = document.createElement('button');
  made.type = 'button';
  made.textContent = words;
  made.addEventListener('click', () => {
    made.disabled = true;
    void Promise.resolve(press()).finally(() => {
      made.disabled = false;
    });
  });
  return made;
}

/** An element with its content. */
export function made<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  ...content: readonly (Node | string)[]
): HTMLElementTagNameMap[K] {
  const it = document.createElement(tag);
  it.append(...content);
  return it;
}

/** A bar below the page's header with a sentence and what can be done; without a sentence it is away. */
export function createNotice(): (sentence: string, ...buttons: readonly HTMLElement[]) => void {
  const bar = made('div');
  bar.className = 'notice';
  bar.setAttribute('role', 'alert');
  bar.hidden = true;
  document.querySelector('header')?.after(bar);
  return (sentence, ...buttons) => {
    bar.hidden = sentence === '';
    bar.replaceChildren(made('p', sentence), ...buttons);
  };
}
