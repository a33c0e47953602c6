import type { IncomingMessage } from 'node:http';

/** Far above any save by hand, far below harm. */
export const MAX_BODY_BYTES = 32 * 1024 * 1024;

/** A request's body as text; undefined when it is longer than a save can be. */
export async function readBody(request: IncomingMessage): Promise<string | undefined> {
  if (Number(request.headers['content-length'] ?? 0) > MAX_BODY_BYTES) return undefined;
  const pieces: Buffer[] = [];
  let size = 0;
  for await (const piece of request as AsyncIterable<Buffer>) {
    size += piece.length;
    if (size > MAX_BODY_BYTES) return undefined;
    pieces.push(piece);
  }
  return Buffer.concat(pieces).toString('utf8');
}
