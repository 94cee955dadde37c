import { randomUUID } from 'node:crypto';
import { soundAccess } from './access-cases.js';
import { of, type Columns, type ConstraintCase } from './constraint-cases.js';
import type { Scene } from './fixture.js';

/** A coach, and one row of each table that is there already. */
const COACH = randomUUID();
const SESSION = randomUUID();
const THROW = randomUUID();
const SEEN = randomUUID();
const ENTRY = randomUUID();
const CHANGE = randomUUID();

const HASH = 'ef'.repeat(32);

/** A row for each table of the notebook that all constraints allow. */
export function soundNotebook(scene: Scene): Readonly<Record<string, Columns>> {
  const { organisationId: organisation_id, athleteId: athlete_id } = scene;
  const id = randomUUID();
  const thrown = randomUUID();
  return {
    practice_session: { organisation_id, id, on_date: '2026-04-14', place: 'Mill Field', kept_by: COACH },
    practice_throw: {
      ...{ organisation_id, id: thrown, throw_id: thrown, session_id: SESSION, athlete_id, event: 'discus' },
      ...{ variant: 'full-turn', implement_grams: 1000, round: 1, outcome: 'valid', mark: 3412 },
      ...{ is_measured: true, effort_percent: 95, voided_on_purpose: false, styles: ['reverse'] },
      ...{ release: { speedCmS: 2050 }, is_annulled: false, logged_by: COACH, fingerprint: HASH },
    },
    observation: {
      ...{ organisation_id, id, athlete_id, event: 'discus', practice_throw_id: THROW, observer_id: COACH },
      ...{ observed_at: '2026-04-14T16:00:00Z', method: 'live', mark_known: false, view: 'side' },
      ...{ checklist: 'three for today', checklist_version: 1, scope: ['DT-04', 'DT-X01'] },
      marks: [{ code: 'DT-04', severity: 2, sure: true, causedBy: null }],
      ...{ edition: '1', is_withdrawn: false, fingerprint: HASH },
    },
    notebook_entry: {
      ...{ organisation_id, id, athlete_id, kind: 'focus', made_by: COACH, fingerprint: HASH },
      body: FOCUS,
    },
    fault_change: {
      ...{ organisation_id, sequence: 2, id, made_by: COACH, fingerprint: HASH },
      body: { kind: 'hide', code: 'DT-02' },
    },
  };
}

const FOCUS = { kind: 'focus', event: 'discus', code: 'DT-14', how: 'drill', from: '2026-04-14', to: null };

/** What has to be there before the cases. */
export function notebookScenery(scene: Scene): readonly (readonly [table: string, columns: Columns])[] {
  const sound = soundNotebook(scene);
  return [
    ['person', { ...soundAccess(scene)['person'], id: COACH, login_name: 'coach.of.throws' }],
    ['practice_session', { ...sound['practice_session'], id: SESSION }],
    ['practice_throw', { ...sound['practice_throw'], id: THROW, throw_id: THROW }],
    ['observation', { ...sound['observation'], id: SEEN }],
    ['notebook_entry', { ...sound['notebook_entry'], id: ENTRY }],
    ['fault_change', { ...sound['fault_change'], id: CHANGE, sequence: 1 }],
  ];
}

const NOBODY = randomUUID();
const THROWN_AGAIN = { throw_id: THROW, replaces_id: THROW, reason: 'written on the wrong line' };
const SEEN_AGAIN = { replaces_id: SEEN, reason: 'seen again on video' };
const IN_A_MEET = { practice_throw_id: null, competitor_id: NOBODY, round: 2 };
const mark = (change: object): Columns => ({ marks: [{ code: 'DT-04', severity: 2, ...change }] });
const entry = (body: Readonly<Record<string, unknown>>): Columns => ({ kind: body['kind'], body });
const change = (body: object): Columns => ({ body });

