import { In } from 'typeorm';
import { CallingGroup } from '../entities/calling-group.entity.js';
import type { CallingGroupRow } from '../rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** A new group begins at version 0, without an order. */
export type NewCallingGroup = Omit<CallingGroupRow, 'version' | 'startOrder'>;
export type CallingGroupChanges = Partial<
  Omit<CallingGroupRow, 'organisationId' | 'id' | 'meetId' | 'version'>
>;

/*
 * Whoever changes a group holds its lock. Competitions are put into it and taken out of it through the store of the
 * competitions, under the locks of those.
 */

export async function insert(tx: Tx, row: NewCallingGroup): Promise<void> {
  await managerOf(tx).insert(CallingGroup, row);
}

export async function find(at: Reads, organisationId: string, id: string): Promise<CallingGroupRow | null> {
  return managerOf(at).findOneBy(CallingGroup, { organisationId, id });
}

/** Those of `ids` that there are, in no order. */
export async function byIds(
  at: Reads,
  organisationId: string,
  ids: readonly string[],
): Promise<CallingGroupRow[]> {
  return managerOf(at).findBy(CallingGroup, { organisationId, id: In([...ids]) });
}

/** Locks the group until the transaction ends. `null`: there is no such group. */
export async function lock(tx: Tx, organisationId: string, id: string): Promise<CallingGroupRow | null> {
  return managerOf(tx).findOne(CallingGroup, {
    where: { organisationId, id },
    lock: { mode: 'pessimistic_write' },
  });
}

/** The groups of several meets, each meet's by time, those without a time last. */
export async function ofMeets(
  at: Reads,
  organisationId: string,
  meetIds: readonly string[],
): Promise<CallingGroupRow[]> {
  return managerOf(at).find(CallingGroup, {
    where: { organisationId, meetId: In([...meetIds]) },
    order: { startsAt: { direction: 'ASC', nulls: 'LAST' }, title: 'ASC', id: 'ASC' },
  });
}

/** Changes the group and gives it this version, which must be greater than the one before. */
export async function update(
  tx: Tx,
  { organisationId, id }: Pick<CallingGroupRow, 'organisationId' | 'id'>,
  version: number,
  changes: CallingGroupChanges,
): Promise<void> {
  await managerOf(tx).update(CallingGroup, { organisationId, id }, { ...changes, version });
}
