import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn, Unique } from 'typeorm';
import type { PracticeThrowRow } from '../notebook-rows.js';
import { OPTIONAL_INSTANT, SET_BY_CLOCK } from './instant.js';

/** A throw of practice. Rows are added and never changed: one that another replaces counts no longer. */
@Entity('practice_throw')
@Index('practice_throw_by_athlete', ['athleteId', 'organisationId'])
@Index('practice_throw_by_session', ['sessionId', 'organisationId'])
@Unique('practice_throw_replaced_once', ['organisationId', 'replacesId'])
@ForeignKey('practice_session', ['organisationId', 'sessionId'], ['organisationId', 'id'], {
  name: 'practice_throw_session_fkey',
})
@ForeignKey('athlete', ['organisationId', 'athleteId'], ['organisationId', 'id'], {
  name: 'practice_throw_athlete_fkey',
})
@ForeignKey('practice_throw', ['organisationId', 'throwId'], ['organisationId', 'id'], {
  name: 'practice_throw_first_fkey',
})
@ForeignKey('practice_throw', ['organisationId', 'replacesId'], ['organisationId', 'id'], {
  name: 'practice_throw_replaces_fkey',
})
@ForeignKey('person', ['organisationId', 'loggedBy'], ['organisationId', 'id'], {
  name: 'practice_throw_logged_by_fkey',
})
@Check('practice_throw_first_is_itself', `(replaces_id IS NULL) = (throw_id = id)`)
@Check('practice_throw_reason_iff_replaces', `(replaces_id IS NULL) = (reason IS NULL)`)
@Check('practice_throw_taken_back', `replaces_id IS NOT NULL OR NOT is_annulled`)
@Check('practice_throw_round_range', `round BETWEEN 1 AND 999`)
@Check('practice_throw_outcome_known', `outcome IN ('valid', 'foul')`)
@Check('practice_throw_mark_of_valid', `mark IS NULL OR outcome = 'valid'`)
@Check('practice_throw_mark_range', `mark BETWEEN 1 AND 99999`)
@Check('practice_throw_measured_mark', `mark IS NOT NULL OR NOT is_measured`)
@Check('practice_throw_effort_range', `effort_percent BETWEEN 1 AND 100`)
@Check('practice_throw_voided_is_foul', `NOT voided_on_purpose OR outcome = 'foul'`)
@Check('practice_throw_foul_form', `foul IS NULL OR (foul ~ '^[A-Z]{2,16}$' AND outcome = 'foul')`)
@Check('practice_throw_wind_range', `wind BETWEEN -999 AND 999`)
export class PracticeThrow {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'practice_throw_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'practice_throw_pkey' })
  id: string;

  @Column('uuid')
  throwId: string;

  @Column('uuid')
  sessionId: string;

  @Column('uuid')
  athleteId: string;

  @Column('text')
  event: PracticeThrowRow['event'];

  @Column('text')
  variant: PracticeThrowRow['variant'];

  @Column('integer', { nullable: true })
  implementGrams: number | null;

  @Column('integer')
  round: number;

  @Column('text')
  outcome: PracticeThrowRow['outcome'];

  @Column('integer', { nullable: true })
  mark: number | null;

  @Column('boolean')
  isMeasured: boolean;

  @Column('integer', { nullable: true })
  effortPercent: number | null;

  @Column('boolean')
  voidedOnPurpose: boolean;

  @Column('text', { nullable: true })
  foul: string | null;

  @Column('integer', { nullable: true })
  wind: number | null;

  @Column('jsonb')
  styles: PracticeThrowRow['styles'];

  @Column('jsonb', { nullable: true })
  release: PracticeThrowRow['release'];

  @Column('boolean')
  isAnnulled: boolean;

  @Column('uuid', { nullable: true })
  replacesId: string | null;

  @Column('text', { nullable: true })
  reason: string | null;

  @Column('uuid')
  loggedBy: string;

  @Column('text', { nullable: true })
  device: string | null;

  @Column(OPTIONAL_INSTANT)
  deviceAt: string | null;

  @Column(SET_BY_CLOCK)
  recordedAt: string;

  @Column('text')
  fingerprint: string;
}