const THROWS: readonly ConstraintCase[] = [
  ...of(
    'practice_session',
    ['practice_session_pkey', 'the same id twice', { id: SESSION }],
    ['practice_session_kept_by_fkey', 'kept by nobody', { kept_by: NOBODY }],
    ['practice_session_date_range', 'before there was athletics', { on_date: '1899-12-31' }],
  ),
  ...of(
    'practice_throw',
    ['practice_throw_pkey', 'the same id twice', { id: THROW, throw_id: THROW }],
    ['practice_throw_session_fkey', 'at no session', { session_id: NOBODY }],
    ['practice_throw_athlete_fkey', 'of nobody', { athlete_id: NOBODY }],
    ['practice_throw_first_fkey', 'of no throw', { ...THROWN_AGAIN, throw_id: NOBODY }],
    ['practice_throw_replaces_fkey', 'instead of nothing', { ...THROWN_AGAIN, replaces_id: NOBODY }],
    ['practice_throw_replaced_once', 'two instead of one', THROWN_AGAIN, { after: THROWN_AGAIN }],
    ['practice_throw_logged_by_fkey', 'logged by nobody', { logged_by: NOBODY }],
    ['practice_throw_first_is_itself', 'a first row under another id', { throw_id: THROW }],
    [
      'practice_throw_reason_iff_replaces',
      'a correction without a reason',
      { ...THROWN_AGAIN, reason: null },
    ],
    ['practice_throw_taken_back', 'nothing that is struck', { is_annulled: true }],
    ['practice_throw_round_range', 'before the first', { round: 0 }],
    [
      'practice_throw_outcome_known',
      'a pass, which is no throw',
      { outcome: 'pass', mark: null, is_measured: false },
    ],
    ['practice_throw_mark_of_valid', 'a mark for a foul', { outcome: 'foul' }],
    ['practice_throw_mark_range', 'no mark', { mark: 0 }],
    ['practice_throw_measured_mark', 'nothing, measured', { mark: null }],
    ['practice_throw_effort_range', 'more than all', { effort_percent: 101 }],
    ['practice_throw_voided_is_foul', 'a good throw voided', { voided_on_purpose: true }],
    [
      'practice_throw_foul_form',
      'a reason in words',
      { outcome: 'foul', mark: null, is_measured: false, foul: 'stepped out' },
    ],
    ['practice_throw_foul_form', 'a reason without a foul', { foul: 'CIRCLE' }],
    ['practice_throw_wind_range', 'a storm', { wind: 1000 }],
    ['variant_form', 'a variant in capitals', { variant: 'FULL' }],
    ['code_list_shape', 'styles that are no list', { styles: { reverse: true } }],
    ['code_list_shape', 'a style that is a number', { styles: [1] }],
    ['release_data_keys', 'something else than a release', { release: { pulse: 150 } }],
    ['release_data_numbers', 'a speed in words', { release: { speedCmS: 'fast' } }],
  ),
];

