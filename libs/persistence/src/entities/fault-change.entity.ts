import { Check, Column, Entity, ForeignKey, PrimaryColumn, Unique } from 'typeorm';
import type { FaultChangeRow } from '../notebook-rows.js';
import { SET_BY_CLOCK } from './instant.js';

/** A change of the vocabulary. Rows are added and never changed: the vocabulary is what they come to. */
@Entity('fault_change')
@Unique('fault_change_id_unique', ['id', 'organisationId'])
@ForeignKey('person', ['organisationId', 'madeBy'], ['organisationId', 'id'], {
  name: 'fault_change_made_by_fkey',
})
@Check('fault_change_sequence_range', `sequence >= 1`)
export class FaultChange {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'fault_change_pkey' })
  organisationId: string;

  @PrimaryColumn('integer', { primaryKeyConstraintName: 'fault_change_pkey' })
  sequence: number;

  @Column('uuid')
  id: string;

  @Column('jsonb')
  body: FaultChangeRow['body'];

  @Column('uuid')
  madeBy: string;

  @Column(SET_BY_CLOCK)
  recordedAt: string;

  @Column('text')
  fingerprint: string;
}
