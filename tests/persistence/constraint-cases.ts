import { createHash, randomUUID } from 'node:crypto';
import type { Scene } from './fixture.js';

export type Columns = Readonly<Record<string, unknown>>;

/** One row that its table must not take, and the constraint that says so. */
export interface ConstraintCase {
  readonly table: string;
  readonly constraint: string;
  readonly what: string;
  /** What makes the sound row of that table wrong. */
  readonly change: (scene: Scene) => Columns;
  /** A row of the same table that is stored before. */
  readonly after?: Columns;
  /** A trigger says it first; the constraint has to say it too when triggers are off (a restore, a repair). */
  readonly triggersOff?: true;
}

/** A row for each table that all constraints allow, beside what the scene has already. */
export function soundRows(scene: Scene): Readonly<Record<string, Columns>> {
  const { organisationId: organisation_id, competitionId: competition_id } = scene;
  const id = randomUUID();
  return {
    organisation: { id, name: 'Harbour School' },
    club: { organisation_id, id, name: 'Harbour' },
    athlete: {
      organisation_id,
      id,
      given_name: 'Ole',
      family_name: 'Brandis',
      sex: 'M',
      club_id: scene.clubId,
    },
    meet: {
      organisation_id,
      id,
      name: 'Autumn throws',
      venue: 'Mill Field',
      starts_on: '2026-09-05',
      ends_on: '2026-09-05',
      time_zone: 'Europe/Berlin',
      rules: 'WA',
      edition: '2024-01',
    },
    competition: {
      organisation_id,
      id,
      meet_id: scene.meetId,
      title: 'Shot men',
      event: 'shot',
      rules: 'WA',
      edition: '2024-01',
      unit: 'cm',
    },
    competitor: { organisation_id, id, competition_id, bib: '103', position: 3 },
    journal_entry: {
      organisation_id,
      competition_id,
      sequence: 1,
      entry_id: id,
      kind: 'attempt',
      body: { kind: 'attempt', competitor: scene.competitorIds[0], round: 1, outcome: 'pass', mark: null },
      standing: 'accepted',
      verdict: { standing: 'accepted', notices: [] },
      authority: 'official',
      actor: 'official',
      fingerprint: createHash('sha256').update(id).digest('hex'),
    },
    official_result: {
      organisation_id,
      competition_id,
      revision: 1,
      sequence: 0,
      sheet: { format: 'sectorline-sheet/1', competitors: [{ bib: '101' }] },
      result: { format: 'sectorline-result/1', results: [] },
      signed_by: 'referee',
    },
  };
}

const LONG = 'x'.repeat(201);

type Short = [
  constraint: string,
  what: string,
  change: Columns | ((scene: Scene) => Columns),
  circumstances?: Pick<ConstraintCase, 'after' | 'triggersOff'>,
];

export function of(table: string, ...cases: Short[]): ConstraintCase[] {
  return cases.map(([constraint, what, change, circumstances]) => ({
    table,
    constraint,
    what,
    change: typeof change === 'function' ? change : () => change,
    ...circumstances,
  }));
}

const STRANGER = { organisation_id: randomUUID() };
const QUALIFYING = { standard: 5800, fill: 12 };
const TERMS = { heights: [160, 165, 170], combined: false, passGivesUp: 'height', tieForFirst: 'jump-off' };

/** A high jump whose terms are right but for the changes; `undefined` leaves a key out. */
const highJump = (changes: Columns): Columns => ({ event: 'high-jump', vertical: { ...TERMS, ...changes } });

