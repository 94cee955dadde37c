import { In } from 'typeorm';
import { Qualification } from '../entities/qualification.entity.js';
import { QualificationGroup } from '../entities/qualification-group.entity.js';
import type { QualificationRow } from '../draw-rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** Throws a `unique` violation when a group, or the final, belongs to another qualification. */
export async function insert(tx: Tx, { groupIds, ...row }: QualificationRow): Promise<void> {
  const { organisationId, id: qualificationId } = row;
  await managerOf(tx).insert(Qualification, row);
  await managerOf(tx).insert(
    QualificationGroup,
    groupIds.map((competitionId, at) => ({
      organisationId,
      qualificationId,
      position: at + 1,
      competitionId,
    })),
  );
}

/** As `find`, and locked until the transaction ends. */
export async function lock(tx: Tx, organisationId: string, id: string): Promise<QualificationRow | null> {
  await managerOf(tx).query(
    `SELECT 1 FROM qualification WHERE organisation_id = $1 AND id = $2 FOR NO KEY UPDATE`,
    [organisationId, id],
  );
  return find(tx, organisationId, id);
}

export async function setFinal(tx: Tx, organisationId: string, id: string, finalId: string): Promise<void> {
  await managerOf(tx).update(Qualification, { organisationId, id }, { finalId });
}

/** Its groups are competitions of their own again. Throws a violation when a final was drawn of it. */
export async function remove(tx: Tx, organisationId: string, id: string): Promise<void> {
  await managerOf(tx).delete(QualificationGroup, { organisationId, qualificationId: id });
  await managerOf(tx).delete(Qualification, { organisationId, id });
}

export async function find(at: Reads, organisationId: string, id: string): Promise<QualificationRow | null> {
  const [row] = await withGroups(
    at,
    organisationId,
    await managerOf(at).findBy(Qualification, { organisationId, id }),
  );
  return row ?? null;
}

/** Those of several meets, by title. */
export async function ofMeets(
  at: Reads,
  organisationId: string,
  meetIds: readonly string[],
): Promise<QualificationRow[]> {
  const rows = await managerOf(at).find(Qualification, {
    where: { organisationId, meetId: In([...meetIds]) },
    order: { title: 'ASC', id: 'ASC' },
  });
  return withGroups(at, organisationId, rows);
}

async function withGroups(
  at: Reads,
  organisationId: string,
  rows: readonly Qualification[],
): Promise<QualificationRow[]> {
  if (rows.length === 0) return [];
  const groups = await managerOf(at).find(QualificationGroup, {
    where: { organisationId, qualificationId: In(rows.map(({ id }) => id)) },
    order: { position: 'ASC' },
  });
  return rows.map((row) => ({
    ...row,
    groupIds: groups.filter((group) => group.qualificationId === row.id).map((group) => group.competitionId),
  }));
}
