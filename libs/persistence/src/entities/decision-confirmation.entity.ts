import { Check, Column, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import type { Authority } from '../rows.js';
import { SET_BY_CLOCK } from './instant.js';

/** The second person's word, and the entry of the journal that it made. */
@Entity('decision_confirmation')
@ForeignKey(
  'decision_request',
  ['requestId', 'askedBy', 'organisationId'],
  ['id', 'askedBy', 'organisationId'],
  {
    name: 'decision_confirmation_request_fkey',
  },
)
@Check('decision_confirmation_two_persons', `confirmed_by <> asked_by`)
@Check('decision_confirmation_by_right', `authority IN ('referee', 'director')`)
export class DecisionConfirmation {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'decision_confirmation_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'decision_confirmation_pkey' })
  requestId: string;

  @Column('text')
  askedBy: string;

  @Column('uuid')
  entryId: string;

  @Column('text')
  authority: Authority;

  @Column('text')
  confirmedBy: string;

  @Column(SET_BY_CLOCK)
  confirmedAt: string;
}
