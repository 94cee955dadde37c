import { TableImport } from '../entities/table-import.entity.js';
import type { TableImportRow } from '../entry-rows.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

/** The database gives it its time. */
export type NewTableImport = Omit<TableImportRow, 'madeAt'>;

/** Throws a `unique` violation of `table_import_pkey` when the same table came in meanwhile. */
export async function insert(tx: Tx, row: NewTableImport): Promise<void> {
  await managerOf(tx).insert(TableImport, row);
}

export async function find(at: Reads, organisationId: string, id: string): Promise<TableImportRow | null> {
  return managerOf(at).findOneBy(TableImport, { organisationId, id });
}
