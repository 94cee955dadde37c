import { randomUUID } from 'node:crypto';
import { STATUS_CODES, type IncomingMessage, type Server } from 'node:http';
import type { Duplex } from 'node:stream';
import type { ExecutionArgs, GraphQLError } from 'graphql';
import { CloseCode, handleProtocols, makeServer } from 'graphql-ws';
import { WebSocketServer } from 'ws';
import { publicError } from '../errors/classify.js';
import type { Doorkeeper } from '../identity/doorkeeper.js';
import { tooManyListeners, type LiveConnections } from '../live/live-connections.js';
import type { Log } from '../log.js';
import type { Asked, LiveDocuments } from './live-documents.js';
import type { LiveHub } from './live-hub.js';
import { LIMITS } from './limits.js';
import { addressReader, mayConnect } from './origin.js';
import type { RequestContext } from './request-context.js';
import { SocketSession } from './socket-session.js';

export interface SocketParts {
  readonly path: string;
  readonly http: Server;
  readonly documents: LiveDocuments;
  readonly hub: LiveHub;
  readonly doorkeeper: Doorkeeper;
  readonly listeners: LiveConnections;
  /** Origins of pages of others that may open a socket. */
  readonly origins: readonly string[];
  readonly trustedProxies: readonly string[];
  readonly log: Log;
}

/** How long a client may take to say who it is. */
const INIT_MS = 3_000;
/** A socket that has not answered one ping when the next is due is gone. */
const PING_MS = 12_000;
/** "Going away", of the registry of RFC 6455. */
const GOING_AWAY = 1001;

/** Subscriptions over WebSocket, by the protocol `graphql-transport-ws`. */
export class GraphqlSockets {
  private readonly sessions = new Set<SocketSession>();
  private readonly server = new WebSocketServer({
    noServer: true,
    handleProtocols,
    maxPayload: LIMITS.bodyBytes,
    perMessageDeflate: false,
  });
  private readonly protocol;
  private readonly addressOf: (request: IncomingMessage) => string;
  private readonly pinging: NodeJS.Timeout;
  private readonly onUpgrade = (request: IncomingMessage, socket: Duplex, head: Buffer): void =>
    this.upgrade(request, socket, head);

  constructor(private readonly parts: SocketParts) {
    this.addressOf = addressReader(parts.trustedProxies);
    this.protocol = makeServer<Record<string, unknown>, SocketSession>({
      connectionInitWaitTimeout: INIT_MS,
      onConnect: ({ extra, connectionParams }) => extra.begin(connectionParams),
      onSubscribe: ({ extra, subscriptions }, _id, payload) =>
        this.argumentsOf(extra, payload, Object.keys(subscriptions).length),
      subscribe: async (args) => masked(await parts.hub.subscribe(args)),
      onNext: ({ extra }, _id, _payload, _args, result) => extra.placeholderOf(result) as never,
    });
    parts.http.on('upgrade', this.onUpgrade);
    this.pinging = setInterval(() => this.ping(), PING_MS).unref();
  }

  /** Sockets that are open now. */
  get count(): number {
    return this.sessions.size;
  }

  close(): void {
    clearInterval(this.pinging);
    this.parts.http.off('upgrade', this.onUpgrade);
    for (const { socket } of this.sessions) socket.close(GOING_AWAY, 'Going away');
    // Whoever has not said good-bye by then is cut off: the server must end.
    setTimeout(() => {
      for (const session of this.sessions) session.cut();
    }, 1_000).unref();
  }

  private upgrade(request: IncomingMessage, socket: Duplex, head: Buffer): void {
    const { path, listeners, origins, doorkeeper } = this.parts;
    if (request.url?.split('?', 1)[0] !== path) return refuse(socket, 404);
    if (!mayConnect(request, origins)) return refuse(socket, 403);
    const address = this.addressOf(request);
    const leave = listeners.enter(address);
    if (!leave) return refuse(socket, 429);
    socket.once('close', leave);
    this.server.handleUpgrade(request, socket, head, (opened) => {
      this.open(new SocketSession(opened, request, doorkeeper, address));
    });
  }

  private open(session: SocketSession): void {
    const { socket } = session;
    this.sessions.add(session);
    socket.on('error', () => session.cut());
    socket.on('pong', () => (session.isAlive = true));
    const closed = this.protocol.opened(
      {
        protocol: socket.protocol,
        send: (message) => session.send(message),
        close: (code, reason) => socket.close(code, reason),
        onMessage: (read) => {
          socket.on('message', (data) => {
            read((data as Buffer).toString()).catch((error: unknown) => {
              this.parts.log.failure('a message of a socket could not be handled', error);
              socket.close(CloseCode.InternalServerError, 'Internal server error');
            });
          });
        },
      },
      session,
    );
    socket.once('close', (code, reason) => {
      this.sessions.delete(session);
      void closed(code, reason.toString());
    });
  }

  private async argumentsOf(
    session: SocketSession,
    asked: Asked,
    open: number,
  ): Promise<ExecutionArgs | readonly GraphQLError[]> {
    const most = session.identity.isPublic ? LIMITS.publicSubscriptions : LIMITS.subscriptions;
    if (open > most) return [tooManyListeners('subscriptions')];
    try {
      const contextValue: RequestContext = {
        // What a token says may have changed since the socket was opened.
        identity: await session.identify(),
        traceId: randomUUID(),
        address: session.address,
        origin: '',
        connection: session,
      };
      return this.parts.documents.argumentsOf(asked, contextValue);
    } catch (error) {
      return [publicError(error)];
    }
  }

  private ping(): void {
    for (const session of this.sessions) {
      if (!session.isAlive) session.cut();
      session.isAlive = false;
      session.socket.ping();
    }
  }
}

type Result = Awaited<ReturnType<LiveHub['subscribe']>>;

/** What a resolver threw says no more here than it would over HTTP. */
function masked(result: Result): Result {
  if (Symbol.asyncIterator in result || !result.errors) return result;
  return { ...result, errors: result.errors.map((error) => publicError(error)) };
}

function refuse(socket: Duplex, status: number): void {
  socket.end(`HTTP/1.1 ${status} ${STATUS_CODES[status]}\r\nConnection: close\r\nContent-Length: 0\r\n\r\n`);
}
