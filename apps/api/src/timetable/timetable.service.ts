import {
  competitions,
  competitors,
  timetables,
  type CompetitionRow,
  type Reads,
  type TimetableRow,
  type Tx,
} from '#persistence';
import {
  clashesOf,
  delaysIn,
  delaySlot,
  timetableProblems,
  type Clash,
  type Slot,
  type StartDelay,
} from '#rules';
import { Injectable } from '@nestjs/common';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type Refusal, type UserError } from '../platform/errors/user-error.types.js';
import { versionConflict } from '../platform/errors/version-conflict.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { CompetitionChanges, type CompetitionChange } from '../platform/live/competition-changes.js';
import { TIMETABLE_FAULTS } from './timetable-faults.js';
import type { TimetableDelayInput, TimetableSetInput } from './timetable.inputs.js';

/** A timetable with what is shown beside it. */
export interface PlannedMeet {
  readonly row: TimetableRow;
  /** Of the slots, by id. */
  readonly competitions: ReadonlyMap<string, CompetitionRow>;
  readonly clashes: readonly Clash[];
}

export type TimetableChange =
  | { readonly planned: PlannedMeet; readonly moved: readonly string[] }
  | { readonly refusals: readonly UserError[] };

type Plan = Pick<TimetableRow, 'facilities' | 'sharedGrounds' | 'slots' | 'reason'>;
type Stored = {
  readonly planned: PlannedMeet;
  readonly changes: readonly CompetitionChange[];
  readonly moved: readonly string[];
};

/** When and where. The start of a competition follows its slot, and its readers are told. */
@Injectable()
export class TimetableService {
  constructor(
    private readonly database: Database,
    private readonly changes: CompetitionChanges,
  ) {}

  /** Null: the meet has no timetable. */
  async of(organisationId: string, meetId: string): Promise<PlannedMeet | null> {
    return this.database.snapshot(async (at) => {
      const row = await timetables.latest(at, organisationId, meetId);
      return row && planned(at, row);
    });
  }

  /** The newest plan with who begins later than planned, by competition. Null: the meet has no timetable. */
  async announced(
    organisationId: string,
    meetId: string,
  ): Promise<{ readonly row: TimetableRow; readonly delays: ReadonlyMap<string, StartDelay> } | null> {
    const rows = await this.database.read((at) => timetables.revisions(at, organisationId, meetId));
    const row = rows.at(-1);
    return row ? { row, delays: delaysIn(rows) } : null;
  }

  async set(input: TimetableSetInput, viewer: Identity): Promise<TimetableChange> {
    viewer.requireDirector(input.meetId);
    const plan = planOf(input);
    const problems = timetableProblems(plan);
    if (problems.length > 0) {
      return {
        refusals: problems.map(({ code, path }) =>
          refusal({ code, path: path.map(fieldOf), ...TIMETABLE_FAULTS[code] }),
        ),
      };
    }
    return this.change(input.meetId, input.expectedRevision, viewer, () => plan);
  }

  /** Later by some minutes, with whatever depends on it. */
  async delay(input: TimetableDelayInput, viewer: Identity): Promise<TimetableChange> {
    const { organisationId } = viewer;
    const row = await this.database.read((at) => competitions.find(at, organisationId, input.competitionId));
    if (!row) return { refusals: [notFound('competition', ['competitionId'])] };
    viewer.requireDirector(row.meetId);
    return this.change(row.meetId, input.expectedRevision, viewer, (before) => {
      const position = before?.slots.findIndex(({ competitions: ids }) => ids.includes(row.id)) ?? -1;
      if (!before || position < 0) return NOT_PLANNED;
      return { ...delaySlot(before, position, input.minutes), reason: input.reason };
    });
  }

