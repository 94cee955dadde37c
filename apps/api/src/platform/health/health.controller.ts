import { Controller, Get, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { sendProblem } from './problem.js';
import { ReadinessProbe } from './readiness.js';

@Controller()
export class HealthController {
  constructor(private readonly probe: ReadinessProbe) {}

  /** The process answers. Says nothing of the database, or a lost database would have it killed over and over. */
  @Get('livez')
  live(): { status: 'live' } {
    return { status: 'live' };
  }

  /** The process can do its work: the database answers and has every migration. */
  @Get('readyz')
  async ready(@Req() request: FastifyRequest, @Res() reply: FastifyReply): Promise<void> {
    const readiness = await this.probe.check();
    if (readiness === 'ready') void reply.send({ status: 'ready' });
    else sendProblem(reply, { status: 503, title: 'Not ready', detail: readiness, traceId: request.id });
  }
}
