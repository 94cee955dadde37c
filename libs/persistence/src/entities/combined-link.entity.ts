import type { CombinedEventCode } from '#rules';
import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { SET_BY_CLOCK } from './instant.js';

/** From which competition an event of a combined event is counted. Rows are added and never changed. */
@Entity('combined_link')
@Index('combined_link_by_competition', ['competitionId', 'organisationId'])
@ForeignKey('combined_event', ['organisationId', 'combinedEventId'], ['organisationId', 'id'], {
  name: 'combined_link_event_fkey',
})
@ForeignKey('competition', ['organisationId', 'competitionId'], ['organisationId', 'id'], {
  name: 'combined_link_competition_fkey',
})
@Check('combined_link_revision_range', `revision >= 1`)
@Check(
  'combined_link_of_field_event',
  `event IN ('high-jump', 'pole-vault', 'long-jump', 'shot', 'discus', 'hammer', 'javelin', 'weight')`,
)
export class CombinedLink {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'combined_link_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'combined_link_pkey' })
  combinedEventId: string;

  @PrimaryColumn('integer', { primaryKeyConstraintName: 'combined_link_pkey' })
  revision: number;

  @Column('text')
  event: CombinedEventCode;

  @Column('uuid', { nullable: true })
  competitionId: string | null;

  @Column('text')
  linkedBy: string;

  @Column(SET_BY_CLOCK)
  linkedAt: string;
}
