import { connect, createServer, type AddressInfo, type Socket } from 'node:net';

/** A door between a client and a server that can be shut, cutting everybody who is inside. */
export interface TcpGate {
  readonly port: number;
  shut(): Promise<void>;
  open(): Promise<void>;
}

export async function tcpGate(targetHost: string, targetPort: number): Promise<TcpGate> {
  const inside = new Set<Socket>();
  const server = createServer((client) => {
    const target = connect(targetPort, targetHost);
    for (const socket of [client, target]) {
      inside.add(socket);
      socket.on('error', () => socket.destroy());
      socket.on('close', () => inside.delete(socket));
    }
    client.pipe(target).pipe(client);
    client.on('close', () => target.destroy());
    target.on('close', () => client.destroy());
  });
  const listen = (port: number): Promise<void> =>
    new Promise((done) => server.listen(port, '127.0.0.1', done));
  await listen(0);
  const { port } = server.address() as AddressInfo;
  return {
    port,
    open: () => listen(port),
    shut: () =>
      new Promise((done) => {
        server.close(() => done());
        for (const socket of inside) socket.destroy();
      }),
  };
}
