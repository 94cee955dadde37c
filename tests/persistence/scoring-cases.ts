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
      divisions: JSON.stringify([]),
      set_by: 'director',
    },
  };
}

const OWN = { individual: ['5', '3'], relay: ['5'] };

export const SCORING_CASES: readonly ConstraintCase[] = of(
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
  ['meet_scoring_divisions_shape', 'divisions that are no list', { divisions: { name: 'women' } }],
);
