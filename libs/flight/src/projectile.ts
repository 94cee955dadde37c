import { DISC_A, type DiscTable } from './disc-table.js';

/** A ball, with or without wire and grip: drag only. */
export interface Ball {
  readonly shape: 'ball';
  readonly massKg: number;
  readonly diameterM: number;
  /** On the cross-section of the ball; a function of the Reynolds number where one number is too coarse. */
  readonly drag: number | ((reynolds: number) => number);
}

/** A disc that flies with its edge first: lift and drag by the angle of attack. */
export interface Disc {
  readonly shape: 'disc';
  readonly massKg: number;
  readonly diameterM: number;
  readonly table: DiscTable;
}

export type Projectile = Ball | Disc;

/** Events whose flight is modelled. A javelin has no coefficients here: none were to be had. */
export type FlownEvent = 'discus' | 'shot' | 'hammer';

export const SHOT_DRAG = 0.47;

/** Ball, wire and grip together, on the area of the ball. Our own estimate between the ball alone and much more. */
export const HAMMER_DRAG = { low: 0.47, middle: 0.7, high: 0.9 } as const;

/**
 * Diameters in millimetres by mass in grams. Discus: middle of the range in the implement rules (World Athletics TR34,
 * schools handbooks for the lighter ones; 750 g from memory). Shot and hammer balls: the rules allow 15–25 mm around
 * these, from memory; a measured diameter may be given instead.
 */
const DIAMETER_MM: Readonly<Record<FlownEvent, Readonly<Record<number, number>>>> = {
  discus: { 2000: 220, 1750: 211, 1500: 201, 1250: 181, 1000: 181, 750: 167 },
  shot: { 7260: 125, 6000: 115, 5000: 110, 4000: 105, 3000: 95 },
  hammer: { 7260: 110, 6000: 105, 5000: 100, 4000: 95, 3000: 85 },
};

/** Masses in grams that `projectileOf` knows without a diameter, heaviest first. */
export function knownMasses(event: FlownEvent): readonly number[] {
  return Object.keys(DIAMETER_MM[event])
    .map(Number)
    .sort((a, b) => b - a);
}

export interface Implement {
  readonly event: FlownEvent;
  readonly massG: number;
  /** Where it was measured; else that of the rules for its mass. */
  readonly diameterMm?: number;
}

/** `null` for a mass that the rules do not list, unless its diameter is given. */
export function projectileOf({ event, massG, diameterMm }: Implement): Projectile | null {
  const diameter = diameterMm ?? DIAMETER_MM[event][massG];
  if (diameter === undefined) return null;
  const size = { massKg: massG / 1000, diameterM: diameter / 1000 };
  switch (event) {
    case 'discus':
      return { shape: 'disc', ...size, table: DISC_A };
    case 'shot':
      return { shape: 'ball', ...size, drag: SHOT_DRAG };
    case 'hammer':
      return { shape: 'ball', ...size, drag: HAMMER_DRAG.middle };
  }
}
