import type { CombinedProgrammeCode, CombinedTies, ScoringSex, Timing } from '#rules';
import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import type { CompetitionStatus, RuleSetCode, Sex } from '../rows.js';

/** A combined event of a meet: its programme, and how it is scored. */
@Entity('combined_event')
@Index('combined_event_by_meet', ['meetId', 'organisationId'])
@ForeignKey('meet', ['organisationId', 'meetId'], ['organisationId', 'id'], {
  name: 'combined_event_meet_fkey',
})
@Check(
  'combined_event_scored_by_programme',
  `CASE programme WHEN 'throws-pentathlon' THEN scored_by IN ('W', 'M') WHEN 'decathlon' THEN scored_by = 'M' WHEN 'heptathlon-indoor' THEN scored_by = 'M' ELSE scored_by = 'W' END`,
)
@Check('combined_event_counters', `last_sequence >= 0 AND version >= last_sequence`)
export class CombinedEvent {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'combined_event_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'combined_event_pkey' })
  id: string;

  @Column('uuid')
  meetId: string;

  @Column('text')
  title: string;

  @Column('text')
  programme: CombinedProgrammeCode;

  @Column('text')
  scoredBy: ScoringSex;

  @Column('text', { nullable: true })
  categorySex: Sex | null;

  @Column('text', { nullable: true })
  categoryAge: string | null;

  @Column('text')
  rules: RuleSetCode;

  @Column('text')
  edition: string;

  @Column('text')
  ties: CombinedTies;

  @Column('text')
  timing: Timing;

  @Column('text', { default: 'draft' })
  status: CompetitionStatus;

  @Column('integer', { default: 0 })
  version: number;

  @Column('integer', { default: 0 })
  lastSequence: number;
}
