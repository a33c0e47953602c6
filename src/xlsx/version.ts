import { sha256 } from '#sha256';

/** Names the content of a file: the same bytes give the same version. */
export const versionOf = (bytes: Uint8Array): string => sha256(bytes);
