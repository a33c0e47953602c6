import { createHash } from 'node:crypto';

/** Names the content of a file: the same bytes give the same version. */
export function versionOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}
