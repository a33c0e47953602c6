import { isRecord } from '../../../domain/kernel/is-record.ts';

/** Which backup a page asks about: the one that was the file until that time; without it the newest. */
export interface BackupRequest {
  readonly until?: number;
}

/** Reads a request's JSON text; undefined where it is none. */
export function parseBackupRequest(text: string): BackupRequest | undefined {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return undefined;
  }
  if (!isRecord(value)) return undefined;
  const { until } = value;
  if (until === undefined) return {};
  return typeof until === 'number' && Number.isFinite(until) ? { until } : undefined;
}
