import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { ELEMENT_ADDRESS } from './front-end.js';
import type { WebFile, WebFiles } from './web-files.js';

/** Everything comes from here, nothing is written into the page, and no other page may show it in a frame. */
const PAGE_HEADERS = {
  'content-security-policy': [
    "default-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
    "object-src 'none'",
  ].join('; '),
  'cross-origin-opener-policy': 'same-origin',
  'referrer-policy': 'no-referrer',
};

/** What pages of others run: they may read it, so that they can check that it is what they were told. */
const FOR_OTHERS = {
  'access-control-allow-origin': '*',
  'cross-origin-resource-policy': 'cross-origin',
  'cache-control': 'public, max-age=300',
};

/** Serves the files of the front end under their addresses, and nothing else. */
export function webRoutes(files: WebFiles) {
  return (scope: FastifyInstance, _options: unknown, done: () => void): void => {
    for (const [address, file] of files) {
      scope.route({
        url: address,
        method: ['GET', 'HEAD'],
        handler: (request, reply) => send(file, request, reply, ELEMENT_ADDRESS.test(address)),
      });
    }
    done();
  };
}

function send(
  file: WebFile,
  request: FastifyRequest,
  reply: FastifyReply,
  isForOthers: boolean,
): FastifyReply {
  const { type, plain, zipped, etag, isImmutable } = file;
  void reply
    .headers(PAGE_HEADERS)
    .header('cache-control', isImmutable ? 'public, max-age=31536000, immutable' : 'no-cache')
    .header('vary', 'accept-encoding')
    .header('etag', etag);
  if (isForOthers) void reply.headers(FOR_OTHERS);
  if (request.headers['if-none-match'] === etag) return reply.code(304).send();
  const takesZipped = /\bgzip\b/.test(request.headers['accept-encoding']?.toString() ?? '');
  if (zipped === null || !takesZipped) return reply.type(type).send(plain);
  return reply.type(type).header('content-encoding', 'gzip').send(zipped);
}
