import { flightRefused, type FlightRefusal } from './refusal.js';
import type { Release } from './release.js';
import { SPEED_MPS } from './speed-for.js';
import { flightRange } from './trajectory.js';
import { flyable, isRefusal, type ThrowSetting } from './throw-setting.js';

/** Metres that one more of something is worth around one release, everything else the same. */
export interface TradeOff {
  readonly kind: 'trade-off';
  /** The mark of the release itself. */
  readonly rangeM: number;
  readonly perMetrePerSecondM: number;
  readonly perDegreeM: number;
  readonly perTenCentimetresM: number;
  /** Of a disc's tilt; `null` for a ball. */
  readonly perDegreeOfAttitudeM: number | null;
  readonly model: string;
}

/**
 * The slopes of the range around a release, as central differences (±½ m/s, ±1°, ±10 cm). In a body they are not
 * independent: a steeper throw is a slower one, so this shows what the air and the ground do, not what to change.
 */
export function tradeOff(speedMps: number, setting: ThrowSetting, windTenths = 0): TradeOff | FlightRefusal {
  const flown = flyable(setting);
  if (isRefusal(flown)) return flown;
  if (!(speedMps > SPEED_MPS.least && speedMps < SPEED_MPS.most)) return flightRefused('SPEED_OUT_OF_RANGE');
  const { projectile, densityKgM3, reachM } = flown;
  const release: Release = { ...flown.release, speedMps };
  const air = { densityKgM3, windMps: windTenths / 10 };
  const range = (change: Partial<Release>): number => flightRange(projectile, { ...release, ...change }, air);
  const slope = (change: (by: number) => Partial<Release>, by: number): number =>
    (range(change(by)) - range(change(-by))) / (2 * by);
  const { angleDeg, heightM, attitudeDeg = angleDeg } = release;
  const disc = projectile.shape === 'disc';
  return {
    kind: 'trade-off',
    rangeM: range({}) + reachM,
    perMetrePerSecondM: slope((by) => ({ speedMps: speedMps + by }), 0.5),
    perDegreeM: slope((by) => ({ angleDeg: angleDeg + by }), 1),
    perTenCentimetresM: slope((by) => ({ heightM: heightM + by }), 0.1) / 10,
    perDegreeOfAttitudeM: disc ? slope((by) => ({ attitudeDeg: attitudeDeg + by }), 1) : null,
    model: disc ? projectile.table.name : 'ball',
  };
}
