import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn, Unique } from 'typeorm';
import type { NotebookEntryRow } from '../notebook-rows.js';
import { SET_BY_CLOCK } from './instant.js';

/** What is said of an athlete beside throws. Rows are added and never changed. */
@Entity('notebook_entry')
@Index('notebook_entry_by_athlete', ['athleteId', 'organisationId'])
@Unique('notebook_entry_replaced_once', ['organisationId', 'replacesId'])
@ForeignKey('athlete', ['organisationId', 'athleteId'], ['organisationId', 'id'], {
  name: 'notebook_entry_athlete_fkey',
})
@ForeignKey('notebook_entry', ['organisationId', 'replacesId'], ['organisationId', 'id'], {
  name: 'notebook_entry_replaces_fkey',
})
@ForeignKey('person', ['organisationId', 'madeBy'], ['organisationId', 'id'], {
  name: 'notebook_entry_made_by_fkey',
})
@Check('notebook_entry_not_itself', `replaces_id <> id`)
@Check('notebook_entry_body_of_kind', `body ->> 'kind' = kind`)
export class NotebookEntry {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'notebook_entry_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'notebook_entry_pkey' })
  id: string;

  @Column('uuid')
  athleteId: string;

  @Column('text')
  kind: NotebookEntryRow['kind'];

  @Column('jsonb')
  body: NotebookEntryRow['body'];

  @Column('uuid', { nullable: true })
  replacesId: string | null;

  @Column('uuid')
  madeBy: string;

  @Column(SET_BY_CLOCK)
  recordedAt: string;

  @Column('text')
  fingerprint: string;
}
