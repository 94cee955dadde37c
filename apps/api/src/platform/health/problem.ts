import type { FastifyReply } from 'fastify';

/** A fault outside GraphQL, as RFC 9457 says it. `type` is "about:blank": the status says all there is to say. */
export interface ProblemDetails {
  readonly status: number;
  readonly title: string;
  readonly detail?: string;
  readonly traceId: string;
}

export function sendProblem(reply: FastifyReply, problem: ProblemDetails): void {
  void reply
    .code(problem.status)
    .type('application/problem+json')
    .send(JSON.stringify({ type: 'about:blank', ...problem }));
}
