import type { AthleteRow } from '#persistence';
import type { Handedness } from '#technique';

/** With which arm somebody throws; null: not known. */
export function handOf(row: AthleteRow & { readonly handedness?: Handedness | null }): Handedness | null {
  return row.handedness ?? null;
}
