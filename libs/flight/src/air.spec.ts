import { airDensity, gravityAt, standardPressure } from './air.js';

describe('the density of air', () => {
  // Dry: ISO 2533 prints 1.2250 for 15 °C; the others and the moist one follow from the same gas constants.
  it.each([
    [15, 0, 1.22501],
    [20, 0, 1.20412],
    [20, 0.5, 1.19888],
    [0, 0, 1.29228],
  ])('at %d °C and humidity %d', (temperatureC, humidity, density) => {
    const found = airDensity({ pressurePa: 101_325, temperatureC, humidity });
    expect(Math.abs(found - density)).toBeLessThan(1e-5);
  });

  it('at 2240 m and 20 °C is a quarter less', () => {
    // ISA pressure at the altitude of Mexico City.
    const pressurePa = standardPressure(2240);
    expect(Math.abs(pressurePa - 77_154.7)).toBeLessThan(0.1);
    expect(Math.abs(airDensity({ pressurePa, temperatureC: 20, humidity: 0 }) - 0.91689)).toBeLessThan(1e-5);
  });
});

describe('gravity', () => {
  it('is 9.780327 at the equator and the agreed 9.80665 near 45°', () => {
    // The agreed value was meant for 45° and sea level; the formula gives 9.8062 there.
    expect(gravityAt(0, 0)).toBeCloseTo(9.780327, 9);
    expect(Math.abs(gravityAt(45, 0) - 9.80665)).toBeLessThan(1e-3);
    expect(gravityAt(45, 1000)).toBeCloseTo(gravityAt(45, 0) - 0.003086, 9);
  });
});
