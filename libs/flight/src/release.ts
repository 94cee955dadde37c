/** How an implement leaves the hand. */
export interface Release {
  readonly speedMps: number;
  /** Of the path against the ground, upwards. */
  readonly angleDeg: number;
  /** Above the ground on which it lands. */
  readonly heightM: number;
  /** Of a disc's plane against the ground; only a disc needs it. It stays as it is: spin holds it. */
  readonly attitudeDeg?: number;
}

/** What it flies through. */
export interface Air {
  readonly densityKgM3: number;
  /** Along the throw: positive from behind, negative from the front. */
  readonly windMps: number;
}

export function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

export function degrees(radiansOfIt: number): number {
  return (radiansOfIt * 180) / Math.PI;
}
