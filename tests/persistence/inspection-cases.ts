import { randomUUID } from 'node:crypto';
import { of, type Columns, type ConstraintCase } from './constraint-cases.js';
import type { Scene } from './fixture.js';

/** An implement that is there already, and what was found of it. */
export const DISCUS = randomUUID();
export const LOOK = randomUUID();

/** A row for each table of inspection and check-in that all constraints allow, once the first two are there. */
export function soundInspections(scene: Scene): Readonly<Record<string, Columns>> {
  const { organisationId: organisation_id, meetId: meet_id } = scene;
  return {
    implement: {
      ...{ organisation_id, id: randomUUID(), meet_id, event: 'discus', grams: 1000, label: 'LT 1' },
      ...{ club_id: scene.clubId, authority: 'official', registered_by: 'official' },
    },
    inspection: {
      ...{ organisation_id, id: randomUUID(), meet_id, implement_id: DISCUS, sequence: 2 },
      ...{ kind: 'inspection', grams: 1002, mm: { diameter: 181 }, outcome: 'passed' },
      ...{ findings: JSON.stringify([]), kept_back: false, authority: 'official', inspected_by: 'official' },
    },
    check_in: {
      ...{ organisation_id, competitor_id: scene.competitorIds[0], sequence: 1, id: randomUUID() },
      ...{ is_present: true, is_late: false, authority: 'official', entered_by: 'official' },
    },
  };
}

const AGAIN = { replaces_id: LOOK, reason: 'the scale was not level' };
const RECHECK = { kind: 'recheck', cause: 'referee' };

const IMPLEMENT = of(
  'implement',
  ['implement_pkey', 'the same id twice', { id: DISCUS }],
  ['implement_meet_fkey', 'of no meet', { meet_id: randomUUID() }],
  ['implement_club_fkey', 'of no club', { club_id: randomUUID() }],
  ['implement_athlete_fkey', 'of nobody', { club_id: null, athlete_id: randomUUID() }],
  ['implement_thrown', 'a pole', { event: 'pole-vault' }],
  ['event_code_known', 'of no event', { event: 'boule' }],
  ['implement_grams_range', 'without weight', { grams: 0 }],
  ['label_length', 'without a label', { label: '' }],
  ['implement_one_owner', 'of two owners', { athlete_id: randomUUID() }],
);

const INSPECTION = of(
  'inspection',
  ['inspection_pkey', 'the same id twice', { id: LOOK }],
  ['inspection_in_sequence', 'the same number twice', { sequence: 1 }],
  ['inspection_meet_fkey', 'at no meet', { meet_id: randomUUID() }],
  ['inspection_implement_fkey', 'of no implement', { implement_id: randomUUID() }],
  ['inspection_competition_fkey', 'for no competition', { competition_id: randomUUID() }],
  ['inspection_attempt_fkey', 'after no attempt', { ...RECHECK, attempt_id: randomUUID() }],
  ['inspection_replaces_fkey', 'instead of nothing', { ...AGAIN, replaces_id: randomUUID() }],
  ['inspection_replaces_fkey', 'a re-check instead of an inspection', { ...AGAIN, ...RECHECK }],
  ['inspection_replaced_once', 'two instead of one', { ...AGAIN, sequence: 3 }, { after: AGAIN }],
  ['inspection_sequence_range', 'before the first', { sequence: 0 }],
  ['inspection_kind_known', 'another kind', { kind: 'glance' }],
  ['inspection_cause_of_recheck', 'a re-check for nothing', { kind: 'recheck' }],
  ['inspection_cause_of_recheck', 'an inspection for a record', { cause: 'referee' }],
  ['inspection_cause_known', 'for another cause', { ...RECHECK, cause: 'curiosity' }],
  ['inspection_attempt_of_recheck', 'an inspection after an attempt', { attempt_id: randomUUID() }],
  ['inspection_record_names_attempt', 'for a record of no attempt', { ...RECHECK, cause: 'record' }],
  ['inspection_grams_range', 'without weight', { grams: 0 }],
  ['inspection_grams_range', 'too heavy for any scale', { grams: 100_000 }],
  ['inspection_mm_shape', 'a measure that nobody knows', { mm: { colour: 3 } }],
  ['inspection_mm_shape', 'no measures at all', { mm: JSON.stringify([]) }],
  ['inspection_mm_range', 'between two millimetres', { mm: { diameter: 180.5 } }],
  ['inspection_mm_range', 'a measure in words', { mm: { diameter: 'wide' } }],
  ['inspection_outcome_known', 'another outcome', { outcome: 'good enough' }],
  ['inspection_passed_weighed', 'passed and not weighed', { grams: null }],
  ['inspection_findings_shape', 'a finding that is no list', { findings: {} }],
  ['inspection_note_given', 'a blank note', { note: ' ' }],
  ['inspection_not_itself', 'instead of itself', { ...AGAIN, id: LOOK }],
  ['inspection_reason_iff_replaces', 'a correction without a reason', { replaces_id: LOOK }],
  ['inspection_reason_iff_replaces', 'a reason without a correction', { reason: 'read again' }],
  ['inspection_reason_given', 'a blank reason', { ...AGAIN, reason: ' ' }],
);

const CHECK_IN = of(
  'check_in',
  ['check_in_pkey', 'the same number twice', {}, { after: {} }],
  ['check_in_id_unique', 'the same id twice', { id: LOOK, sequence: 2 }, { after: { id: LOOK } }],
  ['check_in_competitor_fkey', 'of nobody', { competitor_id: randomUUID() }],
  ['check_in_sequence_range', 'before the first', { sequence: 0 }],
  ['check_in_late_is_present', 'late and not there', { is_present: false, is_late: true }],
  ['check_in_note_given', 'a blank note', { note: '' }],
);

export const INSPECTION_CASES: readonly ConstraintCase[] = [...IMPLEMENT, ...INSPECTION, ...CHECK_IN];

/** A key that holds the whole primary key, for corrections to point to: what breaks it breaks that one first. */
export const IMPLIED_BY_LOOK = ['inspection_of_one'];
