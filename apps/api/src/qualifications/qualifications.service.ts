import {
  draws,
  meets,
  qualifications,
  type CompetitionRow,
  type DrawAmendmentRow,
  type DrawRow,
  type MeetRow,
  type QualificationRow,
  type Tx,
} from '#persistence';
import { Injectable } from '@nestjs/common';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import { isKeptBack } from '../platform/competition/visible.js';
import { createOnce, type Created } from '../platform/database/create-once.js';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import type { Refusal } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { groupProblems, mergedOf, type Merged } from './merged-groups.js';
import type { QualificationCreateInput } from './qualifications.inputs.js';
import { FINAL_DIFFERS, FINAL_DRAWN, FINAL_TAKEN, GROUP_TWICE, groupRefusal } from './refusals.js';

/** Which competitions are groups of one qualification, and what they come to together. */
@Injectable()
export class QualificationsService {
  constructor(
    private readonly database: Database,
    private readonly memory: CompetitionMemory,
  ) {}

  /** All problems of the groups at once, or the qualification. */
  async create(
    input: QualificationCreateInput,
    viewer: Identity,
  ): Promise<Created<QualificationRow> | { readonly refusals: Refusal[] }> {
    viewer.requireDirector(input.meetId);
    const { organisationId } = viewer;
    const wanted: QualificationRow = {
      organisationId,
      id: input.id ?? uuidV7(),
      meetId: input.meetId,
      title: input.title,
      finalId: input.finalId ?? null,
      groupIds: input.competitionIds,
    };
    const refusals = await this.problems(wanted);
    if (refusals.length > 0) return { refusals };
    return createOnce<QualificationRow, QualificationRow>(this.database, {
      wanted,
      find: (tx, id) => qualifications.find(tx, organisationId, id),
      insert: async (tx) => {
        const refused = await takenElsewhere(tx, wanted);
        if (refused) return refused;
        await qualifications.insert(tx, wanted);
        return null;
      },
    });
  }

  /** What was set up in error: the groups are competitions of their own again. Null: done. */
  async dissolve(id: string, viewer: Identity): Promise<Refusal | null> {
    const { organisationId } = viewer;
    return this.database.write(async (tx) => {
      const row = await qualifications.lock(tx, organisationId, id);
      if (!row) return notFound('qualification', ['qualificationId']);
      viewer.requireDirector(row.meetId);
      if (await draws.isOfQualification(tx, organisationId, id)) return FINAL_DRAWN;
      await qualifications.remove(tx, organisationId, id);
      return null;
    });
  }

  /** For each of these meets its qualifications by title. Two statements. */
  async ofMeets(of: readonly MeetRow[]): Promise<QualificationRow[][]> {
    const rows = await this.rowsOf(
      of[0]?.organisationId,
      of.map(({ id }) => id),
    );
    return of.map(({ id }) => rows.filter(({ meetId }) => meetId === id));
  }

  /** For each of these competitions the qualification of which it is a group or the final. Two statements. */
  async ofCompetitions(of: readonly CompetitionRow[]): Promise<(QualificationRow | null)[]> {
    const rows = await this.rowsOf(of[0]?.organisationId, [...new Set(of.map(({ meetId }) => meetId))]);
    return of.map(
      ({ id }) => rows.find(({ groupIds, finalId }) => finalId === id || groupIds.includes(id)) ?? null,
    );
  }

  /** Whether somebody may see what its groups come to, all of them. */
  async isKeptBack({ organisationId, groupIds }: QualificationRow, viewer: Identity): Promise<boolean> {
    const groups = await Promise.all(groupIds.map((id) => this.memory.current(organisationId, id)));
    return groups.some((group) => group !== null && isKeptBack(group.row, viewer));
  }

  /** All groups together, each as it stands now. */
  async merged({ organisationId, groupIds }: QualificationRow): Promise<Merged> {
    const groups = await Promise.all(groupIds.map((id) => this.memory.current(organisationId, id)));
    return mergedOf(groups.map((group) => group!));
  }

  /** Null: there is none yet. */
  async finalOf({ organisationId, finalId }: QualificationRow): Promise<CompetitionRow | null> {
    return finalId === null ? null : ((await this.memory.current(organisationId, finalId))?.row ?? null);
  }

  /** What belongs to a draw beside it. */
  async besides({ organisationId, competitionId, id }: DrawRow): Promise<{
    readonly isInForce: boolean;
    readonly amendments: readonly DrawAmendmentRow[];
  }> {
    return this.database.snapshot(async (at) => ({
      isInForce: (await draws.latest(at, organisationId, competitionId))?.id === id,
      amendments: await draws.amendmentsOf(at, organisationId, [id]),
    }));
  }

  private async rowsOf(
    organisationId: string | undefined,
    meetIds: readonly string[],
  ): Promise<QualificationRow[]> {
    if (organisationId === undefined) return [];
    return this.database.read((at) => qualifications.ofMeets(at, organisationId, meetIds));
  }

  private async problems({
    organisationId,
    meetId,
    groupIds,
    finalId,
  }: QualificationRow): Promise<Refusal[]> {
    const meet = await this.database.read((at) => meets.find(at, organisationId, meetId));
    if (!meet) return [notFound('meet', ['meetId'])];
    if (new Set(groupIds).size < groupIds.length) return [GROUP_TWICE];
    const loaded = await Promise.all(groupIds.map((id) => this.memory.current(organisationId, id)));
    const groups = loaded.flatMap((one) => (one?.row.meetId === meetId ? [one] : []));
    if (groups.length < loaded.length) {
      const missing = loaded.flatMap((one, at) => (one?.row.meetId === meetId ? [] : [at]));
      return missing.map((at) => notFound('competition of the meet', ['competitionIds', String(at)]));
    }
    const problems = groupProblems(groups).map(groupRefusal);
    if (finalId === null || problems.length > 0) return problems;
    const final = await this.memory.current(organisationId, finalId);
    if (!final) return [notFound('competition', ['finalId'])];
    return isFinalOf(groups[0]!.row, final.row) ? [] : [FINAL_DIFFERS];
  }
}

/** Whether a competition can be the final that comes of this group. */
export function isFinalOf(group: CompetitionRow, final: CompetitionRow): boolean {
  const isSame = (['meetId', 'event', 'unit'] as const).every((key) => group[key] === final[key]);
  return isSame && final.stage === 'final';
}

/** Null: none of these competitions belongs to another qualification. */
export async function takenElsewhere(
  tx: Tx,
  { organisationId, id, meetId, groupIds, finalId }: QualificationRow,
): Promise<Refusal | null> {
  const others = (await qualifications.ofMeets(tx, organisationId, [meetId])).filter((one) => one.id !== id);
  if (others.some((one) => one.groupIds.some((group) => groupIds.includes(group)))) return GROUP_TWICE;
  return finalId !== null && others.some((one) => one.finalId === finalId) ? FINAL_TAKEN : null;
}
