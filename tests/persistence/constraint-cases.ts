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
    constraint: `${table}_${constraint}`,
    what,
    change: typeof change === 'function' ? change : () => change,
    ...circumstances,
  }));
}

const STRANGER = { organisation_id: randomUUID() };
const QUALIFYING = { standard: 5800, fill: 12 };

export const SETTING_UP_CASES: readonly ConstraintCase[] = [
  ...of(
    'organisation',
    ['pkey', 'the same id twice', ({ organisationId }) => ({ id: organisationId })],
    ['name_length', 'a blank name', { name: ' ' }],
    ['name_length', 'an endless name', { name: LONG }],
  ),
  ...of(
    'club',
    ['pkey', 'the same id twice', ({ clubId }) => ({ id: clubId })],
    ['name_unique', 'the same name twice', { name: 'Lindenau' }],
    ['organisation_fkey', 'of no organisation', STRANGER],
    ['name_length', 'an empty name', { name: '' }],
  ),
  ...of(
    'athlete',
    ['pkey', 'the same id twice', ({ athleteId }) => ({ id: athleteId })],
    ['organisation_fkey', 'of no organisation', { ...STRANGER, club_id: null }],
    ['club_fkey', 'of a club that is not there', { club_id: randomUUID() }],
    ['given_name_length', 'without a given name', { given_name: '' }],
    ['family_name_length', 'an endless family name', { family_name: LONG }],
    ['sex_known', 'another letter', { sex: 'F' }],
    ['display_known', 'another way to show a name', { display: 'nickname' }],
    ['birth_date_range', 'born before there was athletics', { birth_date: '1899-12-31' }],
  ),
  ...of(
    'meet',
    ['pkey', 'the same id twice', ({ meetId }) => ({ id: meetId })],
    ['organisation_fkey', 'of no organisation', STRANGER],
    ['name_length', 'a blank name', { name: '  ' }],
    ['venue_length', 'an endless venue', { venue: LONG }],
    ['dates_in_order', 'over before it begins', { ends_on: '2026-09-04' }],
    ['dates_range', 'in another age', { ends_on: '2300-01-01' }],
    ['time_zone_length', 'no time zone', { time_zone: '' }],
    ['rules_known', 'unknown rules', { rules: 'HOUSE' }],
    ['edition_length', 'no edition', { edition: '' }],
    ['minors_display_known', 'another way to show names', { minors_display: 'none' }],
  ),
  ...of(
    'competition',
    ['pkey', 'the same id twice', ({ competitionId }) => ({ id: competitionId })],
    ['meet_fkey', 'of no meet', { meet_id: randomUUID() }],
    ['title_length', 'a blank title', { title: ' ' }],
    ['event_known', 'another event', { event: 'marathon' }],
    ['rules_known', 'unknown rules', { rules: 'wa' }],
    ['edition_length', 'an endless edition', { edition: LONG }],
    ['stage_known', 'another stage', { stage: 'heat' }],
    ['qualifying_iff_qualification', 'a standard in a final', { qualifying: QUALIFYING }],
    ['qualifying_iff_qualification', 'a qualification without a standard', { stage: 'qualification' }],
    [
      'qualifying_shape',
      'a standard of nothing',
      { stage: 'qualification', qualifying: { standard: 0, fill: 12 } },
    ],
    [
      'qualifying_shape',
      'a standard in metres',
      { stage: 'qualification', qualifying: { standard: 58.5, fill: 12 } },
    ],
    [
      'qualifying_shape',
      'nothing said of filling up',
      { stage: 'qualification', qualifying: { standard: 5800 } },
    ],
    ['plan_keys', 'a key that no plan has', { plan: { laps: 3 } }],
    ['plan_rounds', 'no round', { plan: { rounds: 0 } }],
    ['plan_rounds', 'thirteen rounds', { plan: { rounds: 13 } }],
    ['plan_rounds', 'rounds as text', { plan: { rounds: '6' } }],
    ['plan_cuts', 'cuts as a number', { plan: { cuts: 3 } }],
    ['plan_cut_ties', 'another way with ties', { plan: { cutTies: 'lot' } }],
    ['plan_reorder_after', 'one round and not a list', { plan: { reorderAfter: 3 } }],
    ['plan_reorder', 'another order', { plan: { reorder: 'random' } }],
    ['unit_known', 'feet', { unit: 'ft' }],
    ['category_sex_known', 'another letter', { category_sex: 'F' }],
    ['category_age_length', 'an empty age class', { category_age: '' }],
    ['implement_range', 'an implement without mass', { implement_grams: 0 }],
    ['scoring_shape', 'a scoring that is a list', { scoring: [8, 7, 6] }],
    ['status_known', 'another status', { status: 'closed' }],
    ['counters', 'a version below zero', { version: -1 }],
    ['counters_advance', 'born with a journal', { version: 5, last_sequence: 5 }],
  ),
  ...of(
    'competitor',
    ['pkey', 'the same id twice', ({ competitorIds }) => ({ id: competitorIds[0] })],
    ['competition_fkey', 'of no competition', { competition_id: randomUUID() }],
    ['athlete_fkey', 'an athlete who is not there', { athlete_id: randomUUID() }],
    ['club_fkey', 'a club that is not there', { club_id: randomUUID() }],
    ['bib_unique', 'a bib twice', { bib: '101' }],
    ['position_unique', 'a position twice', { position: 1 }],
    ['athlete_unique', 'an athlete twice', ({ athleteId }) => ({ athlete_id: athleteId })],
    [
      'one_name',
      'two sources of the name',
      ({ athleteId }) => ({ athlete_id: athleteId, listed_name: 'Mira Tolve' }),
    ],
    ['one_club', 'two sources of the club', ({ clubId }) => ({ club_id: clubId, listed_club: 'Harbour' })],
    ['listed_name_length', 'an empty name', { listed_name: '' }],
    ['listed_club_length', 'an endless club', { listed_club: LONG }],
    ['bib_length', 'no bib', { bib: '' }],
    ['position_range', 'before the first', { position: 0 }],
    ['flight_length', 'an empty flight', { flight: '' }],
    ['implement_range', 'an implement lighter than air', { implement_grams: -1 }],
    ['written_shape', 'a card that says something else', { written: { points: 8 } }],
    ['written_shape', 'a card that is a number', { written: [1] }],
  ),
  ...of(
    'official_result',
    ['competition_fkey', 'of no competition', { competition_id: randomUUID() }],
    ['pkey', 'the same revision twice', {}, { after: {}, triggersOff: true }],
    ['in_sequence', 'the second before the first', { revision: 2 }],
    ['in_sequence', 'more of the journal than there is', { sequence: 1 }],
    ['revision_range', 'before the first', { revision: 0 }, { triggersOff: true }],
    ['sequence_range', 'less than nothing', { sequence: -1 }, { triggersOff: true }],
    ['sheet_shape', 'a sheet that is a list', { sheet: [] }],
    ['result_shape', 'a result that is text', { result: '"none"' }],
    [
      'without_names',
      'a name in the sheet',
      { sheet: { competitors: [{ bib: '101', name: 'Mira Tolve' }] } },
    ],
    ['without_names', 'a name deep in the result', { result: { a: [{ b: { name: 'Mira Tolve' } }] } }],
    ['signed_by_length', 'signed by nobody', { signed_by: '' }],
  ),
];
