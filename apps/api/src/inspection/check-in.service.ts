import {
  checkIns,
  competitions,
  competitors,
  implementRegister,
  type CheckInRow,
  type CompetitionRow,
  type CompetitorRow,
  type ImplementRow,
  type NewCheckIn,
  type Reads,
} from '#persistence';
import { isThrowEvent, isTrial } from '#rules';
import { Injectable } from '@nestjs/common';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { createOnce } from '../platform/database/create-once.js';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import type { UserError } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { competitorObject } from '../platform/objects/competitor.type.js';
import type { RosterLine } from '../platform/roster/roster.js';
import type { CompetitorCheckInInput } from './check-in.inputs.js';
import type { CheckIn, CheckInLine } from './check-in.types.js';
import { implementViews } from './implement-view.js';

export type CheckedIn =
  | { readonly line: CheckInLine; readonly notices: string[]; readonly replayed: boolean }
  | { readonly refusal: UserError };

/** Who reported at a competition, with what they throw. */
@Injectable()
export class CheckInService {
  constructor(
    private readonly database: Database,
    private readonly memory: CompetitionMemory,
  ) {}

  /** Adds to the record of a competitor. Coming late is written down and not refused: the referee decides about it. */
  async checkIn(input: CompetitorCheckInInput, viewer: Identity): Promise<CheckedIn> {
    const { organisationId } = viewer;
    const { competitorId, isPresent, note } = input;
    const found = await this.database.read((at) => competitionOf(at, organisationId, competitorId));
    if (!found) return { refusal: notFound('competitor', ['competitorId']) };
    const authority = viewer.requireCapacity(found);
    const wanted = { organisationId, competitorId, id: input.id ?? uuidV7(), isPresent, note: note ?? null };
    const made = await createOnce<CheckInRow, typeof wanted>(this.database, {
      wanted,
      find: (tx, id) => checkIns.find(tx, organisationId, id),
      insert: async (tx) => {
        const row = await competitions.lock(tx, organisationId, found.id);
        const competitor = row && (await competitors.find(tx, organisationId, competitorId));
        if (!competitor) return notFound('competitor', ['competitorId']);
        const { state } = await this.memory.locked(tx, row);
        const entry: NewCheckIn = {
          ...wanted,
          isLate: isPresent && state.journal.some(({ entry: { kind } }) => isTrial(kind)),
          authority,
          enteredBy: viewer.holder!,
          device: input.device ?? viewer.label,
          deviceAt: input.deviceAt?.toISOString() ?? null,
        };
        await checkIns.append(tx, entry);
        return null;
      },
    });
    if ('refusal' in made) return made;
    const lines = await this.ofCompetition(found);
    const at = lines.findIndex(({ history }) => history.some(({ id }) => id === made.row.id));
    const line = lines[at]!;
    return { line, notices: await this.noticesOf(found, made.row, line), replayed: made.replayed };
  }

  /** The start list with what was entered of everybody, in the order of competition. */
  async ofCompetition(row: CompetitionRow): Promise<CheckInLine[]> {
    const loaded = await this.memory.current(row.organisationId, row.id);
    if (!loaded) return [];
    return this.database.snapshot(async (at) => {
      const ids = loaded.roster.map(({ competitor }) => competitor.id);
      const entries = await checkIns.ofCompetitors(at, row.organisationId, ids);
      const owned = await ownedBy(at, loaded);
      const views = await implementViews(at, loaded.meet, owned, 'whole');
      return loaded.roster.map((line) => {
        const history = entries
          .filter(({ competitorId }) => competitorId === line.competitor.id)
          .map(checkInView);
        return {
          competitor: competitorObject(line),
          name: line.name ?? line.displayName,
          current: history.at(-1) ?? null,
          history,
          didNotStart: statusIn(loaded, line.competitor.id) === 'DNS',
          implements: views.filter((view) => isOwner(line, view.row)),
        };
      });
    });
  }

  private async noticesOf(
    { organisationId, id }: CompetitionRow,
    { competitorId, isPresent, isLate }: CheckInRow,
    { didNotStart }: CheckInLine,
  ): Promise<string[]> {
    const state = (await this.memory.current(organisationId, id))?.state;
    const trials = [...(state?.attempts.values() ?? [])];
    const hasTrials = trials.some((one) => one.competitor === competitorId && one.standing === 'counts');
    return [
      ...(isLate ? ['LATE'] : []),
      ...(isPresent && didNotStart ? ['MARKED_DNS'] : []),
      ...(!isPresent && hasTrials ? ['HAS_TRIALS'] : []),
    ];
  }
}

async function competitionOf(
  at: Reads,
  organisationId: string,
  competitorId: string,
): Promise<CompetitionRow | null> {
  const competitor: CompetitorRow | null = await competitors.find(at, organisationId, competitorId);
  return competitor && competitions.find(at, organisationId, competitor.competitionId);
}

/** Implements of the event that belong to somebody of the start list, or to a club of it. */
async function ownedBy(at: Reads, { row, roster }: LoadedCompetition): Promise<ImplementRow[]> {
  if (!isThrowEvent(row.event)) return [];
  const present = (ids: readonly (string | null)[]): string[] => [
    ...new Set(ids.filter((id) => id !== null)),
  ];
  return implementRegister.ofOwners(at, row.organisationId, row.event, {
    clubIds: present(roster.map(({ competitor }) => competitor.clubId)),
    athleteIds: present(roster.map(({ competitor }) => competitor.athleteId)),
  });
}

function isOwner({ competitor }: RosterLine, { clubId, athleteId }: ImplementRow): boolean {
  if (clubId !== null) return clubId === competitor.clubId;
  return athleteId !== null && athleteId === competitor.athleteId;
}

function statusIn({ state }: LoadedCompetition, competitorId: string): string | null {
  return state.competitors.find(({ key }) => key === competitorId)?.status ?? null;
}

function checkInView(row: CheckInRow): CheckIn {
  const { id, sequence, isPresent, isLate, note, authority, enteredBy, device } = row;
  return {
    ...{ id, sequence, isPresent, isLate, note, authority, enteredBy, device },
    deviceAt: row.deviceAt === null ? null : new Date(row.deviceAt),
    recordedAt: new Date(row.recordedAt),
  };
}
