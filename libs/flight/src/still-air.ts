import { STANDARD_AIR_DENSITY } from './air.js';
import { HAMMER_DRAG, type Projectile } from './projectile.js';
import { flightRefused, type FlightRefusal } from './refusal.js';
import type { Release } from './release.js';
import { speedFor } from './speed-for.js';
import { flightRange } from './trajectory.js';
import { flyable, isRefusal, type Flyable, type ThrowSetting } from './throw-setting.js';

/** Stronger winds are refused. */
export const MOST_WIND_TENTHS = 50;

/** Half a metre: nothing finer is claimed, and both ends are rounded outwards to it. */
export const STILL_AIR_STEP_CM = 50;

/** What nobody measures: how the disc was tilted, and how the wind along the flight differed from the gauge's. */
const ATTITUDE_SPREAD_DEG = [-10, -7.5, -5, -2.5, 0, 2.5, 5, 7.5, 10];
const WIND_SPREAD_MPS = [-1, 0, 1];

export interface StillAirRange {
  /** `negligible`: everywhere within a quarter of a metre of the mark. */
  readonly kind: 'range' | 'negligible';
  /** Rounded outwards to `STILL_AIR_STEP_CM`. */
  readonly lowCm: number;
  readonly highCm: number;
  readonly model: string;
  readonly assumed: readonly string[];
}

/**
 * What the same throw would have measured without wind, in standard air, as a range. To learn from, never for a place,
 * a best or a score. The wind is that along the throw, in tenths of m/s, positive from behind; `null` where none was
 * measured. Cross-wind and the roll of a disc are not modelled.
 */
export function stillAirEquivalent(
  markCm: number,
  windTenths: number | null,
  setting: ThrowSetting,
): StillAirRange | FlightRefusal {
  const flown = flyable(setting);
  if (isRefusal(flown)) return flown;
  if (windTenths === null) return flightRefused('NO_WIND');
  if (!(Math.abs(windTenths) <= MOST_WIND_TENTHS)) return flightRefused('WIND_TOO_STRONG');
  const all: number[] = [];
  for (const [projectile, release] of variantsOf(flown)) {
    for (const spread of WIND_SPREAD_MPS) {
      const cm = equivalentCm(markCm, windTenths / 10 + spread, { ...flown, projectile, release });
      if (cm === null) return flightRefused('SPEED_OUT_OF_RANGE');
      all.push(cm);
    }
  }
  return rangeOf(markCm, all, flown);
}

/** One still-air equivalent in metres, everything taken as given: the middle of the range that is shown. */
export function stillAirMetres(
  markM: number,
  windMps: number,
  projectile: Projectile,
  release: Omit<Release, 'speedMps'>,
  densityKgM3 = STANDARD_AIR_DENSITY,
): number | null {
  const speedMps = speedFor(markM, projectile, release, { densityKgM3, windMps });
  if (speedMps === null) return null;
  return flightRange(projectile, { ...release, speedMps }, { densityKgM3: STANDARD_AIR_DENSITY, windMps: 0 });
}

function equivalentCm(markCm: number, windMps: number, flown: Flyable): number | null {
  const { projectile, release, reachM, densityKgM3 } = flown;
  const metres = stillAirMetres(markCm / 100 - reachM, windMps, projectile, release, densityKgM3);
  return metres === null ? null : (metres + reachM) * 100;
}

/** The same throw as often as something that nobody measured may differ. */
function variantsOf({ event, projectile, release }: Flyable): readonly [Projectile, Flyable['release']][] {
  if (projectile.shape === 'disc') {
    const attitude = release.attitudeDeg ?? release.angleDeg;
    return ATTITUDE_SPREAD_DEG.map((by) => [projectile, { ...release, attitudeDeg: attitude + by }]);
  }
  const drags = event === 'hammer' ? Object.values(HAMMER_DRAG) : [projectile.drag];
  return drags.map((drag) => [{ ...projectile, drag }, release]);
}

function rangeOf(markCm: number, all: readonly number[], { event, projectile }: Flyable): StillAirRange {
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const near = STILL_AIR_STEP_CM / 2;
  const negligible = Math.abs(low - markCm) < near && Math.abs(high - markCm) < near;
  const disc = projectile.shape === 'disc';
  return {
    kind: negligible ? 'negligible' : 'range',
    lowCm: Math.floor(low / STILL_AIR_STEP_CM) * STILL_AIR_STEP_CM,
    highCm: Math.ceil(high / STILL_AIR_STEP_CM) * STILL_AIR_STEP_CM,
    model: disc ? projectile.table.name : 'ball',
    assumed: [
      'the wind along the whole flight within 1 m/s of the gauge',
      ...(disc ? ['the disc tilted within 10° of what was given, without roll'] : []),
      ...(event === 'hammer' ? ['wire and grip add 0–90 % to the drag of the ball'] : []),
    ],
  };
}
