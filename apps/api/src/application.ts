import 'reflect-metadata';
import type { IncomingMessage } from 'node:http';
import { NestFactory } from '@nestjs/core';
import { FastifyAdapter, type NestFastifyApplication } from '@nestjs/platform-fastify';
import { AppModule, type AppParts } from './app.module.js';
import { requestId } from './platform/graphql/graphql-route.js';
import { webRoutes } from './platform/web/web-routes.js';

/** Builds the server, not listening yet. Whoever builds it closes it; the database is the caller's. */
export async function createApplication(parts: AppParts): Promise<NestFastifyApplication> {
  const adapter = new FastifyAdapter({
    logger: false,
    // Idle keep-alive connections end with the server; busy ones get their answer first.
    forceCloseConnections: 'idle',
    requestTimeout: 30_000,
    // Tries to sign in are counted by address: without this all who come through a proxy would be one.
    trustProxy: parts.trustedProxies?.length ? [...parts.trustedProxies] : false,
    genReqId: (request: IncomingMessage) => requestId(request.headers),
  });
  const fastify = adapter.getInstance();
  // Neither waits: a promise for each request would be a good part of what a kept answer costs.
  fastify.addHook('onRequest', (request, reply, next) => {
    void reply.header('x-request-id', request.id).header('x-content-type-options', 'nosniff');
    next();
  });
  if (parts.log.writes('debug'))
    fastify.addHook('onResponse', (request, reply, next) => {
      parts.log.write('debug', 'request', {
        traceId: request.id,
        method: request.method,
        // Without the query string, which may carry names.
        path: request.url.split('?', 1)[0],
        status: reply.statusCode,
        ms: Math.round(reply.elapsedTime),
      });
      next();
    });
  if (parts.web) await fastify.register(webRoutes(parts.web));
  const app = await NestFactory.create<NestFastifyApplication>(AppModule.of(parts), adapter, {
    logger: parts.log,
    bodyParser: false,
    abortOnError: false,
  });
  await app.init();
  await fastify.ready();
  return app;
}
