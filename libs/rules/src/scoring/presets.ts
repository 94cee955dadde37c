import { fraction, type Fraction } from '../quantities/fraction.js';
import { citation } from '../rule-sets/citing.js';
import type { Citation } from '../rule-sets/rule-set.js';

/** The points of a match by name. A meet may have its own points instead. */
export const SCORING_PRESET_CODES = [
  'dual',
  'triangular',
  'quadrangular',
  'six-places',
  'eight-places',
  'by-teams',
] as const;
export type ScoringPresetCode = (typeof SCORING_PRESET_CODES)[number];

/** What the places of one event are worth. */
export interface PointsTable {
  /**
   * Whole points of the first place, the second, …; `one per team`: as many as there are teams in the match for the
   * first, and one fewer for each place after it.
   */
  readonly points: readonly number[] | 'one per team';
  readonly cite: Citation;
}

export interface ScoringPreset {
  readonly individual: PointsTable;
  readonly relay: PointsTable;
}

/** More teams than this in one match make no table: nobody announces one, and each place costs work. */
export const MAX_TEAMS = 100;

const DUAL = 'Common points of high-school dual meets';
const TRIANGULAR = 'Common points of high-school triangular meets';
const QUADRANGULAR = 'Common points of high-school quadrangular meets';

const SIX_PLACES: PointsTable = {
  points: [10, 8, 6, 4, 2, 1],
  cite: citation('Common points of meets that score six places', 'read'),
};
const EIGHT_PLACES: PointsTable = {
  points: [10, 8, 6, 5, 4, 3, 2, 1],
  cite: citation('Common points of invitationals and NCAA championships that score eight places', 'read'),
};
const BY_TEAMS: PointsTable = {
  points: 'one per team',
  cite: citation(
    'Guide to the European team championships of 2025',
    'read',
    'The teams in the match count, not those in the event.',
  ),
};

export const SCORING_PRESETS: Readonly<Record<ScoringPresetCode, ScoringPreset>> = {
  dual: {
    individual: { points: [5, 3, 1], cite: citation(DUAL, 'read') },
    relay: { points: [5, 0], cite: citation(DUAL, 'read') },
  },
  triangular: {
    individual: {
      points: [5, 3, 1],
      cite: citation(TRIANGULAR, 'read', 'The rule book is remembered with 5-3-2-1, not confirmed.'),
    },
    relay: { points: [5, 3], cite: citation(TRIANGULAR, 'memory', 'Not confirmed by a text.') },
  },
  quadrangular: {
    individual: {
      points: [6, 4, 3, 2, 1],
      cite: citation(QUADRANGULAR, 'memory', 'Not confirmed by a text.'),
    },
    relay: { points: [6, 4, 2], cite: citation(QUADRANGULAR, 'memory', 'Not confirmed by a text.') },
  },
  'six-places': { individual: SIX_PLACES, relay: SIX_PLACES },
  'eight-places': { individual: EIGHT_PLACES, relay: EIGHT_PLACES },
  'by-teams': { individual: BY_TEAMS, relay: BY_TEAMS },
};

/** @param teams in the match; at most `MAX_TEAMS` of them make a table `one per team`. */
export function placesOf({ points }: PointsTable, teams: number): Fraction[] {
  if (points !== 'one per team') return points.map((one) => fraction(one));
  const most = Math.min(teams, MAX_TEAMS);
  return Array.from({ length: most }, (_, index) => fraction(most - index));
}
