import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import type { ProtestRow } from '../proceedings-rows.js';
import { INSTANT, OPTIONAL_INSTANT } from './instant.js';
import { WrittenColumns } from './written.js';

/** A protest as it came in. */
@Entity('protest')
@Index('protest_by_competition', ['competitionId', 'organisationId'])
@ForeignKey('competition', ['organisationId', 'competitionId'], ['organisationId', 'id'], {
  name: 'protest_competition_fkey',
})
@ForeignKey('journal_entry', ['organisationId', 'attemptId'], ['organisationId', 'entryId'], {
  name: 'protest_attempt_fkey',
})
@Check('protest_form_known', `form IN ('oral', 'written')`)
@Check('protest_ground_known', `ground IN ('rules', 'clerical', 'eligibility', 'judgement')`)
@Check('protest_lodged_by_given', `btrim(lodged_by) <> '' AND length(lodged_by) <= 200`)
@Check('protest_deposit_given', `btrim(deposit) <> '' AND length(deposit) <= 100`)
@Check('protest_deposit_paid_of_one', `deposit IS NOT NULL OR NOT deposit_paid`)
@Check('protest_timeliness_known', `timeliness IN ('in time', 'late', 'not taken')`)
@Check(
  'protest_late_after_window',
  `timeliness <> 'late' OR (window_until IS NOT NULL AND lodged_at > window_until)`,
)
export class Protest extends WrittenColumns {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'protest_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'protest_pkey' })
  id: string;

  @Column('uuid')
  competitionId: string;

  @Column('text')
  form: ProtestRow['form'];

  @Column('text')
  ground: ProtestRow['ground'];

  @Column('text')
  lodgedBy: string;

  @Column(INSTANT)
  lodgedAt: string;

  @Column('uuid', { nullable: true })
  competitorId: string | null;

  @Column('uuid', { nullable: true })
  attemptId: string | null;

  @Column('text')
  reason: string;

  @Column('text', { nullable: true })
  deposit: string | null;

  @Column('boolean')
  depositPaid: boolean;

  @Column('text')
  timeliness: ProtestRow['timeliness'];

  @Column(OPTIONAL_INSTANT)
  windowUntil: string | null;
}
