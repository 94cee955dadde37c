import type { FastifyRequest } from 'fastify';
import { bearerOf } from '../identity/bearer.js';
import type { Doorkeeper } from '../identity/doorkeeper.js';
import type { Identity } from '../identity/identity.js';
import type { LiveConnections } from '../live/live-connections.js';
import type { Connection } from './request-context.js';

/** A request over HTTP; a subscription is the stream of its answer. */
export class HttpConnection implements Connection {
  constructor(
    private readonly request: FastifyRequest,
    private readonly doorkeeper: Doorkeeper,
    private readonly listeners: LiveConnections,
  ) {}

  identify(): Promise<Identity> {
    return bearerOf(this.request, this.doorkeeper);
  }

  hold(): (() => void) | null {
    return this.listeners.enter(this.request.ip);
  }

  cut(): void {
    this.request.raw.destroy();
  }

  refuse(): void {
    // The last event of the stream says why it ends.
  }
}
