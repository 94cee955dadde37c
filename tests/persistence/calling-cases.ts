import { randomUUID } from 'node:crypto';
import { of, soundRows, type Columns, type ConstraintCase } from './constraint-cases.js';
import type { Scene } from './fixture.js';

/** A group that is there already. */
export const GROUP = randomUUID();
const OTHER_MEET = randomUUID();

/** A row for each table of calling groups that all constraints allow. */
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
  };
}

/** What has to be there before the cases: a group, and another meet. */
export function callingScenery(scene: Scene): readonly (readonly [table: string, columns: Columns])[] {
  return [
    ['calling_group', { ...soundCallings(scene)['calling_group'], id: GROUP }],
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
    'competition',
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
