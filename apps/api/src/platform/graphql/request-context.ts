import type { FastifyRequest } from 'fastify';
import type { Identity } from '../identity/identity.js';

/** What a resolver can know of the request. */
export interface RequestContext extends Sender {
  readonly identity: Identity;
  /** The request's id: in every error as `traceId`, in the log, and in the header `x-request-id`. */
  readonly traceId: string;
  readonly connection: Connection;
}

/** What a request came by, for what goes on after it: a subscription. */
export interface Connection {
  /** Who asks, looked at again. Throws UNAUTHENTICATED once what was shown holds no longer. */
  identify(): Promise<Identity>;
  /** Takes one place among those who listen; null: there is none. Call what is returned to give it back. */
  hold(): (() => void) | null;
  /** Ends it at once: nobody reads at the other end. */
  cut(): void;
  /** Ends it because nothing may be seen by it any more. */
  refuse(): void;
}

export interface Sender {
  /** Where the request came from, as far as the network says. */
  readonly address: string;
  /** How the sender calls this server, e.g. `https://meet.example`: for links back to it. */
  readonly origin: string;
}

export function senderOf({ ip, protocol, host }: FastifyRequest): Sender {
  return { address: ip, origin: `${protocol}://${host}` };
}
