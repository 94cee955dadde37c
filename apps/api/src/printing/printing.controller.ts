import { Controller, Get, Param, Query, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { bearerOf } from '../platform/identity/bearer.js';
import type { Identity } from '../platform/identity/identity.js';
import { Doorkeeper } from '../platform/identity/doorkeeper.js';
import { uuidOf, type ObjectKind } from '../platform/inputs/global-id.js';
import { sendProblem } from '../platform/health/problem.js';
import { PRINT_LANGUAGES, wordingOf, type PrintLanguage } from './labels/labels.js';
import type { Paper } from './pdf/pdf-document.js';
import { Press } from './pdf/press.js';
import type { PrintedDocument } from './printed-document.js';
import {
  COMPETITION_PAPERS,
  MEET_PAPERS,
  PrintingService,
  type CompetitionPaper,
  type MeetPaper,
} from './printing.service.js';

const PAPERS: Readonly<Record<string, Paper>> = { a4: 'A4', a5: 'A5', letter: 'LETTER' };

interface Asked {
  readonly paper?: string;
  readonly lang?: string;
}

/** Papers as PDF: `/print/competitions/ID/start-list.pdf?paper=A4&lang=en`. Rights are those of the API. */
@Controller('print')
export class PrintingController {
  constructor(
    private readonly printing: PrintingService,
    private readonly doorkeeper: Doorkeeper,
    private readonly press: Press,
  ) {}

  @Get('competitions/:id/:what')
  async competition(
    @Param('id') id: string,
    @Param('what') what: string,
    @Query() asked: Asked,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const paper = paperOf<CompetitionPaper>(what, COMPETITION_PAPERS);
    await this.send({ id, kind: 'Competition', paper, asked, request, reply }, (...about) =>
      this.printing.competition(...about),
    );
  }

  @Get('meets/:id/:what')
  async meet(
    @Param('id') id: string,
    @Param('what') what: string,
    @Query() asked: Asked,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const paper = paperOf<MeetPaper>(what, MEET_PAPERS);
    await this.send({ id, kind: 'Meet', paper, asked, request, reply }, (...about) =>
      this.printing.meet(...about),
    );
  }

  private async send<P extends string>(
    { id, kind, paper, asked, request, reply }: Wanted<P>,
    make: (
      uuid: string,
      paper: P,
      language: PrintLanguage,
      viewer: Identity,
    ) => Promise<PrintedDocument | null>,
  ): Promise<void> {
    const viewer = await bearerOf(request, this.doorkeeper);
    const uuid = uuidOf(kind, id);
    const size = PAPERS[(asked.paper ?? 'A4').toLowerCase()];
    const language = PRINT_LANGUAGES.find((known) => known === (asked.lang ?? 'en'));
    if (!size || !language) {
      const detail = `paper is A4, A5 or Letter; lang is one of ${PRINT_LANGUAGES.join(', ')}.`;
      return sendProblem(reply, { status: 400, title: 'Bad Request', detail, traceId: request.id });
    }
    const document = uuid && paper ? await make(uuid, paper, language, viewer) : null;
    if (!document) return sendProblem(reply, { status: 404, title: 'Not Found', traceId: request.id });
    const { labels } = wordingOf(language, 'UTC');
    const page = `${labels.page} {number} ${labels.of} {of}`;
    const pdf = await this.press.run({ document, setting: { paper: size, language, page } });
    void reply
      .type('application/pdf')
      .header('cache-control', 'private, no-cache')
      .header('content-disposition', `inline; filename="${paper}.pdf"`)
      .send(Buffer.from(pdf));
  }
}

interface Wanted<P extends string> {
  readonly id: string;
  readonly kind: ObjectKind;
  readonly paper: P | null;
  readonly asked: Asked;
  readonly request: FastifyRequest;
  readonly reply: FastifyReply;
}

function paperOf<P extends string>(what: string, papers: readonly P[]): P | null {
  return papers.find((paper) => `${paper}.pdf` === what) ?? null;
}
