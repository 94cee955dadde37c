/** How an implement flies: the one front door of the library. */
export {
  airDensity,
  gravityAt,
  STANDARD_AIR_DENSITY,
  STANDARD_GRAVITY,
  standardPressure,
  type Weather,
} from './air.js';
export { bestAngle, type Best } from './best-angle.js';
export { DISC_A, type DiscTable } from './disc-table.js';
export {
  HAMMER_DRAG,
  knownMasses,
  projectileOf,
  SHOT_DRAG,
  type Ball,
  type Disc,
  type FlownEvent,
  type Implement,
  type Projectile,
} from './projectile.js';
export { FLIGHT_REFUSAL_CODES, type FlightRefusal, type FlightRefusalCode } from './refusal.js';
export type { Air, Release } from './release.js';
export { speedFor, SPEED_MPS } from './speed-for.js';
export { speedNeeded, type SpeedNeeded } from './speed-needed.js';
export { smoothSphereDrag } from './sphere-drag.js';
export {
  MOST_WIND_TENTHS,
  STILL_AIR_STEP_CM,
  stillAirEquivalent,
  stillAirMetres,
  type StillAirRange,
} from './still-air.js';
export type { AskedEvent, ThrowSetting } from './throw-setting.js';
export { tradeOff, type TradeOff } from './trade-off.js';
export { flightRange, trajectory, type Point } from './trajectory.js';
export { vacuumOptimum, vacuumRange, vacuumSpeedFor, type Optimum } from './vacuum.js';
