import { Injectable } from '@nestjs/common';
import { audit, competitions, proceedings, type AuditLine, type CompetitionRow } from '#persistence';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { connectionOf, type Connection } from '../platform/connections/connection.js';
import { Database } from '../platform/database/database.js';
import { forbidden, unauthenticated } from '../platform/errors/api-error.js';
import type { Identity } from '../platform/identity/identity.js';
import { globalId } from '../platform/inputs/global-id.js';
import { competitionObject } from '../platform/objects/competition.type.js';
import type { MeetAuditArgs } from './oversight.args.js';
import { questionsIn } from './meet-questions.js';
import type { AuditEntry, MeetQuestion, ResultIssue } from './oversight.types.js';

interface MeetRef {
  readonly organisationId: string;
  readonly id: string;
}

/** What director and referee see of a meet as a whole. */
@Injectable()
export class OversightService {
  constructor(
    private readonly database: Database,
    private readonly memory: CompetitionMemory,
  ) {}

  /** Everything that waits for the referee, competition by competition. Throws as `requireOverseer` does. */
  async questions(meet: MeetRef, viewer: Identity): Promise<MeetQuestion[]> {
    requireOverseer(viewer, meet.id);
    const rows = await this.competitionsOf(meet);
    const loaded = await Promise.all(rows.map((row) => this.memory.current(row.organisationId, row.id)));
    return loaded.flatMap((one) => (one ? questionsIn(one) : []));
  }

  /** What was done, the newest first. Throws as `requireOverseer` does. */
  async trail(meet: MeetRef, args: MeetAuditArgs, viewer: Identity): Promise<Connection<AuditEntry>> {
    requireOverseer(viewer, meet.id);
    const { from, until, ...rest } = args;
    const search = { ...rest, from: from?.toISOString() ?? null, until: until?.toISOString() ?? null };
    const byId = new Map<string, LoadedCompetition>();
    const read = async () => {
      const found = await this.database.read((at) =>
        audit.page(at, meet.organisationId, meet.id, search, args),
      );
      const named = new Set(found.edges.map(({ row }) => row.competitionId));
      const rows = (await this.competitionsOf(meet)).filter(({ id }) => named.has(id));
      const loaded = await Promise.all(rows.map((row) => this.memory.current(row.organisationId, row.id)));
      for (const one of loaded) if (one) byId.set(one.row.id, one);
      return found;
    };
    return connectionOf(args, read, (line) => auditEntry(line, byId));
  }

  /** Which issue the results of the meet are. */
  async issue(meet: MeetRef): Promise<ResultIssue> {
    const rows = new Map((await this.competitionsOf(meet)).map((row) => [row.id, row]));
    const signed = await this.database.read((at) =>
      proceedings.signaturesOf(at, meet.organisationId, [...rows.keys()]),
    );
    const amended = signed.filter(({ revision }) => revision > 1);
    const latest = signed.at(-1)?.signedAt;
    return {
      number: signed.length === 0 ? 0 : 1 + amended.length,
      at: latest === undefined ? null : new Date(latest),
      amendments: amended.map(({ competitionId, revision, signedAt }) => ({
        competition: competitionObject(rows.get(competitionId)!),
        revision,
        signedAt: new Date(signedAt),
      })),
    };
  }

  private competitionsOf({ organisationId, id }: MeetRef): Promise<CompetitionRow[]> {
    return this.database.read((at) => competitions.ofMeet(at, organisationId, id));
  }
}

/** Throws UNAUTHENTICATED or FORBIDDEN unless the holder directs or referees the meet. */
function requireOverseer(viewer: Identity, meetId: string): void {
  if (viewer.has('director', meetId) || viewer.has('referee', meetId)) return;
  const message = 'Only a referee or director of this meet may read this.';
  throw viewer.isPublic ? unauthenticated(`${message} Send a token.`) : forbidden(message);
}

function auditEntry(line: AuditLine, byId: ReadonlyMap<string, LoadedCompetition>): AuditEntry {
  const { id, kind, standing, actor, name, authority, device, reason, before, after } = line;
  const loaded = line.competitionId === null ? undefined : byId.get(line.competitionId);
  const about = loaded?.roster.find(({ competitor }) => competitor.id === line.competitorId);
  return {
    ...{ id, kind, standing, actor, name, authority, device, reason, before, after },
    at: new Date(line.at),
    competition: loaded ? competitionObject(loaded.row) : null,
    competitor: about ? globalId('Competitor', about.competitor.id) : null,
    bib: about?.competitor.bib ?? null,
    competitorName: about ? (about.name ?? about.displayName) : null,
    deviceAt: line.deviceAt === null ? null : new Date(line.deviceAt),
  };
}
