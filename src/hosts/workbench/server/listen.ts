import type { Server } from 'node:http';

/** The workbench's usual port: the page's own memory in the browser belongs to it. */
const USUAL_PORT = 4180;

/** Listens on this machine only; without a wish the usual port, or any free one. Resolves to the port. */
export async function listen(server: Server, wish: number | undefined): Promise<number> {
  try {
    return await listenOn(server, wish ?? USUAL_PORT);
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
