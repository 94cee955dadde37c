import { createServer } from 'node:net';

const TRIES = 20;

/** The port itself if it is free, else the next free one above. Null: none of twenty is. */
export async function freePort(port: number, host: string): Promise<number | null> {
  for (let candidate = port; candidate < port + TRIES && candidate <= 65535; candidate++) {
    if (await isFree(candidate, host)) return candidate;
  }
  return null;
}

/** Tries it; another fault than "taken" (no right to a low port, no such address) is thrown. */
function isFree(port: number, host: string): Promise<boolean> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EADDRINUSE') resolve(false);
      else reject(error);
    });
    probe.listen({ port, host, exclusive: true }, () => probe.close(() => resolve(true)));
  });
}
