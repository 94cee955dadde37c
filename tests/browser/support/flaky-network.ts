import { connect, createServer, type AddressInfo, type Socket } from 'node:net';
import { xorshift128plus } from 'pure-rand/generator/xorshift128plus';
import { uniformInt } from 'pure-rand/distribution/uniformInt';

/** The way between a tablet and a server; calm until it is told otherwise. */
export interface FlakyNetwork {
  readonly port: number;
  /** From now on everything is late, some of it is dropped, and some answers end in the middle. */
  beRough(): void;
  beCalm(): void;
  /** How often it did something to somebody. */
  readonly mishaps: () => Readonly<Record<'late' | 'dropped' | 'cut', number>>;
  close(): Promise<void>;
}

const LATE_MS = 300;

export async function flakyNetwork(targetPort: number, seed: number): Promise<FlakyNetwork> {
  const generator = xorshift128plus(seed);
  const chance = (percent: number): boolean => uniformInt(generator, 1, 100) <= percent;
  const mishaps = { late: 0, dropped: 0, cut: 0 };
  const inside = new Set<Socket>();
  let isRough = false;
  const pass = (from: Socket, to: Socket, mayCut: boolean): void => {
    // One after the other, so that late bytes do not overtake each other.
    let before = Promise.resolve();
    from.on('data', (bytes: Buffer) => {
      const lateMs = isRough ? uniformInt(generator, 0, LATE_MS) : 0;
      const isDropped = isRough && chance(5);
      const isCut = isRough && mayCut && chance(5);
      before = before.then(async () => {
        if (lateMs > 0) {
          mishaps.late += 1;
          await new Promise((resolve) => setTimeout(resolve, lateMs));
        }
        if (isDropped) {
          mishaps.dropped += 1;
          from.destroy();
          to.destroy();
        } else if (isCut) {
          mishaps.cut += 1;
          to.write(bytes.subarray(0, Math.floor(bytes.length / 2)), () => to.resetAndDestroy());
        } else if (!to.destroyed) to.write(bytes);
      });
    });
  };
  const server = createServer((client) => {
    const target = connect(targetPort, '127.0.0.1');
    for (const socket of [client, target]) {
      inside.add(socket);
      socket.on('error', () => socket.destroy());
      socket.on('close', () => inside.delete(socket));
    }
    pass(client, target, false);
    pass(target, client, true);
    client.on('close', () => target.destroy());
    target.on('close', () => client.destroy());
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  return {
    port: (server.address() as AddressInfo).port,
    beRough: () => (isRough = true),
    beCalm: () => (isRough = false),
    mishaps: () => mishaps,
    close: () =>
      new Promise((done) => {
        server.close(() => done());
        for (const socket of inside) socket.destroy();
      }),
  };
}
