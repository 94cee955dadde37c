import { Organisation } from '../entities/organisation.entity.js';
import type { OrganisationRow } from '../rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

export async function insert(tx: Tx, row: OrganisationRow): Promise<void> {
  await managerOf(tx).insert(Organisation, row);
}

export async function find(at: Reads, id: string): Promise<OrganisationRow | null> {
  return managerOf(at).findOneBy(Organisation, { id });
}

/** The installation's organisations, by name; there are a handful, so at most 100. */
export async function list(at: Reads): Promise<OrganisationRow[]> {
  return managerOf(at).find(Organisation, { order: { name: 'ASC', id: 'ASC' }, take: 100 });
}
