import { isRecord } from '../../src/domain/kernel/is-record.ts';
import type { Change } from '../../src/workbook/port.ts';
import type { Typed } from './typed.ts';

/** Text to keep, which `restore` reads. `form` changes when a kept draft can't be read as before. */
export function keepAs(form: number, draft: object): string {
  return JSON.stringify({ form, draft });
}

/** A kept draft, or undefined where the text is none: a half-written or foreign text is never trusted. */
export function restoreAs<D>(
  form: number,
  text: string | undefined,
  isDraft: (value: unknown) => value is D,
): D | undefined {
  if (text === undefined) return undefined;
  try {
    const kept: unknown = JSON.parse(text);
    if (!isRecord(kept) || kept['form'] !== form) return undefined;
    return isDraft(kept['draft']) ? kept['draft'] : undefined;
  } catch {
    return undefined;
  }
}

/** Whether a value holds text under each of these names. */
export function holdsTexts(value: object, names: readonly string[]): boolean {
  const held = new Map<string, unknown>(Object.entries(value));
  return names.every((name) => typeof held.get(name) === 'string');
}

export function isTyped(value: unknown): value is Typed {
  return isRecord(value) && Object.values(value).every((figure) => typeof figure === 'string');
}

/** Whether a value is nothing, or a change that was being written. */
export function isRecording(value: unknown): value is Change | undefined {
  if (value === undefined) return true;
  if (!isRecord(value) || !Array.isArray(value['appends']) || !Array.isArray(value['updates']))
    return false;
  return value['appends'].every(
    (append: unknown) =>
      isRecord(append) &&
      typeof append['table'] === 'string' &&
      typeof append['idColumn'] === 'string' &&
      Array.isArray(append['rows']) &&
      append['rows'].every(isRecord),
  );
}

export const isListOfTexts = (value: unknown): value is readonly string[] =>
  Array.isArray(value) && value.every((text) => typeof text === 'string');
