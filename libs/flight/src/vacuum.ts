import { STANDARD_GRAVITY } from './air.js';
import { degrees, radians, type Release } from './release.js';

/**
 * Metres from the release point to the landing without air:
 * R = (v cos θ / g)(v sin θ + √(v² sin² θ + 2 g h)).
 */
export function vacuumRange(release: Release, gravity = STANDARD_GRAVITY): number {
  const forward = release.speedMps * Math.cos(radians(release.angleDeg));
  const upward = release.speedMps * Math.sin(radians(release.angleDeg));
  return (forward / gravity) * (upward + Math.sqrt(upward ** 2 + 2 * gravity * release.heightM));
}

export interface Optimum {
  readonly angleDeg: number;
  readonly rangeM: number;
}

/** The angle that carries furthest at one speed, without air: θ* = atan(v / √(v² + 2 g h)). */
export function vacuumOptimum(speedMps: number, heightM: number, gravity = STANDARD_GRAVITY): Optimum {
  const landingSpeed = Math.sqrt(speedMps ** 2 + 2 * gravity * heightM);
  return {
    angleDeg: degrees(Math.atan(speedMps / landingSpeed)),
    rangeM: (speedMps * landingSpeed) / gravity,
  };
}

/**
 * Metres per second for a range without air, from y(R) = 0. `null` when no speed reaches it: the line of release
 * points below the landing.
 */
export function vacuumSpeedFor(
  rangeM: number,
  { angleDeg, heightM }: Omit<Release, 'speedMps'>,
  gravity = STANDARD_GRAVITY,
): number | null {
  const angle = radians(angleDeg);
  const drop = heightM + rangeM * Math.tan(angle);
  return drop <= 0 ? null : Math.sqrt((gravity * rangeM ** 2) / (2 * Math.cos(angle) ** 2 * drop));
}
