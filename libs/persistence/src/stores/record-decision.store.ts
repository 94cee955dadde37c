import { In } from 'typeorm';
import { RecordDecision } from '../entities/record-decision.entity.js';
import type { RecordDecisionRow } from '../rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** The database gives it its revision and its time. */
export type NewRecordDecision = Omit<RecordDecisionRow, 'revision' | 'decidedAt'>;

/** Adds a decision, which holds from now on. The caller holds the competition's lock. */
export async function add(tx: Tx, row: NewRecordDecision): Promise<void> {
  const { organisationId, attemptId, kind } = row;
  const before = await managerOf(tx).count(RecordDecision, { where: { organisationId, attemptId, kind } });
  await managerOf(tx).insert(RecordDecision, { ...row, revision: before + 1 });
}

export async function find(at: Reads, organisationId: string, id: string): Promise<RecordDecisionRow | null> {
  return managerOf(at).findOneBy(RecordDecision, { organisationId, id });
}

/** All that was decided in these competitions, for each mark in the order of deciding. */
export async function ofCompetitions(
  at: Reads,
  organisationId: string,
  competitionIds: readonly string[],
): Promise<RecordDecisionRow[]> {
  return managerOf(at).find(RecordDecision, {
    where: { organisationId, competitionId: In([...competitionIds]) },
    order: { attemptId: 'ASC', kind: 'ASC', revision: 'ASC' },
  });
}
