/** Lift and drag of a disc by its angle of attack. */
export interface DiscTable {
  readonly name: string;
  /** `model`: drawn by us after the shape of published curves; not measured, not published. */
  readonly basis: 'model';
  readonly about: string;
  /** Degrees, rising from 0 to 90. */
  readonly attackDeg: readonly number[];
  readonly lift: readonly number[];
  readonly drag: readonly number[];
}

export const DISC_A: DiscTable = {
  name: 'DISC-A',
  basis: 'model',
  about:
    'Our own rounded table. Its shape is that of published wind-tunnel curves (little drag edge-on, lift nearly ' +
    'linear, stall at 27–30°); its size is set so that a 25 m/s throw gains 5–6 m into the best headwind, as ' +
    'physics texts print. It is not a measurement.',
  attackDeg: [0, 5, 10, 15, 20, 25, 28, 30, 35, 40, 45, 60, 75, 90],
  lift: [0, 0.17, 0.34, 0.51, 0.67, 0.82, 0.86, 0.72, 0.64, 0.58, 0.54, 0.38, 0.2, 0],
  drag: [0.06, 0.07, 0.11, 0.18, 0.28, 0.42, 0.52, 0.56, 0.66, 0.74, 0.82, 0.98, 1.06, 1.1],
};

export interface Coefficients {
  readonly lift: number;
  readonly drag: number;
}

/** Between −180° and 180°. */
function wrapped(attackDeg: number): number {
  const turned = attackDeg % 360;
  if (turned > 180) return turned - 360;
  return turned < -180 ? turned + 360 : turned;
}

/**
 * Linear between the rows of the table. A disc is the same upside down and back to front, so lift turns its sign with
 * the attack and beyond 90° is that of the rest to 180°, turned.
 */
export function coefficientsAt(table: DiscTable, attackDeg: number): Coefficients {
  const signed = wrapped(attackDeg);
  const size = Math.abs(signed);
  const backwards = size > 90;
  const { lift, drag } = interpolated(table, backwards ? 180 - size : size);
  const sign = (signed < 0 ? -1 : 1) * (backwards ? -1 : 1);
  return { lift: sign * lift, drag };
}

function interpolated({ attackDeg, lift, drag }: DiscTable, attack: number): Coefficients {
  let above = 1;
  while (above < attackDeg.length - 1 && (attackDeg[above] as number) < attack) above++;
  const [from, to] = [attackDeg[above - 1] as number, attackDeg[above] as number];
  const share = (attack - from) / (to - from);
  const [lowLift, lowDrag] = [lift[above - 1] as number, drag[above - 1] as number];
  return {
    lift: lowLift + share * ((lift[above] as number) - lowLift),
    drag: lowDrag + share * ((drag[above] as number) - lowDrag),
  };
}
