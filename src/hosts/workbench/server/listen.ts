import type { Server } from 'node:http';

/** Where a workbook is served that never was before. */
const USUAL_PORT = 4180;

/**
 * Listens on this machine only; without a wish on the port of the time before, or any free one. Resolves
 * to the port.
 */
export async function listen(
  server: Server,
  wish: number | undefined,
  before?: number,
): Promise<number> {
  try {
    return await listenOn(server, wish ?? before ?? USUAL_PORT);
  } catch (error) {
    const taken = error instanceof Error && 'code' in error && error.code === 'EADDRINUSE';
    if (!taken) throw error;
    if (wish !== undefined)
      throw new Error(`port ${wish} is in use; choose another`, { cause: error });
    return listenOn(server, 0);
  }
}

function listenOn(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject);
      const address = server.address();
      resolve(typeof address === 'object' && address ? address.port : port);
    });
  });
}
