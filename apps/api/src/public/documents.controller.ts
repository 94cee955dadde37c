import { Controller, Get, Param, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { CSV_TYPE } from '../platform/csv/csv-writer.js';
import { sendProblem } from '../platform/health/problem.js';
import { uuidOf, type ObjectKind } from '../platform/inputs/global-id.js';
import { CALENDAR_TYPE, meetCalendar } from './exports/calendar.js';
import { clubTableCsv, competitionCsv, meetCsv } from './exports/tables.js';
import { visitOf } from './pages/visit.js';
import { keptFor, sendable, sendPublic, type Sendable } from './sending.js';
import { SnapshotsService } from './snapshots.service.js';

const JSON_TYPE = 'application/json; charset=utf-8';

/** Something to be sent, and the states of the competitions in it. */
interface Found {
  readonly sendable: Sendable;
  readonly states: readonly string[];
}

type Read = (uuid: string, request: FastifyRequest) => Promise<Found | null>;

/** What lies in a folder: of which kind its ids are, and what there is of each by the ending of the address. */
interface Folder {
  readonly kind: ObjectKind;
  readonly documents: Readonly<Record<string, Read>>;
}

/**
 * What everybody may see, for programs and spreadsheets: `/public/competitions/ID.json`, `.csv` and so on. Nothing here
 * depends on who asks, so every site may read it.
 */
@Controller('public')
export class DocumentsController {
  /** Written out once, however many ask. */
  private readonly written = new WeakMap<object, Sendable>();
  private readonly folders: Readonly<Record<string, Folder>>;

  constructor(private readonly snapshots: SnapshotsService) {
    this.folders = {
      competitions: { kind: 'Competition', documents: this.ofCompetition() },
      meets: { kind: 'Meet', documents: this.ofMeet() },
      'club-tables': { kind: 'Meet', documents: this.ofClubTable() },
      clubs: { kind: 'Club', documents: { json: async (id) => this.whole(await snapshots.club(id)) } },
      athletes: {
        kind: 'Athlete',
        documents: { json: async (id) => this.whole(await snapshots.athlete(id)) },
      },
    };
  }

  @Get(':folder/:file')
  async send(
    @Param('folder') folder: string,
    @Param('file') file: string,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    // Also on a refusal, or the page that asks could not read why.
    void reply
      .header('access-control-allow-origin', '*')
      .header('cross-origin-resource-policy', 'cross-origin');
    const [, id = '', ending = ''] = /^([\w-]+)\.([a-z.]+)$/.exec(file) ?? [];
    const lies = Object.hasOwn(this.folders, folder) ? this.folders[folder]! : null;
    const uuid = lies && uuidOf(lies.kind, id);
    const read = lies && Object.hasOwn(lies.documents, ending) ? lies.documents[ending]! : null;
    const found = uuid && read ? await read(uuid, request) : null;
    if (!found) return sendProblem(reply, { status: 404, title: 'Not Found', traceId: request.id });
    sendPublic(request, reply, found.sendable, keptFor(found.states));
  }

  private ofCompetition(): Folder['documents'] {
    const { snapshots } = this;
    return {
      json: async (id) => {
        const shown = await snapshots.competition(id);
        return shown && { sendable: this.asJson(shown), states: [shown.state] };
      },
      csv: async (id) => {
        const shown = await snapshots.competition(id);
        return shown && { sendable: sendable(CSV_TYPE, competitionCsv(shown)), states: [shown.state] };
      },
      'sheet.json': async (id) => {
        const shown = await snapshots.sheet(id);
        return shown && { sendable: this.asJson(shown.sheet), states: [shown.state] };
      },
    };
  }

  private ofMeet(): Folder['documents'] {
    const { snapshots } = this;
    const found = async (
      id: string,
      write: (shown: NonNullable<Awaited<ReturnType<typeof snapshots.meet>>>) => Sendable,
    ) => {
      const shown = await snapshots.meet(id);
      return shown && { sendable: write(shown), states: shown.competitions.map(({ state }) => state) };
    };
    return {
      json: (id) => found(id, (shown) => this.asJson(shown)),
      csv: (id) => found(id, (shown) => sendable(CSV_TYPE, meetCsv(shown))),
      ics: (id, request) =>
        found(id, (shown) => sendable(CALENDAR_TYPE, meetCalendar(shown, visitOf(request).origin))),
    };
  }

  private ofClubTable(): Folder['documents'] {
    const { snapshots } = this;
    const statesOf = (isProvisional: boolean): string[] => [isProvisional ? 'running' : 'official'];
    return {
      json: async (id) => {
        const shown = await snapshots.clubTable(id);
        return shown && { sendable: this.asJson(shown), states: statesOf(shown.isProvisional) };
      },
      csv: async (id) => {
        const shown = await snapshots.clubTable(id);
        return (
          shown && {
            sendable: sendable(CSV_TYPE, clubTableCsv(shown)),
            states: statesOf(shown.isProvisional),
          }
        );
      },
    };
  }

  private whole(
    shown: {
      readonly meets: readonly { readonly competitions: readonly { readonly state: string }[] }[];
    } | null,
  ): Found | null {
    const states = shown?.meets.flatMap(({ competitions }) => competitions.map(({ state }) => state));
    return shown && { sendable: this.asJson(shown), states: states ?? [] };
  }

  private asJson(shown: object): Sendable {
    const known = this.written.get(shown) ?? sendable(JSON_TYPE, JSON.stringify(shown));
    this.written.set(shown, known);
    return known;
  }
}
