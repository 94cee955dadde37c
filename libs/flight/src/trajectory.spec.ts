import { bestAngle } from './best-angle.js';
import { coefficientsAt, DISC_A } from './disc-table.js';
import type { Ball, Disc } from './projectile.js';
import type { Air, Release } from './release.js';
import { speedFor } from './speed-for.js';
import { flightRange } from './trajectory.js';

/**
 * Rows marked "integrator" were computed independently with an adaptive integrator (DOP853, tolerance 1e-11) and the
 * same coefficients. They show that the arithmetic is right, not that nature is like the model.
 */
const WITHIN_M = 1e-3;

function ball(massKg: number, diameterM: number, drag: Ball['drag'] = 0.47): Ball {
  return { shape: 'ball', massKg, diameterM, drag };
}

function disc(massKg: number, diameterM: number): Disc {
  return { shape: 'disc', massKg, diameterM, table: DISC_A };
}

function air(densityKgM3: number, windMps = 0): Air {
  return { densityKgM3, windMps };
}

function near(found: number, expected: number, within = WITHIN_M): void {
  expect(Math.abs(found - expected)).toBeLessThan(within);
}

describe('a shot', () => {
  const senior = ball(7.26, 0.125);
  const put = { speedMps: 14, angleDeg: 37, heightM: 2.1 };

  it.each([
    [1.2041, 0, 21.5348],
    [1.2041, 2, 21.5746],
    [1.2041, -2, 21.4879],
    [0.91689, 0, 21.5696],
  ])('in air of %d kg/m³ with %d m/s (integrator)', (density, wind, rangeM) => {
    near(flightRange(senior, put, air(density, wind)), rangeM);
  });

  it.each([
    [ball(4, 0.105), { speedMps: 13, angleDeg: 37, heightM: 2.0 }, 18.7514],
    [ball(3, 0.095), { speedMps: 10, angleDeg: 37, heightM: 1.7 }, 11.636],
  ])('of the lighter classes (integrator)', (shot, release, rangeM) => {
    near(flightRange(shot, release, air(1.2041)), rangeM);
  });

  it.each([
    [-4, 21.6469],
    [-2, 21.6982],
    [0, 21.7427],
    [2, 21.7804],
    [4, 21.8114],
  ])('in wind of %d m/s, a second independent table with g = 9.81', (wind, rangeM) => {
    const release = { speedMps: 14, angleDeg: 38, heightM: 2.2 };
    near(flightRange(ball(7.26, 0.12), release, air(1.2, wind), 9.81), rangeM);
  });
});

describe('a hammer', () => {
  const release = { angleDeg: 42, heightM: 1.7 };

  it.each([
    [ball(7.26, 0.11), 84.12, 28.8435, 44.22],
    [ball(4, 0.085), 76.97, 27.5593, 44.17],
  ])('needs the speed of a published setup', (hammer, rangeM, speedMps, bestDeg) => {
    // Setup (ρ 1.3, C_D 0.47, g 9.8, 1.7 m) from Dan Kelley's pages, which print "best about 44°, throwers about 42°".
    const still = air(1.3);
    const found = speedFor(rangeM, hammer, release, still, 9.8) ?? 0;
    near(found, speedMps);
    const range = (angleDeg: number): number =>
      flightRange(hammer, { ...release, speedMps: found, angleDeg }, still, 9.8);
    near(bestAngle(range, 30, 60, 0.01).angleDeg, bestDeg, 0.3);
  });

  it.each([
    [ball(7.26, 0.11, 0.7), 28, [77.7099, 78.3484, 78.7371, 79.0957, 79.5765]],
    [ball(4, 0.095, 0.7), 27, [71.5041, 72.2703, 72.7361, 73.1651, 73.7386]],
  ])('in winds of −5, −2, 0, 2 and 5 m/s (integrator)', (hammer, speedMps, ranges) => {
    const winds = [-5, -2, 0, 2, 5];
    const found = winds.map((wind) => flightRange(hammer, { ...release, speedMps }, air(1.2041, wind)));
    found.forEach((rangeM, index) => near(rangeM, ranges[index] ?? 0));
  });

  it('of a published 68.12 m throw is near its 26.8 m/s', () => {
    // Judge et al. report the release speed; angle unknown, so 36–44°, less what lies behind the release. 6 per cent.
    for (const angleDeg of [36, 40, 44]) {
      const rangeM = flightRange(ball(4, 0.095, 0.7), { ...release, speedMps: 26.8, angleDeg }, air(1.2041));
      expect(Math.abs(rangeM / 68.12 - 1)).toBeLessThan(0.06);
    }
  });
});

