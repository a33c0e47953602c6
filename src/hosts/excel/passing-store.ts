import type { TextStore } from '../in-browser.ts';

/** A store that lasts as long as the page, for where the browser allows no other. */
export function passingStore(): TextStore {
  const texts = new Map<string, string>();
  return {
    getItem: (key) => texts.get(key) ?? null,
    setItem: (key, value) => void texts.set(key, value),
    removeItem: (key) => void texts.delete(key),
  };
}
