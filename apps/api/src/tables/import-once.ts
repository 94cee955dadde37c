import { tableImports, violationOf, type NewTableImport, type Tx } from '#persistence';
import type { Database } from '../platform/database/database.js';

type Counts = NewTableImport['counts'];

/** What a table came to. */
export interface ReadTable {
  readonly isStored: boolean;
  readonly counts: Counts;
}

/**
 * Carries a table out once under its id, in one transaction. What is sent again is answered by what was stored then;
 * `replay` says how, and whether it is the same request.
 */
export async function importOnce<Read extends ReadTable>(
  database: Database,
  table: Omit<NewTableImport, 'counts'>,
  read: (tx: Tx) => Promise<Read>,
  replay: (isSame: boolean, counts: Counts) => Read,
): Promise<Read> {
  try {
    return await database.write(async (tx) => {
      const there = await tableImports.find(tx, table.organisationId, table.id);
      if (there) return replay(there.fingerprint === table.fingerprint, there.counts);
      return read(tx);
    });
  } catch (error) {
    // The same table twice at once: the one that came second is answered like any that is sent again.
    if (violationOf(error)?.constraint !== 'table_import_pkey') throw error;
    return importOnce(database, table, read, replay);
  }
}
