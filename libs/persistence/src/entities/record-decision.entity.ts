import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn, Unique } from 'typeorm';
import type { Authority, RecordDecisionRow } from '../rows.js';
import { SET_BY_CLOCK } from './instant.js';

/** What a referee decided about a mark as a record. Rows are added and never changed: the last for a mark holds. */
@Entity('record_decision')
@Index('record_decision_by_competition', ['competitionId', 'organisationId'])
@Unique('record_decision_in_order', ['attemptId', 'kind', 'revision', 'organisationId'])
@ForeignKey('competition', ['organisationId', 'competitionId'], ['organisationId', 'id'], {
  name: 'record_decision_competition_fkey',
})
@ForeignKey('competitor', ['organisationId', 'competitorId'], ['organisationId', 'id'], {
  name: 'record_decision_competitor_fkey',
})
@ForeignKey('journal_entry', ['organisationId', 'attemptId'], ['organisationId', 'entryId'], {
  name: 'record_decision_attempt_fkey',
})
@Check('record_decision_kind_known', `kind IN ('club record', 'meet record')`)
@Check('record_decision_revision_range', `revision >= 1`)
@Check('record_decision_decision_known', `decision IN ('ratified', 'refused', 'withdrawn')`)
@Check('record_decision_mark_range', `mark BETWEEN 1 AND 99999`)
@Check('record_decision_wind_form', `wind ~ '^([+-][0-9]{1,2}[.][0-9]|NWI|pending)$'`)
@Check(
  'record_decision_recheck_known',
  `recheck IN ('passed', 'failed', 'incomplete', 'missing', 'other implement')`,
)
@Check('record_decision_measuring_known', `measuring IN ('steel-tape', 'electronic', 'bar')`)
@Check('record_decision_despite_shape', `jsonb_typeof(despite) = 'array'`)
@Check('record_decision_reason_given', `btrim(reason) <> '' AND length(reason) <= 1000`)
@Check('record_decision_not_by_officials', `authority IN ('referee', 'director')`)
export class RecordDecision {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'record_decision_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'record_decision_pkey' })
  id: string;

  @Column('uuid')
  competitionId: string;

  @Column('uuid')
  attemptId: string;

  @Column('uuid')
  competitorId: string;

  @Column('text')
  kind: RecordDecisionRow['kind'];

  @Column('integer')
  revision: number;

  @Column('text')
  decision: RecordDecisionRow['decision'];

  @Column('integer')
  mark: number;

  @Column('text', { nullable: true })
  wind: string | null;

  @Column('integer', { nullable: true })
  implementGrams: number | null;

  @Column('text', { nullable: true })
  recheck: RecordDecisionRow['recheck'];

  @Column('text', { nullable: true })
  measuring: RecordDecisionRow['measuring'];

  @Column('jsonb')
  despite: RecordDecisionRow['despite'];

  @Column('text')
  reason: string;

  @Column('text')
  authority: Authority;

  @Column('text')
  decidedBy: string;

  @Column(SET_BY_CLOCK)
  decidedAt: string;
}
