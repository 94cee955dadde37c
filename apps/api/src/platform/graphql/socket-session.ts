import type { IncomingMessage } from 'node:http';
import type { ExecutionResult } from 'graphql';
import { CloseCode } from 'graphql-ws';
import type { WebSocket } from 'ws';
import { bearerOf } from '../identity/bearer.js';
import type { Doorkeeper } from '../identity/doorkeeper.js';
import type { Identity } from '../identity/identity.js';
import type { WrittenResult } from '../live/live-subscription.js';
import type { Connection } from './request-context.js';

/** Stands for a result that is written out already: the protocol's library writes the message round it. */
interface Placeholder {
  readonly written: number;
}
const PLACEHOLDER = /\{"written":(\d+)\}\}$/;

/** "Try again later", of the registry of RFC 6455. */
const TRY_AGAIN_LATER = 1013;

/** One WebSocket: who is behind it, and how it is written to. */
export class SocketSession implements Connection {
  identity: Identity;
  private authorization: string | undefined;
  private readonly results = new Map<number, Buffer>();
  private written = 0;
  isAlive = true;

  constructor(
    readonly socket: WebSocket,
    request: IncomingMessage,
    private readonly doorkeeper: Doorkeeper,
    readonly address: string,
  ) {
    this.authorization = request.headers.authorization;
    this.identity = doorkeeper.everybody;
  }

  /** A token comes as a header or, from a browser, which can set none, as a parameter of the same name. */
  async begin(parameters: Readonly<Record<string, unknown>> | undefined): Promise<boolean> {
    const given = parameters?.['authorization'] ?? parameters?.['Authorization'];
    if (typeof given === 'string') this.authorization = given;
    try {
      this.identity = await this.identify();
      return true;
    } catch (error) {
      const code = (error as { extensions?: { code?: unknown } }).extensions?.code;
      if (code !== 'UNAUTHENTICATED') this.socket.close(TRY_AGAIN_LATER, 'Try again later');
      return false;
    }
  }

  identify(): Promise<Identity> {
    return bearerOf({ headers: { authorization: this.authorization } }, this.doorkeeper);
  }

  /** The connection has its place already; how many subscriptions it may have is counted with them. */
  hold(): () => void {
    return () => undefined;
  }

  cut(): void {
    this.socket.terminate();
  }

  refuse(): void {
    this.socket.close(CloseCode.Forbidden, 'Forbidden');
  }

  /** What the library is to write in the place of a result whose bytes all subscribers share. */
  placeholderOf({ frame }: WrittenResult): Placeholder | undefined {
    if (!frame) return undefined;
    this.written += 1;
    this.results.set(this.written, frame.bytes);
    return { written: this.written };
  }

  /** Ends when the message has been handed to the network, so that whoever reads slowly is sent the newest only. */
  send(message: string): Promise<void> {
    const { socket } = this;
    return new Promise((resolve, reject) => {
      if (socket.readyState !== socket.OPEN) return resolve();
      socket.send(this.spliced(message), { binary: false }, (error) => {
        if (error) reject(error);
        else resolve();
      });
    });
  }

  private spliced(message: string): string | Buffer {
    const at = this.results.size > 0 ? PLACEHOLDER.exec(message) : null;
    const bytes = at && this.results.get(Number(at[1]));
    if (!bytes) return message;
    this.results.delete(Number(at[1]));
    return Buffer.concat([Buffer.from(message.slice(0, at.index)), bytes, CLOSING]);
  }
}

const CLOSING = Buffer.from('}');

/** As the protocol's library wants it. */
export type Results = AsyncIterable<ExecutionResult> | ExecutionResult;
