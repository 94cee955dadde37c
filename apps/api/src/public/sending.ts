import { createHash } from 'node:crypto';
import type { FastifyReply, FastifyRequest } from 'fastify';

/** Something that may be sent to everybody, written out. */
export interface Sendable {
  readonly type: string;
  readonly body: string;
  readonly etag: string;
}

export function sendable(type: string, body: string): Sendable {
  return { type, body, etag: `"${createHash('sha256').update(body).digest('base64url').slice(0, 27)}"` };
}

/** No answer to the public is kept for longer than this by anybody, so that what is taken back is gone by then. */
export const LONGEST_KEPT_S = 300;
/** While something goes on. */
const RUNNING_KEPT_S = 2;
const WAITING_KEPT_S = 30;

/** How long what shows this may be kept before it is asked for again. */
export function keptFor(states: readonly string[]): number {
  if (states.some((state) => state === 'running')) return RUNNING_KEPT_S;
  return states.length > 0 && states.every((state) => state === 'official' || state === 'amended')
    ? LONGEST_KEPT_S
    : WAITING_KEPT_S;
}

/** With a validator: whoever has it already is told so in a few bytes. */
export function sendPublic(
  request: FastifyRequest,
  reply: FastifyReply,
  { type, body, etag }: Sendable,
  keptS: number,
): void {
  void reply
    .header('cache-control', `public, max-age=${Math.min(keptS, LONGEST_KEPT_S)}`)
    .header('etag', etag);
  if (request.headers['if-none-match']?.includes(etag)) void reply.code(304).send();
  else void reply.type(type).send(body);
}
