import { randomUUID } from 'node:crypto';
import { of, soundRows, type Columns, type ConstraintCase } from './constraint-cases.js';
import type { Scene } from './fixture.js';

/** A definition that is there already. */
const DEFINED = randomUUID();

/** A group that is there already. */
export const GROUP = randomUUID();
const OTHER_MEET = randomUUID();

/** A row for each table of calling groups and categories that all constraints allow. */
export function soundCallings(scene: Scene): Readonly<Record<string, Columns>> {
  return {
    calling_group: {
      organisation_id: scene.organisationId,
      id: randomUUID(),
      meet_id: scene.meetId,
      title: 'Shot, boys and veterans',
      facility: 'Circle 2',
      warm_up_minutes: 20,
      start_order: JSON.stringify(scene.competitorIds),
    },
    category_definition: {
      organisation_id: scene.organisationId,
      id: randomUUID(),
      scheme: 'Club juniors',
      valid_from: '2026-01-01',
      age_on: { kind: 'end of year' },
      bands: JSON.stringify([{ code: 'U14', minAge: null, maxAge: 13 }]),
      source: 'statutes of the club',
      defined_by: 'admin',
    },
    age_factors: {
      organisation_id: scene.organisationId,
      meet_id: scene.meetId,
      event: 'discus',
      revision: 1,
      source: 'made up',
      factors: JSON.stringify([{ sex: 'W', age: '35', factor: '1.1' }]),
      set_by: 'director',
    },
  };
}

/** What has to be there before the cases: a group, and another meet. */
export function callingScenery(scene: Scene): readonly (readonly [table: string, columns: Columns])[] {
  return [
    ['calling_group', { ...soundCallings(scene)['calling_group'], id: GROUP }],
    ['category_definition', { ...soundCallings(scene)['category_definition'], id: DEFINED }],
    ['meet', { ...soundRows(scene)['meet'], id: OTHER_MEET }],
  ];
}

const IN_GROUP = { calling_group_id: GROUP, calling_position: 1 };

export const CALLING_CASES: readonly ConstraintCase[] = [
  ...of(
    'calling_group',
    ['calling_group_pkey', 'the same id twice', { id: GROUP }],
    ['calling_group_meet_fkey', 'of no meet', { meet_id: randomUUID() }],
    ['title_length', 'without a title', { title: ' ' }],
    ['calling_group_facility_length', 'at a place without a name', { facility: '' }],
    ['calling_group_facility_length', 'at an endless place', { facility: 'x'.repeat(121) }],
    ['calling_group_warm_up_range', 'a warm-up of less than nothing', { warm_up_minutes: -1 }],
    ['calling_group_warm_up_range', 'a warm-up of half a day', { warm_up_minutes: 241 }],
    ['calling_group_start_order_shape', 'an order that is none', { start_order: JSON.stringify({}) }],
    ['calling_group_version_range', 'a version below zero', { version: -1 }],
  ),
  ...of(
    'category_definition',
    ['category_definition_pkey', 'the same id twice', { id: DEFINED }],
    ['category_definition_organisation_fkey', 'of no organisation', { organisation_id: randomUUID() }],
    ['label_length', 'without a name', { scheme: '' }],
    ['rule_set_code_known', 'under unknown rules', { rules: 'HOUSE' }],
    ['category_definition_validity_in_order', 'over before it begins', { valid_until: '2025-12-31' }],
    ['category_definition_age_on_known', 'on another day', { age_on: { kind: 'birthday' } }],
    ['category_definition_age_on_known', 'on no day', { age_on: {} }],
    ['category_definition_bands_shape', 'without a category', { bands: JSON.stringify([]) }],
    ['category_definition_bands_shape', 'a category that is no list', { bands: { code: 'U14' } }],
    ['category_definition_source_given', 'from nowhere', { source: ' ' }],
  ),
  ...of(
    'age_factors',
    ['age_factors_pkey', 'the same revision twice', {}, { after: {} }],
    ['age_factors_meet_fkey', 'of no meet', { meet_id: randomUUID() }],
    ['event_code_known', 'of another event', { event: 'marathon' }],
    ['age_factors_revision_range', 'before the first', { revision: 0 }],
    ['age_factors_source_given', 'from nowhere', { source: '' }],
    ['age_factors_shape', 'factors that are no list', { factors: JSON.stringify({}) }],
  ),
  ...of(
    'competition',
    ['label_length', 'by a scheme without a name', { category_scheme: '' }],
    ['competition_calling_group_fkey', 'in no group', { ...IN_GROUP, calling_group_id: randomUUID() }],
    ['competition_calling_group_fkey', 'in a group of another meet', { ...IN_GROUP, meet_id: OTHER_MEET }],
    ['competition_calling_position_iff_group', 'in a group without a position', { calling_group_id: GROUP }],
    ['competition_calling_position_iff_group', 'a position in no group', { calling_position: 1 }],
    ['calling_position_range', 'before the first', { ...IN_GROUP, calling_position: 0 }],
    [
      'competition_calling_position_unique',
      'two at one position',
      IN_GROUP,
      { after: { ...IN_GROUP, id: randomUUID() } },
    ],
  ),
];

/** Said by keys that no case can break without breaking the primary key first. */
export const IMPLIED = ['calling_group_of_meet'];
