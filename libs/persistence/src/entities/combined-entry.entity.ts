import type { CombinedBody, CombinedEntryKind } from '#rules';
import { Check, Column, Entity, ForeignKey, PrimaryColumn, Unique } from 'typeorm';
import type { StoredCombinedVerdict } from '../combined-rows.js';
import type { Authority } from '../rows.js';
import { OPTIONAL_INSTANT, SET_BY_CLOCK } from './instant.js';

/** What somebody entered or decided in a combined event, for good: rows are added and never changed. */
@Entity('combined_entry')
@Unique('combined_entry_id_unique', ['entryId', 'organisationId'])
@ForeignKey('combined_event', ['organisationId', 'combinedEventId'], ['organisationId', 'id'], {
  name: 'combined_entry_event_fkey',
})
@Check('combined_entry_sequence_range', `sequence >= 1`)
@Check('combined_entry_body_of_kind', `body ->> 'kind' = kind`)
@Check('combined_entry_verdict_agrees', `(verdict ->> 'standing' = standing) IS TRUE`)
export class CombinedEntry {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'combined_entry_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'combined_entry_pkey' })
  combinedEventId: string;

  @PrimaryColumn('integer', { primaryKeyConstraintName: 'combined_entry_pkey' })
  sequence: number;

  @Column('uuid')
  entryId: string;

  @Column('text')
  kind: CombinedEntryKind;

  @Column('jsonb')
  body: CombinedBody;

  @Column('text')
  standing: StoredCombinedVerdict['standing'];

  @Column('jsonb')
  verdict: StoredCombinedVerdict;

  @Column('text')
  authority: Authority;

  @Column('text')
  actor: string;

  @Column('text', { nullable: true })
  device: string | null;

  @Column(OPTIONAL_INSTANT)
  deviceAt: string | null;

  @Column(SET_BY_CLOCK)
  recordedAt: string;

  @Column('text')
  fingerprint: string;
}
