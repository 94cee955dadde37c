import { CategoryDefinition } from '../entities/category-definition.entity.js';
import type { CategoryDefinitionRow } from '../rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** The database gives it its time. */
export type NewCategoryDefinition = Omit<CategoryDefinitionRow, 'definedAt'>;

export async function insert(tx: Tx, row: NewCategoryDefinition): Promise<void> {
  await managerOf(tx).insert(CategoryDefinition, row);
}

export async function find(
  at: Reads,
  organisationId: string,
  id: string,
): Promise<CategoryDefinitionRow | null> {
  return managerOf(at).findOneBy(CategoryDefinition, { organisationId, id });
}

/** All that the organisation has laid down, the latest first: of several for one day that one counts. */
export async function ofOrganisation(at: Reads, organisationId: string): Promise<CategoryDefinitionRow[]> {
  return managerOf(at).find(CategoryDefinition, {
    where: { organisationId },
    order: { definedAt: 'DESC', id: 'DESC' },
  });
}
