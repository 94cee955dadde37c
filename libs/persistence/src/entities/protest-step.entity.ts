import { Check, Column, Entity, ForeignKey, PrimaryColumn, Unique } from 'typeorm';
import type { ProtestStepRow } from '../proceedings-rows.js';
import { INSTANT } from './instant.js';
import { WrittenColumns } from './written.js';

/** What was decided about a protest, or that it was appealed or withdrawn. */
@Entity('protest_step')
@Unique('protest_step_in_order', ['protestId', 'number', 'organisationId'])
@ForeignKey('protest', ['organisationId', 'protestId'], ['organisationId', 'id'], {
  name: 'protest_step_protest_fkey',
})
@Check('protest_step_number_range', `number >= 1`)
@Check('protest_step_kind_known', `kind IN ('decision', 'appeal', 'appeal-decision', 'withdrawal')`)
@Check(
  'protest_step_outcome_of_decision',
  `(outcome IS NOT NULL) = (kind IN ('decision', 'appeal-decision'))`,
)
@Check('protest_step_outcome_known', `outcome IN ('upheld', 'dismissed')`)
@Check('protest_step_done_by_given', `btrim(done_by) <> '' AND length(done_by) <= 200`)
@Check('protest_step_rule_given', `btrim(rule) <> '' AND length(rule) <= 200`)
@Check('protest_step_deposit_known', `deposit IN ('paid', 'returned', 'forfeited')`)
@Check('protest_step_timeliness_known', `timeliness IN ('in time', 'late')`)
@Check('protest_step_by_right', `outcome IS NULL OR authority IN ('referee', 'director')`)
export class ProtestStep extends WrittenColumns {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'protest_step_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'protest_step_pkey' })
  id: string;

  @Column('uuid')
  protestId: string;

  @Column('integer')
  number: number;

  @Column('text')
  kind: ProtestStepRow['kind'];

  @Column('text', { nullable: true })
  outcome: ProtestStepRow['outcome'];

  @Column('text')
  doneBy: string;

  @Column(INSTANT)
  doneAt: string;

  @Column('text')
  reason: string;

  @Column('text', { nullable: true })
  rule: string | null;

  @Column('text', { nullable: true })
  deposit: ProtestStepRow['deposit'];

  @Column('text')
  timeliness: ProtestStepRow['timeliness'];
}
