import type { Ball } from './projectile.js';
import { degrees } from './release.js';
import { smoothSphereDrag } from './sphere-drag.js';
import { trajectory, type Point } from './trajectory.js';

/**
 * Mencke, Salewski, Trinhammer and Adler, American Journal of Physics 88 (2020) 934–947: digitised points of a filmed
 * put, metres forward of the release and above the ground. The release was 9.0 m/s forward and 7.1 m/s upward.
 */
const POINTS: readonly (readonly [number, number])[] = [
  [0.0738, 2.46296],
  [0.3321, 2.66667],
  [0.62731, 2.88889],
  [0.94096, 3.09259],
  [1.27306, 3.31481],
  [1.66052, 3.53704],
  [1.95572, 3.74074],
  [2.25092, 3.88889],
  [2.56458, 4.03704],
  [2.91513, 4.2037],
  [3.24723, 4.35185],
  [3.52399, 4.46296],
  [3.85609, 4.57407],
  [4.22509, 4.7037],
  [4.57565, 4.77778],
  [5.0, 4.87037],
  [5.49815, 4.94444],
  [5.88561, 4.98148],
  [6.36531, 5.0],
  [6.82657, 5.0],
  [7.21402, 4.98148],
  [7.63838, 4.92593],
  [8.13653, 4.85185],
  [8.59779, 4.74074],
  [8.96679, 4.62963],
  [9.35424, 4.5],
  [9.83395, 4.33333],
  [10.42435, 4.05556],
  [11.14391, 3.68519],
  [11.71587, 3.33333],
  [12.21402, 3.0],
  [12.65683, 2.68519],
  [13.21033, 2.25926],
  [13.72694, 1.81481],
  [14.09594, 1.46296],
  [14.29889, 1.25926],
  [14.42804, 1.09259],
  [14.64945, 0.92593],
  [14.87085, 0.68519],
  [15.0738, 0.40741],
  [15.4428, 0.0],
];

const RELEASE = {
  speedMps: Math.sqrt(9 ** 2 + 7.1 ** 2),
  angleDeg: degrees(Math.atan2(7.1, 9)),
  heightM: 2.4,
};
const SHOT: Ball = { shape: 'ball', massKg: 7.26, diameterM: 0.11, drag: smoothSphereDrag };

function heightAt(flown: readonly Point[], forwardM: number): number {
  const after = flown.findIndex((point) => point.forwardM >= forwardM);
  const [a, b] = [flown[after - 1], flown[after]];
  if (!a || !b) throw new Error('the point lies beyond the flight');
  const share = (forwardM - a.forwardM) / (b.forwardM - a.forwardM);
  return a.heightM + share * (b.heightM - a.heightM);
}

describe('a filmed put', () => {
  const flown = trajectory(SHOT, RELEASE, { densityKgM3: 1.225, windMps: 0 }, 9.81);

  it('is followed within the noise of digitising', () => {
    const residuals = POINTS.map(([forwardM, heightM]) => heightAt(flown, forwardM) - heightM);
    const rms = Math.sqrt(residuals.reduce((sum, one) => sum + one ** 2, 0) / residuals.length);
    expect(rms).toBeLessThan(0.037);
    expect(Math.max(...residuals.map(Math.abs))).toBeLessThan(0.09);
  });

  it('lands where an independent integration of the same drag law lands', () => {
    expect(flown.at(-1)?.forwardM).toBeCloseTo(15.5214, 3);
    expect(flown.at(-1)?.timeS).toBeCloseTo(1.7295, 3);
  });
});
