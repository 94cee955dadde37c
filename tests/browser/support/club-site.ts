import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

/** A page of a club somewhere else than where the results are. */
export interface ClubSite {
  readonly url: string;
  /** What is between its `<body>` and its end, and what its server says of what may run there. */
  show(body: string, policy?: string): void;
  close(): Promise<void>;
}

export async function openClubSite(): Promise<ClubSite> {
  let page = { body: '', policy: '' };
  const server = createServer((_request, response) => {
    const { body, policy } = page;
    response.writeHead(200, {
      'content-type': 'text/html; charset=utf-8',
      ...(policy !== '' && { 'content-security-policy': policy }),
    });
    response.end(
      `<!DOCTYPE html><html lang="en"><head><title>Harriers</title></head><body>${body}</body></html>`,
    );
  }).listen(0, '127.0.0.1');
  await once(server, 'listening');
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    show: (body, policy = '') => (page = { body, policy }),
    close: async () => {
      server.closeAllConnections();
      server.close();
      await once(server, 'close');
    },
  };
}
