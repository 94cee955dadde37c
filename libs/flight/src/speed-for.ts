import { STANDARD_GRAVITY } from './air.js';
import type { Projectile } from './projectile.js';
import type { Air, Release } from './release.js';
import { flightRange } from './trajectory.js';

/** Metres per second between which a release speed is looked for; nobody throws slower or faster. */
export const SPEED_MPS = { least: 5, most: 40 } as const;

const WITHIN_M = 1e-7;
const MOST_FLIGHTS = 60;

interface Tried {
  readonly speedMps: number;
  /** Metres beyond the range that is wanted. */
  readonly beyondM: number;
}

/**
 * Metres per second with which the implement lands at the range. The range rises with the speed, so the speed is
 * closed in from both sides (false position, Illinois variant: an end that stays twice counts half). `null` when it
 * lies outside `SPEED_MPS`.
 */
export function speedFor(
  rangeM: number,
  projectile: Projectile,
  release: Omit<Release, 'speedMps'>,
  air: Air,
  gravity = STANDARD_GRAVITY,
): number | null {
  const tried = (speedMps: number): Tried => ({
    speedMps,
    beyondM: flightRange(projectile, { ...release, speedMps }, air, gravity) - rangeM,
  });
  let slow = tried(SPEED_MPS.least);
  let fast = tried(SPEED_MPS.most);
  if (slow.beyondM > 0 || fast.beyondM < 0) return null;
  let next = slow;
  let stayed: 'slow' | 'fast' | null = null;
  for (let flights = 0; flights < MOST_FLIGHTS; flights++) {
    const slope = (fast.beyondM - slow.beyondM) / (fast.speedMps - slow.speedMps);
    next = tried(slow.speedMps - slow.beyondM / slope);
    if (Math.abs(next.beyondM) < WITHIN_M) break;
    if (next.beyondM < 0) {
      slow = next;
      if (stayed === 'fast') fast = { ...fast, beyondM: fast.beyondM / 2 };
      stayed = 'fast';
    } else {
      fast = next;
      if (stayed === 'slow') slow = { ...slow, beyondM: slow.beyondM / 2 };
      stayed = 'slow';
    }
  }
  return next.speedMps;
}
