import { DISC_A } from './disc-table.js';
import type { Disc } from './projectile.js';
import { FLIGHT_REFUSAL_CODES } from './refusal.js';
import { stillAirEquivalent, stillAirMetres, type StillAirRange } from './still-air.js';
import { speedFor } from './speed-for.js';
import type { ThrowSetting } from './throw-setting.js';

const MEN: Disc = { shape: 'disc', massKg: 2, diameterM: 0.22, table: DISC_A };
const WOMEN: Disc = { shape: 'disc', massKg: 1, diameterM: 0.181, table: DISC_A };
const CHILDREN: Disc = { shape: 'disc', massKg: 0.75, diameterM: 0.167, table: DISC_A };

describe('one still-air equivalent', () => {
  // Computed independently with an adaptive integrator and bisection; tests the inversion, not nature.
  it.each([
    ['2 kg', MEN, 60, -4, 25, 1.7, 23.3909, 57.5601],
    ['2 kg', MEN, 60, 4, 25, 1.7, 24.3277, 62.3262],
    ['1 kg', WOMEN, 45, -3, 25, 1.6, 20.229, 43.4641],
    ['750 g', CHILDREN, 30, 3, 28, 1.4, 17.0168, 30.7807],
  ])('of %s', (_name, disc, markM, windMps, attitudeDeg, heightM, speedMps, stillM) => {
    const release = { angleDeg: 35, attitudeDeg, heightM };
    const speed = speedFor(markM, disc, release, { densityKgM3: 1.225, windMps }) ?? 0;
    expect(Math.abs(speed - speedMps)).toBeLessThan(1e-3);
    expect(Math.abs((stillAirMetres(markM, windMps, disc, release) ?? 0) - stillM)).toBeLessThan(1e-3);
  });

  it.each([
    [
      [-5, 5],
      [56.9, 58.63],
    ],
    [
      [-10, 10],
      [56.8, 60.04],
    ],
  ])('moves when the attitude is off by %p', (offsets, expected) => {
    const found = offsets.map((by) =>
      stillAirMetres(60, -4, MEN, { angleDeg: 35, attitudeDeg: 25 + by, heightM: 1.7 }),
    );
    found.forEach((metres, index) => expect(metres).toBeCloseTo(expected[index] ?? 0, 2));
  });

  it('is worth about half a metre per m/s on 50 m', () => {
    const release = { angleDeg: 35, attitudeDeg: 25, heightM: 1.7 };
    const found = [-2, -3, -4].map((wind) => stillAirMetres(50, wind, MEN, release));
    [49.02, 48.52, 48.02].forEach((metres, index) => expect(found[index]).toBeCloseTo(metres, 2));
  });
});

const DISCUS: ThrowSetting = { event: 'discus', massG: 2000, angleDeg: 35, attitudeDeg: 25, heightCm: 170 };
const SHOT: ThrowSetting = { event: 'shot', massG: 7260, angleDeg: 37, heightCm: 210 };
const HAMMER: ThrowSetting = { event: 'hammer', massG: 7260, angleDeg: 42, heightCm: 170 };

function rangeOf(markCm: number, windTenths: number, setting: ThrowSetting): StillAirRange {
  const answer = stillAirEquivalent(markCm, windTenths, setting);
  if (answer.kind === 'refused') throw new Error(answer.code);
  return answer;
}

describe('a still-air range', () => {
  it('holds the single value and what the tilt and the gauge may hide', () => {
    const { lowCm, highCm, kind, model } = rangeOf(6000, -40, DISCUS);
    expect({ kind, model }).toEqual({ kind: 'range', model: 'DISC-A' });
    expect(lowCm).toBeLessThanOrEqual(5676);
    expect(highCm).toBeGreaterThanOrEqual(6004);
    expect([lowCm % 50, highCm % 50]).toEqual([0, 0]);
  });

  it('is negligible for a shot in any wind that is answered at all', () => {
    for (const wind of [-50, -20, 0, 20, 50]) expect(rangeOf(2150, wind, SHOT).kind).toBe('negligible');
  });

  it('is a range for a hammer', () => {
    const { kind, lowCm, highCm } = rangeOf(7800, -50, HAMMER);
    expect(kind).toBe('range');
    expect(lowCm).toBeGreaterThanOrEqual(7800);
    expect(highCm).toBeLessThanOrEqual(8050);
  });

  it('takes the release ahead of the edge into account', () => {
    const ahead = rangeOf(6030, -40, { ...DISCUS, reachCm: 30 });
    const at = rangeOf(6000, -40, DISCUS);
    expect(Math.abs(ahead.lowCm - 30 - at.lowCm)).toBeLessThanOrEqual(50);
  });
});

describe('a refusal', () => {
  it.each([
    ['NOT_MODELLED', 6000, 0, { ...DISCUS, event: 'javelin' }],
    ['NOT_MODELLED', 600, 0, { ...DISCUS, event: 'long-jump' }],
    ['IMPLEMENT_UNKNOWN', 6000, 0, { ...DISCUS, massG: 1999 }],
    ['RELEASE_OUT_OF_RANGE', 6000, 0, { ...DISCUS, angleDeg: Number.NaN }],
    ['RELEASE_OUT_OF_RANGE', 6000, 0, { ...DISCUS, heightCm: -1 }],
    ['NO_WIND', 6000, null, DISCUS],
    ['WIND_TOO_STRONG', 6000, 51, DISCUS],
    ['WIND_TOO_STRONG', 6000, Number.NaN, DISCUS],
    ['SPEED_OUT_OF_RANGE', 60_000, 0, DISCUS],
    ['SPEED_OUT_OF_RANGE', 10, 0, DISCUS],
  ] as const)('%s', (code, markCm, windTenths, setting) => {
    expect(stillAirEquivalent(markCm, windTenths, setting)).toMatchObject({ kind: 'refused', code });
    expect(FLIGHT_REFUSAL_CODES).toContain(code);
  });

  it('is lifted by a diameter for an implement that the rules do not list', () => {
    const answer = stillAirEquivalent(6000, -20, { ...DISCUS, massG: 1900, diameterMm: 219 });
    expect(answer.kind).toBe('range');
  });
});
