import { Check, Column, Entity, ForeignKey, PrimaryColumn, Unique } from 'typeorm';
import type { Authority } from '../rows.js';
import { OPTIONAL_INSTANT, SET_BY_CLOCK } from './instant.js';

/** Who reported, and when. Rows are added and never changed: the last one of a competitor counts. */
@Entity('check_in')
@Unique('check_in_id_unique', ['id', 'organisationId'])
@ForeignKey('competitor', ['organisationId', 'competitorId'], ['organisationId', 'id'], {
  name: 'check_in_competitor_fkey',
})
@Check('check_in_sequence_range', `sequence >= 1`)
@Check('check_in_late_is_present', `is_present OR NOT is_late`)
@Check('check_in_note_given', `btrim(note) <> '' AND length(note) <= 1000`)
export class CheckIn {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'check_in_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'check_in_pkey' })
  competitorId: string;

  @PrimaryColumn('integer', { primaryKeyConstraintName: 'check_in_pkey' })
  sequence: number;

  @Column('uuid')
  id: string;

  @Column('boolean')
  isPresent: boolean;

  @Column('boolean')
  isLate: boolean;

  @Column('text', { nullable: true })
  note: string | null;

  @Column('text')
  authority: Authority;

  @Column('text')
  enteredBy: string;

  @Column('text', { nullable: true })
  device: string | null;

  @Column(OPTIONAL_INSTANT)
  deviceAt: string | null;

  @Column(SET_BY_CLOCK)
  recordedAt: string;
}
