import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn, Unique } from 'typeorm';
import type { DecisionRequestRow } from '../access-rows.js';
import type { Authority } from '../rows.js';
import { SET_BY_CLOCK } from './instant.js';

/** A signature or a reopening that waits for a second person. */
@Entity('decision_request')
@Index('decision_request_by_competition', ['competitionId', 'organisationId'])
@Unique('decision_request_by_whom', ['id', 'askedBy', 'organisationId'])
@ForeignKey('competition', ['organisationId', 'competitionId'], ['organisationId', 'id'], {
  name: 'decision_request_competition_fkey',
})
@Check('decision_request_kind_known', `kind IN ('sign-off', 'reopening')`)
@Check('decision_request_reopening_explained', `kind <> 'reopening' OR reason IS NOT NULL`)
@Check('decision_request_version_range', `version >= 0`)
export class DecisionRequest {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'decision_request_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'decision_request_pkey' })
  id: string;

  @Column('uuid')
  competitionId: string;

  @Column('text')
  kind: DecisionRequestRow['kind'];

  @Column('text', { nullable: true })
  reason: string | null;

  @Column('integer')
  version: number;

  @Column('text')
  authority: Authority;

  @Column('text')
  askedBy: string;

  @Column(SET_BY_CLOCK)
  askedAt: string;
}
