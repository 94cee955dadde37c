import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import type { CombinedRequestRow } from '../combined-rows.js';
import type { Authority } from '../rows.js';
import { SET_BY_CLOCK } from './instant.js';

/** A signature or a reopening of a combined event that waits for a second person. */
@Entity('combined_request')
@Index('combined_request_by_event', ['combinedEventId', 'organisationId'])
@ForeignKey('combined_event', ['organisationId', 'combinedEventId'], ['organisationId', 'id'], {
  name: 'combined_request_event_fkey',
})
@Check('combined_request_kind_known', `kind IN ('sign-off', 'reopening')`)
@Check('combined_request_version_range', `version >= 0`)
export class CombinedRequest {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'combined_request_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'combined_request_pkey' })
  id: string;

  @Column('uuid')
  combinedEventId: string;

  @Column('text')
  kind: CombinedRequestRow['kind'];

  @Column('integer')
  version: number;

  @Column('text', { nullable: true })
  reason: string | null;

  @Column('text')
  authority: Authority;

  @Column('text')
  askedBy: string;

  @Column(SET_BY_CLOCK)
  askedAt: string;
}
