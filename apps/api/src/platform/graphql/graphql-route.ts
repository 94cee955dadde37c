import { randomUUID } from 'node:crypto';
import { Transform, type Readable } from 'node:stream';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { GraphQLError } from 'graphql';
import { badRequest } from '../errors/api-error.js';
import { bearerOf } from '../identity/bearer.js';
import { publicError } from '../errors/classify.js';
import { isDatabaseUnavailable } from '../errors/unavailable.js';
import type { Identity } from '../identity/identity.js';
import type { Doorkeeper } from '../identity/doorkeeper.js';
import { LIMITS } from './limits.js';

declare module 'fastify' {
  interface FastifyRequest {
    identity: Identity;
  }
}

export interface GraphqlRoute {
  readonly path: string;
  readonly doorkeeper: Doorkeeper;
  readonly handle: (request: FastifyRequest, reply: FastifyReply) => unknown;
  /** By default all that GraphQL knows. */
  readonly methods?: readonly ('GET' | 'POST' | 'OPTIONS')[];
}

/**
 * The one HTTP route of GraphQL: who asks, how much may be sent, is it JSON. What fails here is answered in the form
 * of a GraphQL result, too, so that a client has one form to read.
 */
export function graphqlRoute({ path, doorkeeper, handle, methods = METHODS }: GraphqlRoute) {
  return (scope: FastifyInstance, _options: unknown, done: () => void): void => {
    scope.decorateRequest('identity');
    scope.removeAllContentTypeParsers();
    scope.addContentTypeParser(
      /^application\/(graphql\+)?json(;|$)/,
      { parseAs: 'buffer' },
      (_request, body, parsed) => {
        readJson(body as Buffer, parsed);
      },
    );
    scope.addHook('onRequest', async (request, reply) => {
      if (request.headers.accept?.includes('text/html')) void reply.headers(PAGE_HEADERS);
      request.identity = await bearerOf(request, doorkeeper);
    });
    scope.addHook('preParsing', (request, _reply, payload, next) => {
      limitBody(request, payload, next);
    });
    scope.setErrorHandler((error: Error & { statusCode?: number; code?: string }, request, reply) => {
      sendFailure(error, request, reply);
    });
    scope.route({
      url: path,
      method: [...methods],
      bodyLimit: LIMITS.bodyBytesWithToken,
      handler: handle,
    });
    done();
  };
}

const METHODS = ['GET', 'POST', 'OPTIONS'] as const;

/** For the explorer's page: everything from here, shown in no frame, and kept by nobody, since it may hold a token. */
const PAGE_HEADERS = {
  'content-security-policy':
    "default-src 'self' 'unsafe-inline' 'unsafe-eval' blob: data:; frame-ancestors 'none'; base-uri 'none'",
  'cache-control': 'no-store',
  'referrer-policy': 'no-referrer',
};

/** Without a token 64 KiB are enough for anything; only who holds one may send a sheet. */
function limitBody(
  request: FastifyRequest,
  payload: Readable,
  next: (error: Error | null, payload?: Readable) => void,
): void {
  if (!request.identity.isPublic) return next(null, payload);
  const tooLarge = () => badRequest(`The body may have ${LIMITS.bodyBytes} bytes without a token.`, 413);
  if (Number(request.headers['content-length'] ?? 0) > LIMITS.bodyBytes) return next(tooLarge());
  let bytes = 0;
  const counter = new Transform({
    transform(chunk: Buffer, _encoding, pass) {
      bytes += chunk.length;
      if (bytes > LIMITS.bodyBytes) pass(tooLarge());
      else pass(null, chunk);
    },
  });
  next(null, request.headers['content-length'] === undefined ? payload.pipe(counter) : payload);
}

function readJson(body: Buffer, parsed: (error: Error | null, value?: unknown) => void): void {
  try {
    parsed(null, JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(body)));
  } catch {
    parsed(badRequest('The body must be JSON in UTF-8.'));
  }
}

const STATUS: Readonly<Record<string, number>> = { UNAUTHENTICATED: 401, UNAVAILABLE: 503 };

/** Ours as they are; a database that is away when somebody is looked up; the HTTP server's by what they mean. */
function shownFor(error: Error & { statusCode?: number; code?: string }): GraphQLError {
  if (error instanceof GraphQLError) return error;
  return isDatabaseUnavailable(error) ? publicError(error) : fromHttpServer(error);
}

/** Faults found before GraphQL. */
export function sendFailure(
  error: Error & { statusCode?: number; code?: string },
  request: FastifyRequest,
  reply: FastifyReply,
): void {
  const shown = shownFor(error);
  const { http, ...extensions } = shown.extensions as { http?: { status?: number }; code?: string };
  const status = http?.status ?? STATUS[extensions.code ?? ''] ?? 400;
  const wantsResponse = /application\/graphql-response\+json/.test(request.headers.accept ?? '');
  void reply
    .code(status)
    .type(
      wantsResponse ? 'application/graphql-response+json; charset=utf-8' : 'application/json; charset=utf-8',
    )
    .send(
      JSON.stringify({
        errors: [{ message: shown.message, extensions: { ...extensions, traceId: request.id } }],
      }),
    );
}

function fromHttpServer(error: Error & { statusCode?: number; code?: string }): GraphQLError {
  if (error.code === 'FST_ERR_CTP_INVALID_MEDIA_TYPE')
    return badRequest('Send "Content-Type: application/json".', 415);
  if (error.code === 'FST_ERR_CTP_BODY_TOO_LARGE')
    return badRequest(`The body may have ${LIMITS.bodyBytesWithToken} bytes.`, 413);
  return badRequest('The request could not be read.', error.statusCode ?? 400);
}

/** A client's own request id is kept when it is short and plain, so that its log and ours meet. */
export function requestId(headers: Readonly<Record<string, unknown>>): string {
  const given = headers['x-request-id'];
  return typeof given === 'string' && /^[\w-]{8,64}$/.test(given) ? given : randomUUID();
}
