import { flightRefused, type FlightRefusal } from './refusal.js';
import { speedFor } from './speed-for.js';
import { flyable, isFlown, isPossibleRelease, isRefusal, type ThrowSetting } from './throw-setting.js';
import { vacuumSpeedFor } from './vacuum.js';

export interface SpeedNeeded {
  readonly kind: 'speed';
  readonly speedMps: number;
  /** `vacuum`: no air at all, an estimate for want of anything better; `ball`: drag; else the name of a disc table. */
  readonly model: string;
}

/**
 * The release speed that a mark needs with a release as given, in a wind in tenths of m/s along the throw (still air
 * where none is given). For a javelin only the speed without air: its wings make it no more than an order of size.
 */
export function speedNeeded(
  markCm: number,
  setting: ThrowSetting,
  windTenths = 0,
): SpeedNeeded | FlightRefusal {
  if (setting.event === 'javelin') return javelinSpeed(markCm, setting);
  if (!isFlown(setting.event)) return flightRefused('NOT_MODELLED');
  const flown = flyable(setting);
  if (isRefusal(flown)) return flown;
  const { projectile, release, reachM, densityKgM3 } = flown;
  const speedMps = speedFor(markCm / 100 - reachM, projectile, release, {
    densityKgM3,
    windMps: windTenths / 10,
  });
  if (speedMps === null) return flightRefused('SPEED_OUT_OF_RANGE');
  return { kind: 'speed', speedMps, model: projectile.shape === 'disc' ? projectile.table.name : 'ball' };
}

function javelinSpeed(markCm: number, setting: ThrowSetting): SpeedNeeded | FlightRefusal {
  if (!isPossibleRelease(setting)) return flightRefused('RELEASE_OUT_OF_RANGE');
  const rangeM = (markCm - (setting.reachCm ?? 0)) / 100;
  const speedMps = vacuumSpeedFor(rangeM, { angleDeg: setting.angleDeg, heightM: setting.heightCm / 100 });
  const possible = speedMps !== null && speedMps >= 5 && speedMps <= 40;
  return possible ? { kind: 'speed', speedMps, model: 'vacuum' } : flightRefused('SPEED_OUT_OF_RANGE');
}
