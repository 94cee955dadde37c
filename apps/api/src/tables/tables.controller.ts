import { Controller, Get, Param, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { CSV_TYPE } from '../platform/csv/csv-writer.js';
import { sendProblem } from '../platform/health/problem.js';
import { bearerOf } from '../platform/identity/bearer.js';
import { Doorkeeper } from '../platform/identity/doorkeeper.js';
import { uuidOf } from '../platform/inputs/global-id.js';
import { EntriesExportService } from './entries-export.service.js';

/** Tables as CSV: `/tables/meets/ID/entries.csv`, `/tables/competitions/ID/start-list.csv`. Rights are those of the API. */
@Controller('tables')
export class TablesController {
  constructor(
    private readonly exports: EntriesExportService,
    private readonly doorkeeper: Doorkeeper,
  ) {}

  @Get('meets/:id/entries.csv')
  async entries(
    @Param('id') id: string,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const viewer = await bearerOf(request, this.doorkeeper);
    const uuid = uuidOf('Meet', id);
    send(request, reply, 'entries', uuid && (await this.exports.entries(uuid, viewer)));
  }

  @Get('competitions/:id/start-list.csv')
  async startList(
    @Param('id') id: string,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const viewer = await bearerOf(request, this.doorkeeper);
    const uuid = uuidOf('Competition', id);
    send(request, reply, 'start-list', uuid && (await this.exports.startList(uuid, viewer)));
  }
}

function send(request: FastifyRequest, reply: FastifyReply, name: string, text: string | null): void {
  if (text === null) {
    sendProblem(reply, { status: 404, title: 'Not Found', traceId: request.id });
    return;
  }
  void reply
    .type(CSV_TYPE)
    .header('cache-control', 'private, no-cache')
    .header('content-disposition', `attachment; filename="${name}.csv"`)
    .send(text);
}
