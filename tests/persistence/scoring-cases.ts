import { randomUUID } from 'node:crypto';
import { of, type Columns, type ConstraintCase } from './constraint-cases.js';
import type { Scene } from './fixture.js';

/** A row for each table of team scoring that all constraints allow. */
export function soundScorings(scene: Scene): Readonly<Record<string, Columns>> {
  return {
    meet_scoring: {
      organisation_id: scene.organisationId,
      meet_id: scene.meetId,
      revision: 1,
      preset: 'dual',
      non_scorers: 'out',
      club_ties: 'places',
      divisions: JSON.stringify([]),
      set_by: 'director',
    },
    timetable: {
      organisation_id: scene.organisationId,
      meet_id: scene.meetId,
      revision: 1,
      facilities: JSON.stringify([]),
      shared_grounds: JSON.stringify([]),
      slots: JSON.stringify([]),
      set_by: 'director',
    },
    crew: {
      organisation_id: scene.organisationId,
      competition_id: scene.competitionId,
      revision: 1,
      members: JSON.stringify([]),
      set_by: 'director',
    },
    entered_result: {
      organisation_id: scene.organisationId,
      id: randomUUID(),
      meet_id: scene.meetId,
      title: '100 m women',
      is_relay: false,
      lines: JSON.stringify([{ bib: '7', place: 1 }]),
      authority: 'director',
      entered_by: 'director',
    },
  };
}

const OWN = { individual: ['5', '3'], relay: ['5'] };

/** A result that is there already. */
export const FIRST = randomUUID();
const AGAIN = { replaces_id: FIRST, reason: 'read again' };

const MEET_SCORING = of(
  'meet_scoring',
  ['meet_scoring_meet_fkey', 'of no meet', { meet_id: randomUUID() }],
  ['meet_scoring_pkey', 'the same revision twice', {}, { after: {} }],
  ['meet_scoring_revision_range', 'before the first', { revision: 0 }],
  ['meet_scoring_preset_known', 'points nobody knows', { preset: 'many' }],
  ['meet_scoring_preset_or_places', 'no points at all', { preset: null }],
  ['meet_scoring_preset_or_places', 'two kinds of points', { places: OWN }],
  ['meet_scoring_places_shape', 'none for relays', { preset: null, places: { individual: ['5'] } }],
  ['meet_scoring_places_shape', 'one for all', { preset: null, places: { ...OWN, individual: '5' } }],
  ['meet_scoring_teams_range', 'nobody against nobody', { teams: 0 }],
  ['meet_scoring_teams_range', 'too many teams', { teams: 101 }],
  ['meet_scoring_scorers_range', 'nobody scores', { scorers_per_club: 0 }],
  ['meet_scoring_relays_range', 'no relay scores', { relays_per_club: 0 }],
  ['meet_scoring_non_scorers_known', 'another way with the others', { non_scorers: 'share' }],
  ['meet_scoring_club_ties_known', 'another way with ties', { club_ties: 'lots' }],
  ['meet_scoring_divisions_shape', 'divisions that are no list', { divisions: { name: 'women' } }],
);

const TIMETABLE = of(
  'timetable',
  ['timetable_meet_fkey', 'of no meet', { meet_id: randomUUID() }],
  ['timetable_pkey', 'the same revision twice', {}, { after: {} }],
  ['timetable_revision_range', 'before the first', { revision: 0 }],
  ['timetable_facilities_shape', 'facilities that are no list', { facilities: {} }],
  ['timetable_shared_grounds_shape', 'shared grounds that are no list', { shared_grounds: {} }],
  ['timetable_slots_shape', 'slots that are no list', { slots: {} }],
  ['timetable_reason_given', 'moved for a blank reason', { reason: ' ' }],
);

const CREW = of(
  'crew',
  ['crew_competition_fkey', 'of no competition', { competition_id: randomUUID() }],
  ['crew_pkey', 'the same revision twice', {}, { after: {} }],
  ['crew_revision_range', 'before the first', { revision: 0 }],
  ['crew_members_shape', 'members that are no list', { members: {} }],
);

const ENTERED_RESULT = of(
  'entered_result',
  ['entered_result_meet_fkey', 'of no meet', { meet_id: randomUUID() }],
  ['entered_result_pkey', 'the same id twice', { id: FIRST }],
  ['entered_result_replaced_once', 'two instead of one', AGAIN, { after: AGAIN }],
  ['entered_result_replaces_fkey', 'instead of nothing', { ...AGAIN, replaces_id: randomUUID() }],
  ['entered_result_not_itself', 'instead of itself', { ...AGAIN, id: FIRST }],
  ['entered_result_reason_iff_replaces', 'a correction without a reason', { replaces_id: FIRST }],
  ['entered_result_reason_iff_replaces', 'a reason without a correction', { reason: 'read again' }],
  ['entered_result_reason_given', 'a blank reason', { ...AGAIN, reason: ' ' }],
  ['entered_result_lines_shape', 'a line that is no list', { lines: { bib: '7' } }],
  ['entered_result_without_names', 'a name', { lines: JSON.stringify([{ bib: '7', name: 'Mira Tolve' }]) }],
);

export const SCORING_CASES: readonly ConstraintCase[] = [
  ...MEET_SCORING,
  ...ENTERED_RESULT,
  ...TIMETABLE,
  ...CREW,
];
