import { randomUUID } from 'node:crypto';
import { of, soundRows, type Columns, type ConstraintCase } from './constraint-cases.js';
import type { Scene } from './fixture.js';

/** A draw and a qualification that are there already. */
export const FIRST_DRAW = randomUUID();
export const FIRST_QUALIFICATION = randomUUID();
/** A competition that is no group yet. */
const OTHER_COMPETITION = randomUUID();

const ENTRIES = [{ key: '101', seedMark: null, club: null }];
const FLIGHTS = [{ label: null, bibs: ['101'] }];

/** Those of the other rows that the cases need. */
export function firstDraws(scene: Scene): readonly (readonly [string, Columns])[] {
  const sound = soundDraws(scene);
  const { organisationId: organisation_id, competitionId: competition_id } = scene;
  const group = { organisation_id, qualification_id: FIRST_QUALIFICATION, position: 1, competition_id };
  return [
    ['competition', { ...soundRows(scene)['competition'], id: OTHER_COMPETITION }],
    ['draw', { ...sound['draw'], id: FIRST_DRAW, number: 1, reason: null }],
    ['qualification', { ...sound['qualification'], id: FIRST_QUALIFICATION, final_id: competition_id }],
    ['qualification_group', group],
  ];
}

/** A row for each table of draws and qualifications that all constraints allow. */
export function soundDraws(scene: Scene): Readonly<Record<string, Columns>> {
  const { organisationId: organisation_id, competitionId: competition_id, meetId: meet_id } = scene;
  return {
    draw: {
      organisation_id,
      id: randomUUID(),
      competition_id,
      number: 2,
      procedure: 'shuffle/1',
      seed: 'Spring throws, discus',
      method: 'lot',
      clubmates_apart: false,
      entries: ENTRIES,
      flights: FLIGHTS,
      reason: 'one was missing',
      drawn_by: 'director',
    },
    draw_amendment: {
      organisation_id,
      draw_id: FIRST_DRAW,
      number: 1,
      kind: 'withdrawn',
      lines: [{ bib: '101', flight: null }],
      made_by: 'director',
    },
    qualification: { organisation_id, id: randomUUID(), meet_id, title: 'Discus women' },
    qualification_group: {
      organisation_id,
      qualification_id: FIRST_QUALIFICATION,
      position: 2,
      competition_id: OTHER_COMPETITION,
    },
  };
}

const NAMED = [{ bib: '101', name: 'Mira Tolve' }];

const DRAW = of(
  'draw',
  ['draw_pkey', 'the same id twice', { id: FIRST_DRAW }],
  ['draw_number_unique', 'the same number twice', { number: 1 }],
  ['draw_competition_fkey', 'of no competition', { competition_id: randomUUID() }],
  ['draw_qualification_fkey', 'of no qualification', { qualification_id: randomUUID() }],
  ['draw_number_range', 'before the first', { number: 0 }],
  ['draw_seed_form', 'no seed', { seed: '' }],
  ['draw_seed_form', 'an endless seed', { seed: 'x'.repeat(201) }],
  ['draw_seed_form', 'a seed that is not ASCII', { seed: 'Frühjahr' }],
  ['draw_seed_form', 'a seed over two lines', { seed: 'a\nb' }],
  ['draw_method_known', 'a method that nobody knows', { method: 'dice' }],
  ['draw_entries_shape', 'entries that are no list', { entries: { key: '101' } }],
  ['draw_flights_shape', 'flights that are no list', { flights: { bibs: ['101'] } }],
  ['draw_again_with_reason', 'a second one without a reason', { reason: null }],
  ['draw_reason_given', 'a blank reason', { reason: ' ' }],
  ['draw_without_names', 'a name among the entries', { entries: NAMED }],
  ['draw_without_names', 'a name in a flight', { flights: NAMED }],
);

const DRAW_AMENDMENT = of(
  'draw_amendment',
  ['draw_amendment_pkey', 'the same number twice', {}, { after: {} }],
  ['draw_amendment_draw_fkey', 'of no draw', { draw_id: randomUUID() }],
  ['draw_amendment_number_range', 'before the first', { number: 0 }],
  ['draw_amendment_kind_known', 'something else', { kind: 'swapped' }],
  ['draw_amendment_lines_shape', 'a line that is no list', { lines: { bib: '101' } }],
  ['draw_amendment_without_names', 'a name', { lines: NAMED }],
);

const QUALIFICATION = of(
  'qualification',
  ['qualification_pkey', 'the same id twice', { id: FIRST_QUALIFICATION }],
  ['qualification_meet_fkey', 'of no meet', { meet_id: randomUUID() }],
  ['qualification_final_fkey', 'of a final that is not there', { final_id: randomUUID() }],
  ['qualification_final_once', 'two of one final', ({ competitionId }) => ({ final_id: competitionId })],
);

const QUALIFICATION_GROUP = of(
  'qualification_group',
  ['qualification_group_pkey', 'two in one place', { position: 1 }],
  ['qualification_group_once', 'a group twice', ({ competitionId }) => ({ competition_id: competitionId })],
  ['qualification_group_qualification_fkey', 'of no qualification', { qualification_id: randomUUID() }],
  ['qualification_group_competition_fkey', 'of no competition', { competition_id: randomUUID() }],
  ['qualification_group_position_range', 'before the first', { position: 0 }],
);

export const DRAW_CASES: readonly ConstraintCase[] = [
  ...DRAW,
  ...DRAW_AMENDMENT,
  ...QUALIFICATION,
  ...QUALIFICATION_GROUP,
];
