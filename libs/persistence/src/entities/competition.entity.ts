import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn, Unique } from 'typeorm';
import type {
  CompetitionStatus,
  EventCode,
  PlanOverrides,
  Qualifying,
  RuleSetCode,
  Scoring,
  Sex,
  Stage,
  Unit,
  VerticalTerms,
} from '../rows.js';
import { OPTIONAL_INSTANT } from './instant.js';

/** `version` counts every change that a reader could see; `lastSequence` is the number of journal entries. */
@Entity('competition')
@Index('competition_by_meet', ['meetId', 'organisationId'])
@ForeignKey('meet', ['organisationId', 'meetId'], ['organisationId', 'id'], { name: 'competition_meet_fkey' })
@ForeignKey(
  'calling_group',
  ['organisationId', 'meetId', 'callingGroupId'],
  ['organisationId', 'meetId', 'id'],
  { name: 'competition_calling_group_fkey' },
)
@Unique('competition_calling_position_unique', ['callingGroupId', 'callingPosition', 'organisationId'], {
  deferrable: 'INITIALLY DEFERRED',
})
@Check('competition_qualifying_iff_qualification', `(stage = 'qualification') = (qualifying IS NOT NULL)`)
@Check('competition_vertical_iff_bar', `(event IN ('high-jump', 'pole-vault')) = (vertical IS NOT NULL)`)
@Check('competition_plan_without_bar', `vertical IS NULL OR plan = '{}'`)
@Check('competition_calling_position_iff_group', `(calling_group_id IS NULL) = (calling_position IS NULL)`)
@Check('competition_withheld_until_something', `withheld_until IS NULL OR is_withheld`)
@Check('competition_counters', `last_sequence >= 0 AND version >= last_sequence`)
export class Competition {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'competition_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'competition_pkey' })
  id: string;

  @Column('uuid')
  meetId: string;

  @Column('text')
  title: string;

  @Column('text')
  event: EventCode;

  @Column('text')
  rules: RuleSetCode;

  @Column('text')
  edition: string;

  @Column('boolean', { default: false })
  indoor: boolean;

  @Column('text', { default: 'final' })
  stage: Stage;

  @Column('jsonb', { nullable: true })
  qualifying: Qualifying | null;

  @Column('jsonb', { default: {} })
  plan: PlanOverrides;

  @Column('jsonb', { nullable: true })
  vertical: VerticalTerms | null;

  @Column('text')
  unit: Unit;

  @Column('text', { nullable: true })
  categorySex: Sex | null;

  @Column('text', { nullable: true })
  categoryAge: string | null;

  @Column('integer', { nullable: true })
  implementGrams: number | null;

  @Column('jsonb', { nullable: true })
  scoring: Scoring | null;

  @Column('text', { default: 'draft' })
  status: CompetitionStatus;

  @Column('integer', { default: 0 })
  version: number;

  @Column('integer', { default: 0 })
  lastSequence: number;

  @Column(OPTIONAL_INSTANT)
  startsAt: string | null;

  @Column('text', { nullable: true })
  categoryScheme: string | null;

  @Column('uuid', { nullable: true })
  callingGroupId: string | null;

  @Column('integer', { nullable: true })
  callingPosition: number | null;

  @Column('boolean', { default: false })
  isWithheld: boolean;

  @Column(OPTIONAL_INSTANT)
  withheldUntil: string | null;
}
