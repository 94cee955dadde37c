/** A point and the value of the function there. */
export interface Minimum {
  readonly at: readonly number[];
  readonly value: number;
}

const MOST_STEPS = 2000;

/**
 * The least value near a start, without slopes (Nelder and Mead 1965). For one to three unknowns on smooth functions;
 * it restarts once from what it found, since it may stop on a slope.
 */
export function minimise(
  of: (at: readonly number[]) => number,
  start: readonly number[],
  step = 0.5,
  within = 1e-11,
): Minimum {
  const first = descend(of, start, step, within);
  return descend(of, first.at, step / 4, within);
}

function descend(
  of: (at: readonly number[]) => number,
  start: readonly number[],
  step: number,
  within: number,
): Minimum {
  const valued = (at: readonly number[]): Minimum => ({ at, value: of(at) });
  const corners = [valued(start)];
  start.forEach((_, axis) => corners.push(valued(start.map((x, i) => (i === axis ? x + step : x)))));
  for (let steps = 0; steps < MOST_STEPS; steps++) {
    corners.sort((a, b) => a.value - b.value);
    const [best, worst] = [corners[0] as Minimum, corners.at(-1) as Minimum];
    if (worst.value - best.value <= within * (Math.abs(best.value) + within) && width(corners) < 1e-7) break;
    replaceWorst(corners, valued);
  }
  corners.sort((a, b) => a.value - b.value);
  return corners[0] as Minimum;
}

function width(corners: readonly Minimum[]): number {
  const [best, ...others] = corners;
  const distances = others.flatMap(({ at }) => at.map((x, axis) => Math.abs(x - (best?.at[axis] ?? 0))));
  return Math.max(...distances);
}

/** Reflects the worst corner through the others, goes further or less far, or draws all towards the best. */
function replaceWorst(corners: Minimum[], valued: (at: readonly number[]) => Minimum): void {
  const others = corners.slice(0, -1);
  const [best, worst] = [corners[0] as Minimum, corners.at(-1) as Minimum];
  const secondWorst = others.at(-1) as Minimum;
  const centre = best.at.map((_, axis) => others.reduce((s, c) => s + (c.at[axis] ?? 0), 0) / others.length);
  const through = (by: number): Minimum =>
    valued(centre.map((x, axis) => x + by * (x - (worst.at[axis] ?? 0))));
  const reflected = through(1);
  if (reflected.value < best.value) {
    const further = through(2);
    corners[corners.length - 1] = further.value < reflected.value ? further : reflected;
  } else if (reflected.value < secondWorst.value) {
    corners[corners.length - 1] = reflected;
  } else {
    const nearer = reflected.value < worst.value ? through(0.5) : through(-0.5);
    if (nearer.value < Math.min(reflected.value, worst.value)) corners[corners.length - 1] = nearer;
    else corners.forEach((corner, at) => at > 0 && (corners[at] = valued(halfway(best.at, corner.at))));
  }
}

function halfway(a: readonly number[], b: readonly number[]): readonly number[] {
  return a.map((x, axis) => (x + (b[axis] ?? 0)) / 2);
}
