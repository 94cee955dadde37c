import { Controller, Get, Param, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { sendProblem } from '../platform/health/problem.js';
import { uuidOf, type ObjectKind } from '../platform/inputs/global-id.js';
import { keptFor, sendable, sendPublic, type Sendable } from './sending.js';
import { SnapshotsService } from './snapshots.service.js';

const JSON_TYPE = 'application/json; charset=utf-8';

interface Asked {
  readonly file: string;
  readonly request: FastifyRequest;
  readonly reply: FastifyReply;
}

/**
 * What everybody may see, as JSON for other sites: `/public/competitions/ID.json` and so on. Nothing here depends on who
 * asks, so every site may read it.
 */
@Controller('public')
export class PublicJsonController {
  /** Written out once, however many ask. */
  private readonly written = new WeakMap<object, Sendable>();

  constructor(private readonly snapshots: SnapshotsService) {}

  @Get('competitions/:file')
  competition(@Param('file') file: string, @Req() request: FastifyRequest, @Res() reply: FastifyReply) {
    return this.send({ file, request, reply }, 'Competition', async (id) => {
      const shown = await this.snapshots.competition(id);
      return shown && { shown, states: [shown.state] };
    });
  }

  @Get('meets/:file')
  meet(@Param('file') file: string, @Req() request: FastifyRequest, @Res() reply: FastifyReply) {
    return this.send({ file, request, reply }, 'Meet', async (id) => {
      const shown = await this.snapshots.meet(id);
      return shown && { shown, states: shown.competitions.map(({ state }) => state) };
    });
  }

  @Get('club-tables/:file')
  clubTable(@Param('file') file: string, @Req() request: FastifyRequest, @Res() reply: FastifyReply) {
    return this.send({ file, request, reply }, 'Meet', async (id) => {
      const shown = await this.snapshots.clubTable(id);
      return shown && { shown, states: [shown.isProvisional ? 'running' : 'official'] };
    });
  }

  @Get('clubs/:file')
  club(@Param('file') file: string, @Req() request: FastifyRequest, @Res() reply: FastifyReply) {
    return this.send({ file, request, reply }, 'Club', async (id) => {
      const shown = await this.snapshots.club(id);
      return shown && { shown, states: statesOf(shown.meets) };
    });
  }

  @Get('athletes/:file')
  athlete(@Param('file') file: string, @Req() request: FastifyRequest, @Res() reply: FastifyReply) {
    return this.send({ file, request, reply }, 'Athlete', async (id) => {
      const shown = await this.snapshots.athlete(id);
      return shown && { shown, states: statesOf(shown.meets) };
    });
  }

  private async send(
    { file, request, reply }: Asked,
    kind: ObjectKind,
    read: (id: string) => Promise<{ readonly shown: object; readonly states: readonly string[] } | null>,
  ): Promise<void> {
    // Also on a refusal, or the page that asks could not read why.
    void reply
      .header('access-control-allow-origin', '*')
      .header('cross-origin-resource-policy', 'cross-origin');
    const id = file.endsWith('.json') ? uuidOf(kind, file.slice(0, -'.json'.length)) : null;
    const found = id === null ? null : await read(id);
    if (!found) return sendProblem(reply, { status: 404, title: 'Not Found', traceId: request.id });
    sendPublic(request, reply, this.writtenOut(found.shown), keptFor(found.states));
  }

  private writtenOut(shown: object): Sendable {
    const known = this.written.get(shown) ?? sendable(JSON_TYPE, JSON.stringify(shown));
    this.written.set(shown, known);
    return known;
  }
}

function statesOf(
  meets: readonly { readonly competitions: readonly { readonly state: string }[] }[],
): string[] {
  return meets.flatMap(({ competitions }) => competitions.map(({ state }) => state));
}
