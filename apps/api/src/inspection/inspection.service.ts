import {
  competitions,
  implementRegister,
  inspections,
  journal,
  meets,
  type ImplementRow,
  type InspectionRow,
  type MeetRow,
  type NewInspection,
  type Tx,
} from '#persistence';
import { inspect, type Implement as Demanded } from '#rules';
import { Injectable } from '@nestjs/common';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import { createOnce, type Created } from '../platform/database/create-once.js';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type Refusal, type UserError } from '../platform/errors/user-error.types.js';
import type { Capacity, Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { rosterOf } from '../platform/roster/roster.js';
import type { Recorded } from '../recording/recording.service.js';
import { requireAuthority } from './crew.js';
import { asRegistered, expectedIn, forCompetition } from './expected.js';
import { FailedImplement, questionedBy } from './failed-implement.js';
import { implementViews } from './implement-view.js';
import type { Implement } from './implements.types.js';
import type { ImplementInspectInput, ImplementRecheckInput, LookInput } from './inspection.inputs.js';
import { dimensionProblem, lookProblems } from './look-problems.js';
import { namesFor } from './register.service.js';

export type Looked =
  | {
      readonly row: InspectionRow;
      readonly implement: Implement;
      readonly questioned: readonly string[];
      readonly isOther: boolean;
      readonly replayed: boolean;
    }
  | { readonly refusals: readonly UserError[] };

/** What the client said; the rest is found out here. */
type Wanted = Pick<
  NewInspection,
  | ('organisationId' | 'id' | 'meetId' | 'implementId' | 'kind' | 'cause' | 'attemptId' | 'grams' | 'mm')
  | ('keptBack' | 'note' | 'replacesId' | 'reason')
>;

type Placed =
  | { readonly implement: ImplementRow; readonly competitionId: string | null; readonly demanded: Demanded }
  | { readonly refusal: Refusal };

/** Weighing and measuring: held against the rules, kept for good, and put to the referee when it comes too late. */
@Injectable()
export class InspectionService {
  constructor(
    private readonly database: Database,
    private readonly memory: CompetitionMemory,
    private readonly failed: FailedImplement,
  ) {}

  inspect(input: ImplementInspectInput, viewer: Identity): Promise<Looked> {
    return this.look(
      input,
      input.competitionId ?? null,
      { kind: 'inspection', cause: null, attemptId: null },
      viewer,
    );
  }

  recheck(input: ImplementRecheckInput, viewer: Identity): Promise<Looked> {
    const { cause, attemptId = null } = input;
    if (cause === 'record' && attemptId === null) return Promise.resolve({ refusals: [ATTEMPT_MISSING] });
    return this.look(input, null, { kind: 'recheck', cause, attemptId }, viewer);
  }

  private async look(
    input: LookInput,
    competitionId: string | null,
    about: Pick<Wanted, 'kind' | 'cause' | 'attemptId'>,
    viewer: Identity,
  ): Promise<Looked> {
    const { organisationId } = viewer;
    const meet = await this.database.read((at) => meets.find(at, organisationId, input.meetId));
    if (!meet) return { refusals: [notFound('meet', ['meetId'])] };
    const authority = await this.database.read((at) => requireAuthority(at, viewer, meet));
    const refusals = lookProblems(input);
    if (refusals.length > 0) return { refusals };
    const wanted: Wanted = { organisationId, ...about, ...wantedOf(input) };
    let asked: Recorded[] = [];
    const made: Created<InspectionRow> = await createOnce<InspectionRow, Wanted>(this.database, {
      wanted,
      find: (tx, id) => inspections.find(tx, organisationId, id),
      insert: async (tx) => {
        await inspections.lockLog(tx, organisationId, meet.id);
        const placed = await place(tx, meet, competitionId, wanted, input);
        if ('refusal' in placed) return placed.refusal;
        asked = await this.store(tx, placed, wanted, input, { authority, viewer });
        return null;
      },
    });
    if ('refusal' in made) return { refusals: [made.refusal] };
    if (!made.replayed) this.failed.announce(asked);
    return this.answer(made, meet, viewer);
  }

  /** Keeps what was found, and asks about the trials made with it when it did not pass. */
  private async store(
    tx: Tx,
    { implement, competitionId, demanded }: Exclude<Placed, { readonly refusal: Refusal }>,
    wanted: Wanted,
    { device, deviceAt }: LookInput,
    { authority, viewer }: { readonly authority: Capacity; readonly viewer: Identity },
  ): Promise<Recorded[]> {
    const by = { capacity: authority, holder: viewer.holder!, label: viewer.label };
    const found: NewInspection = {
      ...wanted,
      competitionId,
      ...inspect({ grams: wanted.grams, mm: wanted.mm }, demanded),
      authority,
      inspectedBy: by.holder,
      device: device ?? by.label,
      deviceAt: deviceAt?.toISOString() ?? null,
    };
    await inspections.append(tx, found);
    return found.outcome === 'failed' ? this.failed.ask(tx, implement, found, by) : [];
  }

  private async answer(
    { row, replayed }: Exclude<Created<InspectionRow>, { readonly refusal: UserError }>,
    meet: MeetRow,
    viewer: Identity,
  ): Promise<Looked> {
    const isOther = await this.isOther(row);
    return this.database.snapshot(async (at) => {
      const implement = (await implementRegister.find(at, row.organisationId, row.implementId))!;
      const [view] = await implementViews(at, meet, [implement], namesFor(viewer, meet));
      return { row, implement: view!, questioned: await questionedBy(at, row), isOther, replayed };
    });
  }

  /** Whether the attempt after which it was looked at names another implement by now. */
  private async isOther({
    organisationId,
    competitionId,
    attemptId,
    implementId,
  }: InspectionRow): Promise<boolean> {
    if (competitionId === null || attemptId === null) return false;
    const loaded = await this.memory.current(organisationId, competitionId);
    const attempt = loaded?.kind === 'distance' ? loaded.state.attempts.get(attemptId) : undefined;
    const named = attempt?.judgement.implementId;
    return named !== undefined && named !== implementId;
  }
}

function wantedOf(input: LookInput): Omit<Wanted, 'organisationId' | 'kind' | 'cause' | 'attemptId'> {
  const { id, meetId, implementId, grams, dimensions, isKeptBack, note, replacesId, reason } = input;
  return {
    id: id ?? uuidV7(),
    meetId,
    implementId,
    grams: grams ?? null,
    mm: Object.fromEntries(dimensions.map(({ what, mm }) => [what, mm])),
    keptBack: isKeptBack,
    note: note ?? null,
    replacesId: replacesId ?? null,
    reason: reason ?? null,
  };
}

/** What the look is at and what it is held against; or what stands in its way. */
async function place(
  tx: Tx,
  meet: MeetRow,
  competitionId: string | null,
  wanted: Wanted,
  input: LookInput,
): Promise<Placed> {
  const { organisationId, implementId, attemptId } = wanted;
  const implement = await implementRegister.find(tx, organisationId, implementId);
  if (!implement) return { refusal: notFound('implement', ['implementId']) };
  const problem = dimensionProblem(implement, input) ?? (await replacingProblem(tx, wanted));
  if (problem) return { refusal: problem };
  const attempt = attemptId === null ? null : await journal.findEntry(tx, organisationId, attemptId);
  if (attemptId !== null && attempt?.kind !== 'attempt')
    return { refusal: notFound('attempt', ['attemptId']) };
  const forId = competitionId ?? attempt?.competitionId ?? null;
  if (forId === null) return { implement, competitionId: null, demanded: asRegistered(implement, meet) };
  const path = [attempt ? 'attemptId' : 'competitionId'];
  const competition = await competitions.find(tx, organisationId, forId);
  if (competition?.meetId !== meet.id)
    return { refusal: notFound(attempt ? 'attempt' : 'competition', path) };
  const roster = await rosterOf(tx, { competition, meet });
  const isOfEvent = competition.event === implement.event;
  const demanded = isOfEvent
    ? forCompetition(implement, expectedIn(competition, roster, meet), competition, meet)
    : null;
  if (demanded) return { implement, competitionId: forId, demanded };
  // What was thrown and does not belong is weighed all the same: as what it is registered as.
  if (attempt) return { implement, competitionId: forId, demanded: asRegistered(implement, meet) };
  return { refusal: NOT_OF_COMPETITION };
}

/** What stands in the way of a correction. */
async function replacingProblem(tx: Tx, wanted: Wanted): Promise<Refusal | null> {
  const { organisationId, replacesId } = wanted;
  if (replacesId === null) return null;
  const replaced = await inspections.find(tx, organisationId, replacesId);
  const isSame =
    replaced?.meetId === wanted.meetId &&
    replaced.implementId === wanted.implementId &&
    replaced.kind === wanted.kind;
  if (!isSame) return notFound(`${wanted.kind} of this implement at this meet`, ['replacesId']);
  return (await inspections.replacementOf(tx, organisationId, replacesId)) ? REPLACED_ALREADY : null;
}

const ATTEMPT_MISSING = refusal({
  code: 'ATTEMPT_MISSING',
  path: ['attemptId'],
  message: 'After a record it has to be known after which attempt.',
  remedy: 'Send the entry id of the attempt.',
});

const REPLACED_ALREADY = refusal({
  code: 'REPLACED_ALREADY',
  path: ['replacesId'],
  message: 'This look has been corrected already.',
  remedy: 'Read the log of the implement, and correct the look that counts now.',
});

const NOT_OF_COMPETITION = refusal({
  code: 'NOT_OF_COMPETITION',
  path: ['competitionId'],
  message: 'No implement registered so is thrown in this competition.',
  remedy:
    'Leave the competition out to inspect it as what it is registered as; or register it as what it is.',
});
