import { createHash, randomUUID } from 'node:crypto';
import { of, type Columns, type ConstraintCase } from './constraint-cases.js';
import type { Scene } from './fixture.js';

/** What is there already. */
const KNOWN = { change: randomUUID(), table: randomUUID(), past: randomUUID() };

/** A row for each table of entries and of what came in as a table that all constraints allow. */
export function soundEntries(scene: Scene): Readonly<Record<string, Columns>> {
  const { organisationId: organisation_id, meetId: meet_id, athleteId: athlete_id } = scene;
  return {
    entry_terms: {
      ...{ organisation_id, meet_id, revision: 1, closes_at: '2026-05-01T18:00:00Z', most_per_club: 3 },
      ...{ most_per_athlete: 2, competition_limits: '[]', set_by: 'director' },
    },
    entry_change: {
      ...{ organisation_id, id: randomUUID(), competition_id: scene.competitionId },
      ...{ competitor_id: scene.competitorIds[0], kind: 'entered', bib: '101', athlete_id },
      ...{ club_id: scene.clubId, is_late: false, made_by: 'director' },
    },
    table_import: {
      ...{ organisation_id, id: randomUUID(), holds: 'entries', meet_id, made_by: 'director' },
      ...{ fingerprint: createHash('sha256').update('a table').digest('hex'), counts: { lines: 2 } },
    },
    past_result: {
      ...{ organisation_id, id: randomUUID(), athlete_id, event: 'discus', unit: 'cm', mark: 4410 },
      ...{ indoor: false, implement_grams: 1000, on_date: '2019-06-08', meet_name: 'Mill Field Evening' },
      ...{ place: 2, source: 'results list of the club', counts: true, entered_by: 'director' },
    },
  };
}

/** The rows that the cases lean on, in the order of storing. */
export function entriesBefore(scene: Scene): readonly (readonly [table: string, columns: Columns])[] {
  const sound = soundEntries(scene);
  return [
    ['entry_terms', { ...sound['entry_terms'], revision: 7 }],
    ['entry_change', { ...sound['entry_change'], id: KNOWN.change }],
    ['table_import', { ...sound['table_import'], id: KNOWN.table }],
    ['past_result', { ...sound['past_result'], id: KNOWN.past }],
  ];
}

const JUMP = { event: 'long-jump', implement_grams: null };
const BACK = { replaces_id: KNOWN.past, reason: 'of somebody else', counts: false };
const LINE = { import_id: KNOWN.table, import_line: 2 };

export const ENTRY_CASES: readonly ConstraintCase[] = [
  ...of(
    'entry_terms',
    ['entry_terms_pkey', 'the same revision twice', { revision: 7 }],
    ['entry_terms_meet_fkey', 'of no meet', { meet_id: randomUUID() }],
    ['entry_terms_revision_range', 'before the first', { revision: 0 }],
    ['entry_terms_per_club_range', 'nobody of a club', { most_per_club: 0 }],
    ['entry_terms_per_athlete_range', 'nothing for an athlete', { most_per_athlete: 0 }],
    ['entry_terms_limits_shape', 'limits that are no list', { competition_limits: { a: 1 } }],
  ),
  ...of(
    'entry_change',
    ['entry_change_pkey', 'the same id twice', { id: KNOWN.change }],
    ['entry_change_competition_fkey', 'in no competition', { competition_id: randomUUID() }],
    ['entry_change_athlete_fkey', 'of no athlete', { athlete_id: randomUUID() }],
    ['entry_change_club_fkey', 'for no club', { club_id: randomUUID() }],
    ['entry_change_kind_known', 'another word', { kind: 'moved' }],
    ['entry_change_late_has_reason', 'late without a reason', { is_late: true }],
    ['entry_change_reason_given', 'a blank reason', { reason: ' ' }],
  ),
  ...of(
    'table_import',
    ['table_import_pkey', 'the same id twice', { id: KNOWN.table }],
    ['table_import_meet_fkey', 'at no meet', { meet_id: randomUUID() }],
    ['table_import_holds_known', 'another word', { holds: 'songs', meet_id: null }],
    ['table_import_meet_iff_entries', 'entries at no meet', { meet_id: null }],
    ['table_import_counts_shape', 'counts that are a list', { counts: '[]' }],
  ),
  ...of(
    'past_result',
    ['past_result_pkey', 'the same id twice', { id: KNOWN.past }],
    ['past_result_athlete_fkey', 'of no athlete', { athlete_id: randomUUID() }],
    ['past_result_import_fkey', 'from no table', { ...LINE, import_id: randomUUID() }],
    ['past_result_replaces_fkey', 'instead of nothing', { ...BACK, replaces_id: randomUUID() }],
    ['past_result_replaced_once', 'taken back twice', BACK, { after: BACK }],
    ['past_result_imported_once', 'one line of a table twice', LINE, { after: LINE }],
    ['past_result_mark_range', 'nothing thrown', { mark: 0 }],
    ['past_result_wind_form', 'a wind without a sign', { ...JUMP, wind: '1.3' }],
    ['past_result_wind_of_event', 'a wind under a roof', { ...JUMP, indoor: true, wind: '+1.3' }],
    ['past_result_implement_iff_thrown', 'a discus without its mass', { implement_grams: null }],
    ['past_result_date_range', 'before there was athletics', { on_date: '1899-12-31' }],
    ['past_result_place_range', 'before the winner', { place: 0 }],
    ['past_result_not_itself', 'instead of itself', { ...BACK, id: KNOWN.past }],
    ['past_result_taken_back', 'nothing that is taken back', { counts: false }],
    ['past_result_reason_iff_replaces', 'a reason for nothing', { reason: 'read again' }],
    ['past_result_reason_given', 'a blank reason', { ...BACK, reason: ' ' }],
    ['past_result_line_iff_imported', 'a line of no table', { import_line: 2 }],
    ['past_result_line_range', 'a line before the first', { ...LINE, import_line: 0 }],
  ),
];
