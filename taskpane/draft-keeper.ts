import type { HostPort } from '../src/workbook/port.ts';
import { batchId, type Draft, keepDraft, newDraft, restoreDraft } from './draft.ts';

const KEY = 'pour draft';

/** The draft kept in the host's memory, or a new one where there is none that can be read. */
export function draftKept(port: HostPort): Draft {
  return restoreDraft(port.memory.get(KEY)) ?? freshDraft(port);
}

/** A new pour with an id of its own. */
export function freshDraft(port: HostPort): Draft {
  const today = port.today();
  return newDraft(batchId(today, port.newToken()), today);
}

/** Keeps a draft through reloads. False where the host has no room or no right to. */
export function keepInHost(port: HostPort, draft: Draft): boolean {
  try {
    port.memory.set(KEY, keepDraft(draft));
    return true;
  } catch {
    return false;
  }
}
