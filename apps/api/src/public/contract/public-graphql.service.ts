import { Injectable, type OnModuleInit } from '@nestjs/common';
import { HttpAdapterHost } from '@nestjs/core';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { createYoga } from 'graphql-yoga';
import { CompetitionMemory } from '../../platform/competition/competition-memory.js';
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
import { TrustedAnswers, type TrustedAnswer } from './trusted-answers.js';

const PATH = '/public/graphql';

/**
 * The public contract over HTTP: trusted documents by GET, for every site. Free documents and introspection are for
 * whoever develops against it, where a setting opens them; what it is lies in `apps/api/public.schema.graphql`.
 */
@Injectable()
export class PublicGraphql implements OnModuleInit {
  private readonly schema = publicSchema();
  private readonly answers: TrustedAnswers;
  private readonly circumstances: Omit<PublicContext, 'readings'>;

  constructor(
    private readonly host: HttpAdapterHost,
    private readonly doorkeeper: Doorkeeper,
    snapshots: SnapshotsService,
    memory: CompetitionMemory,
    private readonly settings: PublicSettings,
    private readonly log: Log,
  ) {
    const { organisationId } = doorkeeper.everybody;
    this.circumstances = { snapshots, memory, organisationId };
    this.answers = new TrustedAnswers(this.schema, this.circumstances);
  }

  async onModuleInit(): Promise<void> {
    const free = this.settings.isOpen ? this.freely() : null;
    const fastify = this.host.httpAdapter.getInstance<FastifyInstance>();
    const handle = (request: FastifyRequest, reply: FastifyReply) => this.otherwise(request, reply, free);
    // What the crowd asks for goes past everything that a token or a body would need.
    await fastify.register((scope, _options, done) => {
      scope.setErrorHandler((error: Error, request, reply) =>
        sendFailure(publicError(error), request, reply),
      );
      scope.get(PATH, (request, reply) => {
        const kept = this.answers.atHand(request.url);
        if (kept) return sendKept(kept, request, reply);
        const { documentId, variables } = request.query as Record<string, unknown>;
        if (typeof documentId !== 'string') return handle(request, reply);
        return this.trusted(request, reply, documentId, variables);
      });
      done();
    });
    const { doorkeeper } = this;
    await fastify.register(graphqlRoute({ path: PATH, doorkeeper, handle, methods: ['POST', 'OPTIONS'] }));
  }

  private async trusted(
    request: FastifyRequest,
    reply: FastifyReply,
    documentId: string,
    variables: unknown,
  ): Promise<FastifyReply> {
    void reply.header('access-control-allow-origin', '*');
    if (variables !== undefined && typeof variables !== 'string')
      throw badRequest('"variables" may be given once.');
    const answer = await this.answers.answer(request.url, documentId, variables ?? '');
    sendPublic(request, reply, answer, answer.keptS);
    return reply;
  }

  private async otherwise(
    request: FastifyRequest,
    reply: FastifyReply,
    free: ReturnType<PublicGraphql['freely']> | null,
  ): Promise<unknown> {
    void reply.header('access-control-allow-origin', '*');
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
    const { schema, circumstances, log } = this;
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
      context: () => ({ ...circumstances, readings: [] }),
      plugins: [useRequestParameters(), useLimits(), useVariables(), useErrors(log)],
    });
  }
}

/** Past everything that the framework does for an answer that is still to be made. */
function sendKept(
  { type, body, bytes, etag, keptS }: TrustedAnswer,
  request: FastifyRequest,
  reply: FastifyReply,
) {
  reply.hijack();
  const { raw } = reply;
  const isKnown = request.headers['if-none-match']?.includes(etag) === true;
  const common = {
    'x-request-id': request.id,
    'x-content-type-options': 'nosniff',
    'access-control-allow-origin': '*',
    'cache-control': `public, max-age=${keptS}`,
    etag,
  };
  if (isKnown) raw.writeHead(304, common).end();
  else raw.writeHead(200, { ...common, 'content-type': type, 'content-length': bytes.length }).end(body);
  return reply;
}
