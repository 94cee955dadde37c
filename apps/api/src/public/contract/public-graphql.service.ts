import { Injectable, type OnModuleInit } from '@nestjs/common';
import { HttpAdapterHost } from '@nestjs/core';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { createYoga } from 'graphql-yoga';
import { badRequest } from '../../platform/errors/api-error.js';
import { publicError } from '../../platform/errors/classify.js';
import { useErrors } from '../../platform/graphql/errors.plugin.js';
import { graphqlRoute, sendFailure } from '../../platform/graphql/graphql-route.js';
import { useLimits } from '../../platform/graphql/limits.plugin.js';
import { PublicSettings } from '../../platform/graphql/public-settings.js';
import { useRequestParameters, type HttpContext } from '../../platform/graphql/request-parameters.js';
import { useVariables } from '../../platform/graphql/variables.plugin.js';
import { Doorkeeper } from '../../platform/identity/doorkeeper.js';
import { Log } from '../../platform/log.js';
import { sendPublic } from '../sending.js';
import { SnapshotsService } from '../snapshots.service.js';
import { publicSchema, type PublicContext } from './public-schema.js';
import { TrustedAnswers } from './trusted-answers.js';

const PATH = '/public/graphql';

/**
 * The public contract over HTTP: trusted documents by GET, for every site. Free documents and introspection are for
 * whoever develops against it, where a setting opens them; what it is lies in `apps/api/public.schema.graphql`.
 */
@Injectable()
export class PublicGraphql implements OnModuleInit {
  private readonly schema = publicSchema();
  private readonly answers: TrustedAnswers;

  constructor(
    private readonly host: HttpAdapterHost,
    private readonly doorkeeper: Doorkeeper,
    private readonly snapshots: SnapshotsService,
    private readonly settings: PublicSettings,
    private readonly log: Log,
  ) {
    this.answers = new TrustedAnswers(this.schema, snapshots);
  }

  async onModuleInit(): Promise<void> {
    const free = this.settings.isOpen ? this.freely() : null;
    const fastify = this.host.httpAdapter.getInstance<FastifyInstance>();
    await fastify.register(
      graphqlRoute({
        path: PATH,
        doorkeeper: this.doorkeeper,
        handle: (request, reply) => this.handle(request, reply, free),
      }),
    );
  }

  private async handle(
    request: FastifyRequest,
    reply: FastifyReply,
    free: ReturnType<PublicGraphql['freely']> | null,
  ): Promise<unknown> {
    const { documentId, variables } = request.query as Record<string, unknown>;
    void reply.header('access-control-allow-origin', '*');
    if (request.method === 'GET' && typeof documentId === 'string') {
      if (variables !== undefined && typeof variables !== 'string')
        throw badRequest('"variables" may be given once.');
      const answer = await this.answers.answer(documentId, variables ?? '').catch((error: unknown) => {
        throw publicError(error);
      });
      sendPublic(request, reply, answer, answer.keptS);
      return reply;
    }
    if (request.method === 'OPTIONS')
      return reply
        .headers({ 'access-control-allow-methods': 'GET', 'access-control-allow-headers': '*' })
        .code(204)
        .send();
    if (free) return free.handleNodeRequestAndResponse(request, reply, { req: request });
    const refusal = badRequest(
      'Only documents that this server knows are answered here: GET with "documentId" and "variables".',
      request.method === 'GET' ? 400 : 405,
    );
    sendFailure(refusal, request, reply.header('allow', 'GET'));
    return reply;
  }

  private freely() {
    const { schema, snapshots, log } = this;
    return createYoga<HttpContext, PublicContext>({
      schema,
      graphqlEndpoint: PATH,
      logging: false,
      landingPage: false,
      graphiql: false,
      batching: false,
      multipart: false,
      maxRequestBodySize: false,
      cors: { origin: '*', credentials: false, methods: ['GET', 'POST', 'OPTIONS'] },
      maskedErrors: { errorMessage: 'Something went wrong.', maskError: publicError },
      context: () => ({ snapshots, readings: [] }),
      plugins: [useRequestParameters(), useLimits(), useVariables(), useErrors(log)],
    });
  }
}