  private async change(
    meetId: string,
    expectedRevision: number,
    viewer: Identity,
    planFrom: (before: TimetableRow | null) => Plan | Refusal,
  ): Promise<TimetableChange> {
    const { organisationId, holder } = viewer;
    const done = await this.database.write(async (tx): Promise<Stored | { readonly refusal: UserError }> => {
      if (!(await timetables.lockMeet(tx, organisationId, meetId))) {
        return { refusal: notFound('meet', ['meetId']) };
      }
      const before = await timetables.latest(tx, organisationId, meetId);
      const revision = before?.revision ?? 0;
      if (revision !== expectedRevision) return { refusal: versionConflict(revision, 'timetable') };
      const plan = planFrom(before);
      if ('code' in plan) return { refusal: plan };
      const { facilities, sharedGrounds, slots, reason } = plan;
      const stranger = await strangerIn(tx, organisationId, meetId, slots);
      if (stranger) return { refusal: stranger };
      const head = { organisationId, meetId, revision: revision + 1, setBy: holder ?? '' };
      await timetables.insert(tx, { ...head, facilities, sharedGrounds, slots, reason });
      const { changes, moved } = await moveStarts(tx, organisationId, slots);
      const row = (await timetables.latest(tx, organisationId, meetId))!;
      return { planned: await planned(tx, row), changes, moved };
    });
    if ('refusal' in done) return { refusals: [done.refusal] };
    for (const change of done.changes) this.changes.announce(change);
    return done;
  }
}

function planOf({ facilities, sharedGrounds, slots, reason }: TimetableSetInput): Plan {
  return {
    facilities: facilities.map(({ key, name }) => ({ key, name })),
    sharedGrounds: sharedGrounds.map(({ facilities: [one = '', other = ''], reason: why }) => ({
      facilities: [one, other],
      reason: why,
    })),
    slots: slots.map(({ competitionIds, facility, startsAt, minutes, reportMinutes }) => ({
      competitions: competitionIds,
      facility,
      startsAt: startsAt.getTime(),
      minutes,
      reportMinutes,
    })),
    reason: reason ?? null,
  };
}

/** As the input calls it. */
function fieldOf(part: string | number): string {
  return part === 'competitions' ? 'competitionIds' : String(part);
}

const NOT_PLANNED = refusal({
  code: 'NOT_PLANNED',
  path: ['competitionId'],
  message: 'The competition is in no slot of the timetable.',
  remedy: 'Put it into the timetable first.',
});

/** A competition that is not there or belongs to another meet. */
async function strangerIn(
  tx: Tx,
  organisationId: string,
  meetId: string,
  slots: readonly Slot[],
): Promise<Refusal | null> {
  const own = new Set((await competitions.ofMeet(tx, organisationId, meetId)).map(({ id }) => id));
  for (const [at, { competitions: ids }] of slots.entries()) {
    const wrong = ids.findIndex((id) => !own.has(id));
    if (wrong >= 0) {
      return refusal({
        code: 'UNKNOWN_COMPETITION',
        path: ['slots', String(at), 'competitionIds', String(wrong)],
        message: 'The meet has no such competition.',
        remedy: 'Name a competition of this meet.',
      });
    }
  }
  return null;
}

/** Competitions start when their slots do. In the order of ids, as everybody who locks several. */
async function moveStarts(
  tx: Tx,
  organisationId: string,
  slots: readonly Slot[],
): Promise<{ readonly changes: readonly CompetitionChange[]; readonly moved: readonly string[] }> {
  const starts = new Map(
    slots.flatMap(({ competitions: ids, startsAt }) =>
      ids.map((id) => [id, new Date(startsAt).toISOString()] as const),
    ),
  );
  const changes: CompetitionChange[] = [];
  const moved: string[] = [];
  for (const competitionId of [...starts.keys()].sort()) {
    const row = (await competitions.lock(tx, organisationId, competitionId))!;
    const startsAt = starts.get(competitionId)!;
    if (row.startsAt === startsAt) continue;
    const version = await competitions.updateAt(tx, organisationId, competitionId, row.version, { startsAt });
    changes.push({ competitionId, version: version! });
    if (row.startsAt !== null && row.startsAt < startsAt) moved.push(competitionId);
  }
  return { changes, moved };
}

async function planned(at: Reads, row: TimetableRow): Promise<PlannedMeet> {
  const ids = row.slots.flatMap(({ competitions: own }) => own);
  const rows = ids.length > 0 ? await competitions.byIds(at, row.organisationId, ids) : [];
  const lines = ids.length > 0 ? await competitors.ofCompetitions(at, row.organisationId, ids) : [];
  const entered = new Map<string, string[]>();
  for (const { competitionId, athleteId } of lines) {
    if (athleteId !== null) entered.set(competitionId, [...(entered.get(competitionId) ?? []), athleteId]);
  }
  return {
    row,
    competitions: new Map(rows.map((one) => [one.id, one])),
    clashes: clashesOf(row, (competition) => entered.get(competition) ?? []),
  };
}
