import { Catch, HttpException, type ArgumentsHost, type ExceptionFilter } from '@nestjs/common';
import type { GqlContextType } from '@nestjs/graphql';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { STATUS_CODES } from 'node:http';
import type { Log } from '../log.js';
import { GraphQLError } from 'graphql';
import { sendProblem } from './problem.js';

/** Answers faults of plain HTTP routes as problem details; GraphQL has its own way and gets its errors unchanged. */
@Catch()
export class ProblemFilter implements ExceptionFilter {
  constructor(private readonly log: Log) {}

  catch(error: unknown, host: ArgumentsHost): void {
    if (host.getType<GqlContextType>() !== 'http') throw error;
    const request = host.switchToHttp().getRequest<FastifyRequest>();
    const reply = host.switchToHttp().getResponse<FastifyReply>();
    const status = statusOf(error);
    if (status >= 500) this.log.failure('unexpected error', error, { traceId: request.id });
    sendProblem(reply, { status, title: STATUS_CODES[status] ?? 'Error', traceId: request.id });
  }
}

/** Faults that the capabilities throw, on a plain HTTP route. */
const STATUS_OF_CODE: Readonly<Record<string, number>> = {
  UNAUTHENTICATED: 401,
  FORBIDDEN: 403,
  BAD_USER_INPUT: 400,
  RATE_LIMITED: 429,
  UNAVAILABLE: 503,
};

/** What the HTTP server refuses by itself carries its status; anything else is ours. */
function statusOf(error: unknown): number {
  if (error instanceof HttpException) return error.getStatus();
  if (error instanceof GraphQLError) return STATUS_OF_CODE[String(error.extensions['code'])] ?? 500;
  const status = (error as { statusCode?: unknown } | null)?.statusCode;
  return typeof status === 'number' && status >= 400 && status < 500 ? status : 500;
}
