import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn, Unique } from 'typeorm';
import type { ObservationRow } from '../notebook-rows.js';
import { INSTANT, OPTIONAL_INSTANT, SET_BY_CLOCK } from './instant.js';

/** What one observer saw of one throw. Rows are added and never changed: one that another replaces counts no longer. */
@Entity('observation')
@Index('observation_by_athlete', ['athleteId', 'organisationId'])
@Index('observation_by_competition', ['competitionId', 'organisationId'])
@Unique('observation_replaced_once', ['organisationId', 'replacesId'])
@ForeignKey('athlete', ['organisationId', 'athleteId'], ['organisationId', 'id'], {
  name: 'observation_athlete_fkey',
})
@ForeignKey('practice_throw', ['organisationId', 'practiceThrowId'], ['organisationId', 'id'], {
  name: 'observation_practice_throw_fkey',
})
@ForeignKey('competition', ['organisationId', 'competitionId'], ['organisationId', 'id'], {
  name: 'observation_competition_fkey',
})
@ForeignKey('person', ['organisationId', 'observerId'], ['organisationId', 'id'], {
  name: 'observation_observer_fkey',
})
@ForeignKey('observation', ['organisationId', 'replacesId'], ['organisationId', 'id'], {
  name: 'observation_replaces_fkey',
})
@Check(
  'observation_of_one_throw',
  `num_nonnulls(competition_id, competitor_id, round) = CASE WHEN practice_throw_id IS NULL THEN 3 ELSE 0 END`,
)
@Check('observation_round_range', `round BETWEEN 1 AND 12`)
@Check('observation_method_known', `method IN ('live', 'video')`)
@Check('observation_view_known', `view IN ('side', 'rear', 'front', 'above')`)
@Check(
  'observation_checklist_scoped',
  `(checklist IS NULL) = (checklist_version IS NULL) AND (checklist IS NULL OR scope IS NOT NULL)`,
)
@Check('observation_checklist_version_range', `checklist_version >= 1`)
@Check('observation_reason_iff_replaces', `(replaces_id IS NULL) = (reason IS NULL)`)
@Check('observation_taken_back', `replaces_id IS NOT NULL OR NOT is_withdrawn`)
export class Observation {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'observation_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'observation_pkey' })
  id: string;

  @Column('uuid')
  athleteId: string;

  @Column('text')
  event: ObservationRow['event'];

  @Column('uuid', { nullable: true })
  practiceThrowId: string | null;

  @Column('uuid', { nullable: true })
  competitionId: string | null;

  @Column('uuid', { nullable: true })
  competitorId: string | null;

  @Column('integer', { nullable: true })
  round: number | null;

  @Column('uuid')
  observerId: string;

  @Column(INSTANT)
  observedAt: string;

  @Column('text')
  method: ObservationRow['method'];

  @Column('boolean')
  markKnown: boolean;

  @Column('text', { nullable: true })
  view: ObservationRow['view'];

  @Column('text', { nullable: true })
  checklist: string | null;

  @Column('integer', { nullable: true })
  checklistVersion: number | null;

  @Column('jsonb', { nullable: true })
  scope: ObservationRow['scope'];

  @Column('jsonb')
  marks: ObservationRow['marks'];

  @Column('text')
  edition: string;

  @Column('text', { nullable: true })
  note: string | null;

  @Column('boolean')
  isWithdrawn: boolean;

  @Column('uuid', { nullable: true })
  replacesId: string | null;

  @Column('text', { nullable: true })
  reason: string | null;

  @Column('text', { nullable: true })
  device: string | null;

  @Column(OPTIONAL_INSTANT)
  deviceAt: string | null;

  @Column(SET_BY_CLOCK)
  recordedAt: string;

  @Column('text')
  fingerprint: string;
}