export const SETTING_UP_CASES: readonly ConstraintCase[] = [
  ...of(
    'organisation',
    ['organisation_pkey', 'the same id twice', ({ organisationId }) => ({ id: organisationId })],
    ['title_length', 'a blank name', { name: ' ' }],
    ['title_length', 'an endless name', { name: LONG }],
  ),
  ...of(
    'club',
    ['club_pkey', 'the same id twice', ({ clubId }) => ({ id: clubId })],
    ['club_name_unique', 'the same name twice', { name: 'Lindenau' }],
    ['club_organisation_fkey', 'of no organisation', STRANGER],
    ['title_length', 'an empty name', { name: '' }],
  ),
  ...of(
    'athlete',
    ['athlete_pkey', 'the same id twice', ({ athleteId }) => ({ id: athleteId })],
    ['athlete_organisation_fkey', 'of no organisation', { ...STRANGER, club_id: null }],
    ['athlete_club_fkey', 'of a club that is not there', { club_id: randomUUID() }],
    ['person_name_length', 'without a given name', { given_name: '' }],
    ['person_name_length', 'an endless family name', { family_name: LONG }],
    ['sex_known', 'another letter', { sex: 'F' }],
    ['name_display_known', 'another way to show a name', { display: 'nickname' }],
    ['athlete_handedness_known', 'with both hands', { handedness: 'both' }],
    [
      'athlete_erased_is_nobody',
      'somebody erased whose birthday is known',
      { erased_at: '2026-06-01T10:00:00Z', birth_date: '2009-03-29', handedness: null, display: 'bib' },
    ],
    ['athlete_birth_date_range', 'born before there was athletics', { birth_date: '1899-12-31' }],
  ),
  ...of(
    'meet',
    ['meet_pkey', 'the same id twice', ({ meetId }) => ({ id: meetId })],
    ['meet_organisation_fkey', 'of no organisation', STRANGER],
    ['title_length', 'a blank name', { name: '  ' }],
    ['meet_venue_length', 'an endless venue', { venue: LONG }],
    ['meet_dates_in_order', 'over before it begins', { ends_on: '2026-09-04' }],
    ['meet_dates_range', 'in another age', { ends_on: '2300-01-01' }],
    ['label_length', 'no time zone', { time_zone: '' }],
    ['rule_set_code_known', 'unknown rules', { rules: 'HOUSE' }],
    ['label_length', 'no edition', { edition: '' }],
    ['name_display_known', 'another way to show names', { minors_display: 'none' }],
  ),
  ...of(
    'competition',
    ['competition_pkey', 'the same id twice', ({ competitionId }) => ({ id: competitionId })],
    ['competition_meet_fkey', 'of no meet', { meet_id: randomUUID() }],
    ['title_length', 'a blank title', { title: ' ' }],
    ['event_code_known', 'another event', { event: 'marathon' }],
    ['rule_set_code_known', 'unknown rules', { rules: 'wa' }],
    ['label_length', 'an endless edition', { edition: LONG }],
    ['stage_known', 'another stage', { stage: 'heat' }],
    ['competition_qualifying_iff_qualification', 'a standard in a final', { qualifying: QUALIFYING }],
    [
      'competition_qualifying_iff_qualification',
      'a qualification without a standard',
      { stage: 'qualification' },
    ],
    [
      'qualifying_standard_range',
      'a standard of nothing',
      { stage: 'qualification', qualifying: { standard: 0, fill: 12 } },
    ],
    [
      'qualifying_standard_range',
      'a standard in metres',
      { stage: 'qualification', qualifying: { standard: 58.5, fill: 12 } },
    ],
    [
      'qualifying_fill_range',
      'nothing said of filling up',
      { stage: 'qualification', qualifying: { standard: 5800 } },
    ],
    ['plan_overrides_keys', 'a key that no plan has', { plan: { laps: 3 } }],
    ['plan_overrides_rounds', 'no round', { plan: { rounds: 0 } }],
    ['plan_overrides_rounds', 'thirteen rounds', { plan: { rounds: 13 } }],
    ['plan_overrides_rounds', 'rounds as text', { plan: { rounds: '6' } }],
    ['plan_overrides_cuts', 'cuts as a number', { plan: { cuts: 3 } }],
    ['plan_overrides_cut_ties', 'another way with ties', { plan: { cutTies: 'lot' } }],
    ['plan_overrides_reorder_after', 'one round and not a list', { plan: { reorderAfter: 3 } }],
    ['plan_overrides_reorder', 'another order', { plan: { reorder: 'random' } }],
    ['competition_vertical_iff_bar', 'heights in a shot put', { vertical: TERMS }],
    ['competition_vertical_iff_bar', 'a pole vault without heights', { event: 'pole-vault' }],
    ['competition_plan_without_bar', 'a high jump in rounds', { ...highJump({}), plan: { rounds: 4 } }],
    ['vertical_terms_combined_known', 'terms that are a list', { event: 'high-jump', vertical: [160, 165] }],
    ['vertical_terms_keys', 'a key that no terms have', highJump({ step: 3 })],
    ['vertical_terms_heights_range', 'terms without heights', highJump({ heights: undefined })],
    ['vertical_terms_heights_range', 'no height at all', highJump({ heights: [] })],
    ['vertical_terms_heights_range', 'one height and not a list', highJump({ heights: 160 })],
    ['vertical_terms_heights_range', 'a bar on the ground', highJump({ heights: [0, 160] })],
    ['vertical_terms_heights_range', 'heights in metres', highJump({ heights: [1.6, 1.65] })],
    ['vertical_terms_heights_range', 'heights as text', highJump({ heights: ['160', '165'] })],
    ['vertical_terms_heights_rising', 'the same height twice', highJump({ heights: [160, 165, 165] })],
    ['vertical_terms_heights_rising', 'a bar that falls', highJump({ heights: [160, 170, 165, 175] })],
    ['vertical_terms_combined_known', 'nothing said of combined events', highJump({ combined: null })],
    ['vertical_terms_pass_known', 'another kind of pass', highJump({ passGivesUp: 'turn' })],
    ['vertical_terms_tie_known', 'a tie drawn by lot', highJump({ tieForFirst: 'lot' })],
    ['mark_unit_known', 'feet', { unit: 'ft' }],
    ['sex_known', 'another letter', { category_sex: 'F' }],
    ['label_length', 'an empty age class', { category_age: '' }],
    ['implement_grams_range', 'an implement without mass', { implement_grams: 0 }],
    ['scoring_shape', 'a scoring that is a list', { scoring: [8, 7, 6] }],
    ['competition_status_known', 'another status', { status: 'closed' }],
    [
      'competition_withheld_until_something',
      'let go at a moment though nothing is withheld',
      { withheld_until: '2026-06-01T10:00:00Z' },
    ],
    ['competition_counters', 'a version below zero', { version: -1 }],
    ['competition_counters_advance', 'born with a journal', { version: 5, last_sequence: 5 }],
  ),
  ...of(
    'competitor',
    ['competitor_pkey', 'the same id twice', ({ competitorIds }) => ({ id: competitorIds[0] })],
    ['competitor_competition_fkey', 'of no competition', { competition_id: randomUUID() }],
    ['competitor_athlete_fkey', 'an athlete who is not there', { athlete_id: randomUUID() }],
    ['competitor_club_fkey', 'a club that is not there', { club_id: randomUUID() }],
    ['competitor_bib_unique', 'a bib twice', { bib: '101' }],
    ['competitor_position_unique', 'a position twice', { position: 1 }],
    ['competitor_athlete_unique', 'an athlete twice', ({ athleteId }) => ({ athlete_id: athleteId })],
    [
      'competitor_one_name',
      'two sources of the name',
      ({ athleteId }) => ({ athlete_id: athleteId, listed_name: 'Mira Tolve' }),
    ],
    [
      'competitor_one_club',
      'two sources of the club',
      ({ clubId }) => ({ club_id: clubId, listed_club: 'Harbour' }),
    ],
    ['competitor_listed_name_length', 'an empty name', { listed_name: '' }],
    ['competitor_listed_club_length', 'an endless club', { listed_club: LONG }],
    ['label_length', 'no bib', { bib: '' }],
    ['competitor_position_range', 'before the first', { position: 0 }],
    ['competitor_seed_mark_range', 'entered with less than nothing', { seed_mark: 0 }],
    [
      'competitor_unmatched_is_nobody',
      'an athlete of whom nobody knows who it is',
      ({ athleteId }) => ({ athlete_id: athleteId, is_unmatched: true }),
    ],
    ['label_length', 'an empty flight', { flight: '' }],
    ['implement_grams_range', 'an implement lighter than air', { implement_grams: -1 }],
    ['competitor_written_shape', 'a card that says something else', { written: { points: 8 } }],
    ['competitor_written_shape', 'a card that is a number', { written: [1] }],
  ),
  ...of(
    'official_result',
    ['official_result_competition_fkey', 'of no competition', { competition_id: randomUUID() }],
    ['official_result_pkey', 'the same revision twice', {}, { after: {}, triggersOff: true }],
    ['official_result_in_sequence', 'the second before the first', { revision: 2 }],
    ['official_result_in_sequence', 'more of the journal than there is', { sequence: 1 }],
    ['official_result_revision_range', 'before the first', { revision: 0 }, { triggersOff: true }],
    ['official_result_sequence_range', 'less than nothing', { sequence: -1 }, { triggersOff: true }],
    ['official_result_sheet_shape', 'a sheet that is a list', { sheet: [] }],
    ['official_result_result_shape', 'a result that is text', { result: '"none"' }],
    [
      'official_result_without_names',
      'a name in the sheet',
      { sheet: { competitors: [{ bib: '101', name: 'Mira Tolve' }] } },
    ],
    [
      'official_result_without_names',
      'a name deep in the result',
      { result: { a: [{ b: { name: 'Mira Tolve' } }] } },
    ],
    ['signature_length', 'signed by nobody', { signed_by: '' }],
  ),
];
