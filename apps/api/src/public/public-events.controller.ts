import { Controller, Get, Param, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { sendProblem } from '../platform/health/problem.js';
import { uuidOf } from '../platform/inputs/global-id.js';
import { LiveConnections } from '../platform/live/live-connections.js';
import { EventStream } from './event-stream.js';
import { EventStreams } from './event-streams.service.js';
import { SnapshotsService } from './snapshots.service.js';

const HEADERS = {
  'content-type': 'text/event-stream; charset=utf-8',
  'cache-control': 'no-store',
  // nginx would gather what is to be sent at once.
  'x-accel-buffering': 'no',
  'access-control-allow-origin': '*',
  'cross-origin-resource-policy': 'cross-origin',
};
/** A crowd that loses its server comes back spread over this long. */
const RECONNECT_MS = [1_000, 6_000] as const;

/** `/public/competitions/ID/events`: the competition as in its JSON, whole at every version, as server-sent events. */
@Controller('public')
export class PublicEventsController {
  constructor(
    private readonly snapshots: SnapshotsService,
    private readonly streams: EventStreams,
    private readonly listeners: LiveConnections,
  ) {}

  @Get('competitions/:id/events')
  async events(
    @Param('id') given: string,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    void reply.header('access-control-allow-origin', '*');
    const id = uuidOf('Competition', given);
    if (id === null || !(await this.snapshots.competition(id)))
      return sendProblem(reply, { status: 404, title: 'Not Found', traceId: request.id });
    const leave = this.listeners.enter(request.ip);
    if (!leave) {
      void reply.header('retry-after', '10');
      return sendProblem(reply, { status: 429, title: 'Too Many Requests', traceId: request.id });
    }
    this.begin(id, request, reply, leave);
  }

  private begin(id: string, request: FastifyRequest, reply: FastifyReply, leave: () => void): void {
    reply.hijack();
    const { raw } = reply;
    raw.writeHead(200, { ...HEADERS, 'x-request-id': request.id });
    const [least, most] = RECONNECT_MS;
    raw.write(`retry: ${Math.round(least + Math.random() * (most - least))}\n\n`);
    const remove = this.streams.add(id, new EventStream(raw, lastOf(request)));
    raw.once('close', () => {
      remove();
      leave();
    });
  }
}

/** A browser that comes back says which event it had last. */
function lastOf({ headers }: FastifyRequest): number {
  const last = String(headers['last-event-id'] ?? '');
  return /^\d{1,9}$/.test(last) ? Number(last) : -1;
}
