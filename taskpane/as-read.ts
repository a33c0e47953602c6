import { readDay } from '../src/domain/kernel/day.ts';
import type { OnSheets } from '../src/workbook/sheet-words.ts';
import { day } from './format.ts';

/** One pane shows one workbook: its words are those of that workbook's sheets. */
let words: OnSheets = (sentence) => sentence;

/** The workbook was read, and its sheets are called this. */
export function speakOf(sheets: OnSheets): void {
  words = sheets;
}

/**
 * A sentence of the core as the maker reads it in the pane: each table by the name on its tab, and
 * 2026-11-25 as 25 Nov 2026.
 */
export const asRead = (sentence: string): string =>
  words(sentence).replace(isoDays, (iso) => {
    const read = readDay(iso);
    return read === undefined ? iso : day(read);
  });

/** Days of a sentence; one in the name of a file is part of that name. */
const isoDays = /(?<![\w-])\d{4}-\d{2}-\d{2}(?![\w-]|\.\w)/gu;
