import { AIR_VISCOSITY, STANDARD_GRAVITY } from './air.js';
import { coefficientsAt, type Coefficients } from './disc-table.js';
import type { Projectile } from './projectile.js';
import { degrees, radians, type Air, type Release } from './release.js';

/** Where the implement is, against the release point's foot on the ground. */
export interface Point {
  readonly timeS: number;
  readonly forwardM: number;
  readonly heightM: number;
}

/** Position and velocity in the plane of the throw, in metres and metres per second. */
interface State {
  readonly x: number;
  readonly y: number;
  readonly vx: number;
  readonly vy: number;
}

type Acceleration = (state: State) => { readonly ax: number; readonly ay: number };

/** Five milliseconds of Runge–Kutta (4th order) stay within a millimetre of an adaptive integrator. */
const STEP_S = 0.005;

/** No implement stays up for longer; it ends a flight whose input makes no sense. */
const LONGEST_S = 60;

/**
 * The flight step by step in two dimensions until the ground, the last point on it. The air is the same all the way
 * and moves only along the throw; spin holds a disc's attitude.
 *
 * a = −½ρ A C_D |u| u / m + ½ρ A C_L |u| n / m − g, with u the velocity against the air and n at right angles to it.
 */
export function trajectory(
  projectile: Projectile,
  release: Release,
  air: Air,
  gravity = STANDARD_GRAVITY,
): readonly Point[] {
  const points: Point[] = [];
  const landing = follow(projectile, release, air, gravity, (point) => points.push(point));
  return [...points, landing];
}

/** Metres from the release point to the landing. */
export function flightRange(
  projectile: Projectile,
  release: Release,
  air: Air,
  gravity = STANDARD_GRAVITY,
): number {
  return follow(projectile, release, air, gravity).forwardM;
}

/** The landing; on the way there every point in the air is shown to `passes`. */
function follow(
  projectile: Projectile,
  release: Release,
  air: Air,
  gravity: number,
  passes?: (point: Point) => void,
): Point {
  const acceleration = accelerationOf(projectile, release, air, gravity);
  let state = startOf(release);
  let timeS = 0;
  while (timeS <= LONGEST_S) {
    passes?.({ timeS, forwardM: state.x, heightM: state.y });
    const next = stepped(state, acceleration);
    if (next.y <= 0) {
      const share = state.y / (state.y - next.y);
      return { timeS: timeS + share * STEP_S, forwardM: state.x + share * (next.x - state.x), heightM: 0 };
    }
    state = next;
    timeS += STEP_S;
  }
  return { timeS, forwardM: state.x, heightM: state.y };
}

function startOf({ speedMps, angleDeg, heightM }: Release): State {
  const angle = radians(angleDeg);
  return { x: 0, y: heightM, vx: speedMps * Math.cos(angle), vy: speedMps * Math.sin(angle) };
}

function accelerationOf(projectile: Projectile, release: Release, air: Air, gravity: number): Acceleration {
  const area = (Math.PI * projectile.diameterM ** 2) / 4;
  const perMass = (0.5 * air.densityKgM3 * area) / projectile.massKg;
  const coefficients = coefficientsOf(projectile, release, air);
  return ({ vx, vy }) => {
    const ux = vx - air.windMps;
    const speed = Math.sqrt(ux * ux + vy * vy);
    const { lift, drag } = coefficients(ux, vy, speed);
    return {
      ax: -perMass * speed * (drag * ux + lift * vy),
      ay: -perMass * speed * (drag * vy - lift * ux) - gravity,
    };
  };
}

function coefficientsOf(
  projectile: Projectile,
  release: Release,
  air: Air,
): (ux: number, uy: number, speed: number) => Coefficients {
  if (projectile.shape === 'disc') {
    const attitude = release.attitudeDeg ?? release.angleDeg;
    return (ux, uy) => coefficientsAt(projectile.table, attitude - degrees(Math.atan2(uy, ux)));
  }
  const { drag, diameterM } = projectile;
  if (typeof drag === 'number') return () => ({ lift: 0, drag });
  const reynoldsPerSpeed = (air.densityKgM3 * diameterM) / AIR_VISCOSITY;
  return (_ux, _uy, speed) => ({ lift: 0, drag: drag(reynoldsPerSpeed * speed) });
}

function stepped(state: State, acceleration: Acceleration): State {
  const a = acceleration(state);
  const second = moved(state, state, a, STEP_S / 2);
  const b = acceleration(second);
  const third = moved(state, second, b, STEP_S / 2);
  const c = acceleration(third);
  const fourth = moved(state, third, c, STEP_S);
  const d = acceleration(fourth);
  const sixth = STEP_S / 6;
  return {
    x: state.x + sixth * (state.vx + 2 * second.vx + 2 * third.vx + fourth.vx),
    y: state.y + sixth * (state.vy + 2 * second.vy + 2 * third.vy + fourth.vy),
    vx: state.vx + sixth * (a.ax + 2 * b.ax + 2 * c.ax + d.ax),
    vy: state.vy + sixth * (a.ay + 2 * b.ay + 2 * c.ay + d.ay),
  };
}

/** From `start`, for a while, with the velocity and acceleration found elsewhere. */
function moved(start: State, along: State, a: { ax: number; ay: number }, forS: number): State {
  return {
    x: start.x + forS * along.vx,
    y: start.y + forS * along.vy,
    vx: start.vx + forS * a.ax,
    vy: start.vy + forS * a.ay,
  };
}