const OBSERVATIONS: readonly ConstraintCase[] = of(
  'observation',
  ['observation_pkey', 'the same id twice', { id: SEEN }],
  ['observation_athlete_fkey', 'of nobody', { athlete_id: NOBODY }],
  ['observation_practice_throw_fkey', 'of no throw', { practice_throw_id: NOBODY }],
  ['observation_competition_fkey', 'in no competition', { ...IN_A_MEET, competition_id: NOBODY }],
  ['observation_observer_fkey', 'by nobody', { observer_id: NOBODY }],
  ['observation_replaces_fkey', 'instead of nothing', { ...SEEN_AGAIN, replaces_id: NOBODY }],
  ['observation_replaced_once', 'two instead of one', SEEN_AGAIN, { after: SEEN_AGAIN }],
  ['observation_of_one_throw', 'of nothing', { practice_throw_id: null }],
  ['observation_of_one_throw', 'of a trial of no competition', IN_A_MEET],
  ['observation_of_one_throw', 'of two throws', { round: 1 }],
  [
    'observation_round_range',
    'in the round before the first',
    ({ competitionId }) => ({ ...IN_A_MEET, competition_id: competitionId, round: 0 }),
  ],
  ['observation_method_known', 'by hearsay', { method: 'told' }],
  ['observation_view_known', 'from below', { view: 'below' }],
  ['observation_checklist_scoped', 'a checklist without a version', { checklist_version: null }],
  ['observation_checklist_scoped', 'a checklist without codes', { scope: null }],
  ['observation_checklist_version_range', 'before the first version', { checklist_version: 0 }],
  ['observation_reason_iff_replaces', 'a reason without a correction', { reason: 'why not' }],
  ['observation_taken_back', 'nothing that is withdrawn', { is_withdrawn: true }],
  ['fault_marks_shape', 'marks that are no list', { marks: { code: 'DT-04', severity: 1 } }],
  ['fault_marks_coded', 'a fault in words', mark({ code: 'foot late' })],
  ['fault_marks_coded', 'a fault that is a number', mark({ code: 4 })],
  ['fault_marks_severity', 'worse than the worst', mark({ severity: 4 })],
  ['fault_marks_severity', 'a severity in words', mark({ severity: 'bad' })],
);

const ENTRIES: readonly ConstraintCase[] = [
  ...of(
    'notebook_entry',
    ['notebook_entry_pkey', 'the same id twice', { id: ENTRY }],
    ['notebook_entry_athlete_fkey', 'of nobody', { athlete_id: NOBODY }],
    ['notebook_entry_replaces_fkey', 'instead of nothing', { replaces_id: NOBODY }],
    [
      'notebook_entry_replaced_once',
      'two instead of one',
      { replaces_id: ENTRY },
      { after: { replaces_id: ENTRY } },
    ],
    ['notebook_entry_made_by_fkey', 'by nobody', { made_by: NOBODY }],
    ['notebook_entry_not_itself', 'instead of itself', { id: ENTRY, replaces_id: ENTRY }],
    ['notebook_entry_body_of_kind', 'a body of another kind', { kind: 'stage' }],
    ['notebook_body_kind_known', 'a diagnosis', entry({ kind: 'diagnosis' })],
    [
      'notebook_body_checklist_listed',
      'a checklist without codes',
      entry({ kind: 'checklist', event: 'discus', name: 'three' }),
    ],
    [
      'notebook_body_stage_known',
      'a stage of no name',
      entry({ kind: 'stage', event: 'discus', stage: 'gifted' }),
    ],
    [
      'notebook_body_focus_dated',
      'a focus that ends before it begins',
      entry({ ...FOCUS, to: '2026-04-13' }),
    ],
    ['notebook_body_video_addressed', 'a film nowhere', entry({ kind: 'video', address: ' ', instants: [] })],
    [
      'notebook_body_release_known',
      'everything shown',
      entry({ kind: 'release', what: 'all', isOpen: true }),
    ],
    [
      'notebook_body_consent_known',
      'a coach who consents',
      entry({ kind: 'consent', purpose: 'video', by: 'coach', isGiven: true }),
    ],
  ),
  ...of(
    'fault_change',
    ['fault_change_pkey', 'the same number twice', { sequence: 1 }],
    ['fault_change_id_unique', 'the same id twice', { id: CHANGE }],
    ['fault_change_made_by_fkey', 'by nobody', { made_by: NOBODY }],
    ['fault_change_sequence_range', 'before the first', { sequence: 0 }],
    ['fault_change_body_kind_known', 'a fault that is deleted', change({ kind: 'delete', code: 'DT-02' })],
    ['fault_change_body_code_named', 'hiding nothing', change({ kind: 'hide' })],
    ['fault_change_body_drafted', 'a definition of nothing', change({ kind: 'define', drafts: [] })],
  ),
];

export const NOTEBOOK_CASES: readonly ConstraintCase[] = [...THROWS, ...OBSERVATIONS, ...ENTRIES];
