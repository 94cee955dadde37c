import type { FastifyRequest } from 'fastify';
import type { Identity } from '../identity/identity.js';

/** What a resolver can know of the request. */
export interface RequestContext extends Sender {
  readonly identity: Identity;
  /** The request's id: in every error as `traceId`, in the log, and in the header `x-request-id`. */
  readonly traceId: string;
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
