import { Check, Column, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import type { TableImportRow } from '../entry-rows.js';
import { SET_BY_CLOCK } from './instant.js';

/** A table that came in as a whole: under which id it may be sent again. Rows are added and never changed. */
@Entity('table_import')
@ForeignKey('meet', ['organisationId', 'meetId'], ['organisationId', 'id'], {
  name: 'table_import_meet_fkey',
})
@Check('table_import_holds_known', `holds IN ('entries', 'past results')`)
@Check('table_import_meet_iff_entries', `(holds = 'entries') = (meet_id IS NOT NULL)`)
@Check('table_import_counts_shape', `jsonb_typeof(counts) = 'object'`)
export class TableImport {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'table_import_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'table_import_pkey' })
  id: string;

  @Column('text')
  holds: TableImportRow['holds'];

  @Column('uuid', { nullable: true })
  meetId: string | null;

  @Column('text')
  fingerprint: string;

  @Column('jsonb')
  counts: TableImportRow['counts'];

  @Column('text')
  madeBy: string;

  @Column(SET_BY_CLOCK)
  madeAt: string;
}
