import type { AthleteRow } from '#persistence';
import type { Handedness } from '#technique';

/** With which arm somebody throws; null: not known. */
export function handOf({ handedness }: AthleteRow): Handedness | null {
  return handedness;
}
