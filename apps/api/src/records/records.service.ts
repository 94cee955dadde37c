import type { AthleteRow, CompetitionRow, MeetRow } from '#persistence';
import { editionsOf, recordTerms, type EventCode, type RecordTerms, type RuleSetCode } from '#rules';
import { Injectable } from '@nestjs/common';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { Database } from '../platform/database/database.js';
import type { Identity } from '../platform/identity/identity.js';
import { claimsView } from './claims-view.js';
import type { RecordClaim } from './claims.types.js';
import { EvidenceReader, type Evidence } from './evidence.js';
import { listsView } from './lists-view.js';
import { meetSeriesOf } from './meet-series.js';
import type { RecordList } from './records.types.js';

export type { RecordClaim } from './claims.types.js';

/** Which lists are asked for. */
export interface ListsWanted {
  readonly rules: RuleSetCode;
  /** `null`: of every event. */
  readonly event: EventCode | null;
}

/** Lists of bests and records, and what marks claim in them: derived from what stands whenever somebody asks. */
@Injectable()
export class RecordsService {
  constructor(
    private readonly database: Database,
    private readonly reader: EvidenceReader,
    private readonly memory: CompetitionMemory,
  ) {}

  async clubLists(
    club: { readonly id: string; readonly name: string },
    { rules, event }: ListsWanted,
    viewer: Identity,
  ): Promise<RecordList[]> {
    const evidence = await this.evidence(viewer, { clubs: [club.id] }, event);
    const isShown = ({ kind, of }: { kind: string; of: string }): boolean =>
      kind === 'club record' && of === club.id;
    return listsView({ evidence, terms: newestTerms(rules), viewer, isShown, name: club.name });
  }

  async meetLists(meet: MeetRow, event: EventCode | null, viewer: Identity): Promise<RecordList[]> {
    const evidence = await this.evidence(viewer, { meets: [meet.id] }, event);
    const name = meetSeriesOf(meet.name);
    const isShown = ({ kind, of }: { kind: string; of: string }): boolean =>
      kind === 'meet record' && of === name;
    return listsView({ evidence, terms: recordTerms(meet.rules, meet.edition), viewer, isShown, name });
  }

  /** Throws UNAUTHENTICATED or FORBIDDEN for those who may not see athletes. */
  async athleteLists(
    { id }: AthleteRow,
    { rules, event }: ListsWanted,
    viewer: Identity,
  ): Promise<RecordList[]> {
    viewer.requireSightOf(id);
    const evidence = await this.evidence(viewer, { athletes: [id] }, event);
    const isShown = ({ kind, of }: { kind: string; of: string }): boolean =>
      of === id && kind.endsWith(' best');
    return listsView({ evidence, terms: newestTerms(rules), viewer, isShown, name: null });
  }

  /** What the marks of a competition claim, or one of them, as far as the viewer may see it. */
  async claims(
    row: CompetitionRow,
    viewer: Identity,
    attemptOf: (loaded: LoadedCompetition) => string | null | undefined = () => null,
  ): Promise<RecordClaim[]> {
    const loaded = await this.memory.current(row.organisationId, row.id);
    const attempt = loaded && attemptOf(loaded);
    if (!loaded || attempt === undefined) return [];
    const lines = loaded.roster.map(({ competitor }) => competitor);
    const evidence = await this.evidence(
      viewer,
      {
        clubs: present(lines.map(({ clubId }) => clubId)),
        meets: [row.meetId],
        athletes: present(lines.map(({ athleteId }) => athleteId)),
      },
      row.event,
    );
    return claimsView(loaded, evidence, viewer, attempt);
  }

  private evidence(
    viewer: Identity,
    { clubs = [], meets = [], athletes = [] }: Partial<Parameters<EvidenceReader['read']>[2]>,
    event: EventCode | null,
  ): Promise<Evidence> {
    return this.database.snapshot((at) => this.reader.read(at, viewer, { clubs, meets, athletes }, event));
  }
}

/** Lists that no single meet decides about follow the newest edition. */
function newestTerms(rules: RuleSetCode): RecordTerms {
  return recordTerms(rules, editionsOf(rules).at(-1)!);
}

function present(ids: readonly (string | null)[]): string[] {
  return [...new Set(ids.flatMap((id) => id ?? []))];
}
