import { In } from 'typeorm';
import { Draw } from '../entities/draw.entity.js';
import { DrawAmendment } from '../entities/draw-amendment.entity.js';
import type { DrawAmendmentRow, DrawRow } from '../draw-rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** The database gives it its number and its time. */
export type NewDraw = Omit<DrawRow, 'number' | 'drawnAt'>;
export type NewDrawAmendment = Omit<DrawAmendmentRow, 'number' | 'madeAt'>;

/** Adds a draw, which is in force from now on. The caller holds the lock of its competition. */
export async function add(tx: Tx, row: NewDraw): Promise<void> {
  const before = await latest(tx, row.organisationId, row.competitionId);
  await managerOf(tx).insert(Draw, { ...row, number: (before?.number ?? 0) + 1 });
}

export async function find(at: Reads, organisationId: string, id: string): Promise<DrawRow | null> {
  return managerOf(at).findOneBy(Draw, { organisationId, id });
}

/** The draw in force; `null`: the start list was not drawn. */
export async function latest(
  at: Reads,
  organisationId: string,
  competitionId: string,
): Promise<DrawRow | null> {
  return managerOf(at).findOne(Draw, {
    where: { organisationId, competitionId },
    order: { number: 'DESC' },
  });
}

/** The draws of several competitions, each competition's in their order. */
export async function ofCompetitions(
  at: Reads,
  organisationId: string,
  competitionIds: readonly string[],
): Promise<DrawRow[]> {
  return managerOf(at).find(Draw, {
    where: { organisationId, competitionId: In([...competitionIds]) },
    order: { number: 'ASC' },
  });
}

/** Whether a final was drawn of this qualification. */
export async function isOfQualification(
  at: Reads,
  organisationId: string,
  qualificationId: string,
): Promise<boolean> {
  return managerOf(at).existsBy(Draw, { organisationId, qualificationId });
}

/** Says beside a draw what became of its start list. The caller holds the lock of the competition. */
export async function amend(tx: Tx, row: NewDrawAmendment): Promise<void> {
  const { organisationId, drawId } = row;
  const before = await managerOf(tx).countBy(DrawAmendment, { organisationId, drawId });
  await managerOf(tx).insert(DrawAmendment, { ...row, number: before + 1 });
}

/** What was added beside these draws, each draw's in their order. */
export async function amendmentsOf(
  at: Reads,
  organisationId: string,
  drawIds: readonly string[],
): Promise<DrawAmendmentRow[]> {
  return managerOf(at).find(DrawAmendment, {
    where: { organisationId, drawId: In([...drawIds]) },
    order: { number: 'ASC' },
  });
}
