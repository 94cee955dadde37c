import { STANDARD_AIR_DENSITY } from './air.js';
import { projectileOf, type FlownEvent, type Projectile } from './projectile.js';
import { flightRefused, type FlightRefusal } from './refusal.js';
import type { Release } from './release.js';

/** Every event that may be asked about; only those of `FlownEvent` are flown through air. */
export type AskedEvent =
  | FlownEvent
  | 'javelin'
  | 'weight'
  | 'long-jump'
  | 'triple-jump'
  | 'high-jump'
  | 'pole-vault';

/** How it was thrown, as far as somebody measured or assumes it; everything in whole or half degrees and centimetres. */
export interface ThrowSetting {
  readonly event: AskedEvent;
  readonly massG: number;
  readonly diameterMm?: number;
  readonly angleDeg: number;
  readonly heightCm: number;
  /** Of a disc's plane against the ground. */
  readonly attitudeDeg?: number;
  /** Of the release point ahead (+) or behind (−) the edge that is measured from. */
  readonly reachCm?: number;
  /** Standard air where nobody knows. */
  readonly densityKgM3?: number;
}

/** The same in SI units, ready to fly. */
export interface Flyable {
  readonly event: FlownEvent;
  readonly projectile: Projectile;
  readonly release: Omit<Release, 'speedMps'>;
  readonly reachM: number;
  readonly densityKgM3: number;
}

const FLOWN: readonly string[] = ['discus', 'shot', 'hammer'] satisfies readonly FlownEvent[];

export function isFlown(event: AskedEvent): event is FlownEvent {
  return FLOWN.includes(event);
}

/** Whether a release can be one at all. Comparisons are written so that something that is no number fails. */
export function isPossibleRelease({ angleDeg, heightCm, attitudeDeg = 0 }: ThrowSetting): boolean {
  const upwards = angleDeg >= 5 && angleDeg <= 80;
  return upwards && heightCm >= 0 && heightCm <= 300 && Math.abs(attitudeDeg) < 90;
}

export function flyable(setting: ThrowSetting): Flyable | FlightRefusal {
  const { event, massG, diameterMm } = setting;
  if (!isFlown(event)) return flightRefused('NOT_MODELLED');
  const projectile = projectileOf({ event, massG, diameterMm });
  if (projectile === null) return flightRefused('IMPLEMENT_UNKNOWN');
  if (!isPossibleRelease(setting)) return flightRefused('RELEASE_OUT_OF_RANGE');
  return {
    event,
    projectile,
    release: {
      angleDeg: setting.angleDeg,
      heightM: setting.heightCm / 100,
      attitudeDeg: setting.attitudeDeg ?? setting.angleDeg,
    },
    reachM: (setting.reachCm ?? 0) / 100,
    densityKgM3: setting.densityKgM3 ?? STANDARD_AIR_DENSITY,
  };
}

export function isRefusal<T extends object>(answer: T | FlightRefusal): answer is FlightRefusal {
  return 'kind' in answer && answer.kind === 'refused';
}
