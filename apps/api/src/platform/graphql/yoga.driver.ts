import type { Server } from 'node:http';
import { Injectable } from '@nestjs/common';
import { AbstractGraphQLDriver, type GqlModuleOptions } from '@nestjs/graphql';
import { useGraphQlJit } from '@envelop/graphql-jit';
import type { FastifyInstance } from 'fastify';
import { createYoga, type CORSOptions, type YogaServerInstance } from 'graphql-yoga';
import { CompetitionMemory } from '../competition/competition-memory.js';
import { publicError } from '../errors/classify.js';
import { Doorkeeper } from '../identity/doorkeeper.js';
import type { Log } from '../log.js';
import { LiveConnections } from '../live/live-connections.js';
import { useErrors } from './errors.plugin.js';
import { explorer, type ExplorerOptions } from './explorer.js';
import { graphqlRoute } from './graphql-route.js';
import { HttpConnection } from './http-connection.js';
import { useKeptAnswers } from './kept-answers.plugin.js';
import { useLimits } from './limits.plugin.js';
import { LiveDocuments } from './live-documents.js';
import { LiveHub } from './live-hub.js';
import { useLive } from './live.plugin.js';
import { senderOf, type RequestContext } from './request-context.js';
import { useRequestParameters, type HttpContext } from './request-parameters.js';
import { isQuery, useVariables } from './variables.plugin.js';
import { GraphqlSockets } from './websocket.js';

export interface YogaDriverOptions extends GqlModuleOptions {
  readonly log: Log;
  /** Null: no explorer is served. */
  readonly explorer: ExplorerOptions | null;
  /** Origins of pages of others that may ask here. */
  readonly origins: readonly string[];
  readonly trustedProxies: readonly string[];
}

/**
 * Serves the code-first schema with GraphQL Yoga on Fastify, each query compiled once. Queries come by GET or
 * POST, mutations by POST, subscriptions as server-sent events over either or by WebSocket.
 */
@Injectable()
export class YogaDriver extends AbstractGraphQLDriver<YogaDriverOptions> {
  private sockets: GraphqlSockets | null = null;

  constructor(
    private readonly memory: CompetitionMemory,
    private readonly doorkeeper: Doorkeeper,
    private readonly hub: LiveHub,
    private readonly listeners: LiveConnections,
  ) {
    super();
  }

  async start(options: YogaDriverOptions): Promise<void> {
    const path = options.path ?? '/graphql';
    const yoga = this.yogaOf(options, path);
    const fastify = this.httpAdapterHost.httpAdapter.getInstance<FastifyInstance>();
    await fastify.register(
      graphqlRoute({
        path,
        doorkeeper: this.doorkeeper,
        handle: (request, reply) => yoga.handleNodeRequestAndResponse(request, reply, { req: request }),
      }),
    );
    const { hub, listeners, doorkeeper } = this;
    const { schema, log, origins, trustedProxies } = options;
    this.sockets = new GraphqlSockets({
      ...{ path, hub, listeners, doorkeeper, log, origins, trustedProxies },
      documents: new LiveDocuments(schema!),
      http: this.httpAdapterHost.httpAdapter.getHttpServer() as Server,
    });
  }

  stop(): Promise<void> {
    // Open requests end with the HTTP server, and streams with the hub.
    this.sockets?.close();
    return Promise.resolve();
  }

  private yogaOf(options: YogaDriverOptions, path: string): YogaServerInstance<HttpContext, RequestContext> {
    if (!options.schema) throw new Error('The schema must be built before the server starts.');
    const { doorkeeper, listeners, hub, memory } = this;
    return createYoga<HttpContext, RequestContext>({
      schema: options.schema,
      graphqlEndpoint: path,
      logging: false,
      landingPage: false,
      batching: false,
      multipart: false,
      // The route reads bodies, under limits that depend on who sends.
      maxRequestBodySize: false,
      // What any site may read is the public contract.
      cors: (request) => corsFor(request.headers.get('origin'), options.origins),
      maskedErrors: { errorMessage: 'Something went wrong.', maskError: publicError },
      context: ({ req }) => ({
        identity: req.identity,
        traceId: req.id,
        ...senderOf(req),
        connection: new HttpConnection(req, doorkeeper, listeners),
      }),
      plugins: [
        useRequestParameters(),
        useLimits(),
        useKeptAnswers(memory),
        useVariables(),
        useGraphQlJit({}, { enableIf: ({ document, operationName }) => isQuery(document, operationName) }),
        useLive(hub),
        useErrors(options.log),
      ],
      ...explorer(options.explorer),
    });
  }
}

/** For pages of others that are named. The library takes an empty list for everybody, so the choice is made here. */
function corsFor(origin: string | null, allowed: readonly string[]): CORSOptions {
  if (origin === null || !allowed.includes(origin)) return false;
  return { origin, credentials: false, methods: ['GET', 'POST', 'OPTIONS'] };
}