describe('a discus', () => {
  const men = disc(2, 0.22);
  const thrown: Release = { speedMps: 25, angleDeg: 35, attitudeDeg: 25, heightM: 1.7 };

  it.each([
    [-15, 68.3978],
    [-10, 71.3892],
    [-7, 70.4937],
    [-5, 69.3386],
    [-2, 67.2801],
    [0, 65.8821],
    [2, 64.5624],
    [5, 62.8267],
    [7, 61.8577],
    [10, 60.6488],
  ])('of the men in wind of %d m/s (integrator)', (wind, rangeM) => {
    near(flightRange(men, thrown, air(1.225, wind)), rangeM);
  });

  it.each([
    ['1 kg', disc(1, 0.181), { speedMps: 24, angleDeg: 35, attitudeDeg: 25, heightM: 1.6 }, -10, 64.5022],
    ['1 kg', disc(1, 0.181), { speedMps: 24, angleDeg: 35, attitudeDeg: 25, heightM: 1.6 }, -5, 64.692],
    ['1 kg', disc(1, 0.181), { speedMps: 24, angleDeg: 35, attitudeDeg: 25, heightM: 1.6 }, 0, 61.469],
    ['1 kg', disc(1, 0.181), { speedMps: 24, angleDeg: 35, attitudeDeg: 25, heightM: 1.6 }, 5, 58.0641],
    ['750 g', disc(0.75, 0.167), { speedMps: 17, angleDeg: 35, attitudeDeg: 28, heightM: 1.4 }, -5, 32.0842],
    ['750 g', disc(0.75, 0.167), { speedMps: 17, angleDeg: 35, attitudeDeg: 28, heightM: 1.4 }, -2, 31.298],
    ['750 g', disc(0.75, 0.167), { speedMps: 17, angleDeg: 35, attitudeDeg: 28, heightM: 1.4 }, 0, 30.7213],
    ['750 g', disc(0.75, 0.167), { speedMps: 17, angleDeg: 35, attitudeDeg: 28, heightM: 1.4 }, 2, 30.1849],
    ['750 g', disc(0.75, 0.167), { speedMps: 17, angleDeg: 35, attitudeDeg: 28, heightM: 1.4 }, 5, 29.5258],
  ])('of %s (integrator)', (_name, implement, release, wind, rangeM) => {
    near(flightRange(implement, release, air(1.225, wind)), rangeM);
  });

  it.each([
    ['thin', 0.91689, 65.0115],
    ['30 °C', 101_325 / (287.05 * 303.15), 65.7166],
    ['0 °C', 101_325 / (287.05 * 273.15), 66.062],
  ])('in %s air: less lift, so shorter, where a shot goes further (integrator)', (_air, density, rangeM) => {
    near(flightRange(men, thrown, air(density)), rangeM);
  });

  it('gains 5–6 m into the best headwind, as physics texts print, and less beyond it', () => {
    // Spathopoulos, "An Introduction to the Physics of Sports": up to 5–6 m. DISC-A was set to this.
    const gain = (wind: number): number =>
      flightRange(men, thrown, air(1.225, wind)) - flightRange(men, thrown, air(1.225));
    expect(gain(-10)).toBeGreaterThan(5);
    expect(gain(-10)).toBeLessThan(6);
    expect(gain(-15)).toBeLessThan(gain(-10));
  });

  it('goes best in still air at 37.2° with 25.7° of attitude: 66.02 m (integrator)', () => {
    const range = (angleDeg: number, attitudeDeg: number): number =>
      flightRange(men, { ...thrown, angleDeg, attitudeDeg }, air(1.225));
    const bestAttitude = (angleDeg: number) =>
      bestAngle((attitude) => range(angleDeg, attitude), 15, 28.5, 0.1);
    const best = bestAngle((angleDeg) => bestAttitude(angleDeg).value, 30, 44, 0.1);
    near(best.angleDeg, 37.2, 0.5);
    near(bestAttitude(best.angleDeg).angleDeg, 25.7, 0.5);
    near(best.value, 66.02, 0.01);
  });
});

describe('the table of a disc', () => {
  it('is the same disc upside down and back to front', () => {
    for (const attack of [3, 12.5, 27, 44, 80]) {
      const { lift, drag } = coefficientsAt(DISC_A, attack);
      expect(coefficientsAt(DISC_A, -attack)).toEqual({ lift: -lift, drag });
      expect(coefficientsAt(DISC_A, 180 - attack).lift).toBeCloseTo(-lift, 12);
      expect(coefficientsAt(DISC_A, 180 - attack).drag).toBeCloseTo(drag, 12);
      expect(coefficientsAt(DISC_A, attack + 360).lift).toBeCloseTo(lift, 12);
    }
  });

  it('is straight between its rows and has rows of one length', () => {
    expect(coefficientsAt(DISC_A, 7.5).lift).toBeCloseTo(0.255, 12);
    expect(coefficientsAt(DISC_A, 90)).toEqual({ lift: 0, drag: 1.1 });
    expect([DISC_A.lift.length, DISC_A.drag.length]).toEqual([14, 14]);
  });
});
