import { speedNeeded } from './speed-needed.js';
import type { ThrowSetting } from './throw-setting.js';
import { tradeOff } from './trade-off.js';

const DISCUS: ThrowSetting = { event: 'discus', massG: 2000, angleDeg: 35, attitudeDeg: 25, heightCm: 170 };

describe('what one more is worth', () => {
  it('of a 25 m/s discus, to one per cent', () => {
    // Central differences, computed independently with an adaptive integrator (DISC-A): tests arithmetic, not nature.
    // The attitude's slope is so flat (14 mm) that the step decides its last digit, so it is held to a millimetre.
    const worth = tradeOff(25, DISCUS);
    if (worth.kind === 'refused') throw new Error(worth.code);
    const { perMetrePerSecondM, perDegreeM, perTenCentimetresM, perDegreeOfAttitudeM, rangeM } = worth;
    expect(rangeM).toBeCloseTo(65.8821, 3);
    expect(Math.abs(perMetrePerSecondM / 5.374 - 1)).toBeLessThan(0.01);
    expect(Math.abs(perDegreeM / 0.122 - 1)).toBeLessThan(0.01);
    expect(Math.abs((perDegreeOfAttitudeM ?? 0) - 0.014)).toBeLessThan(0.001);
    expect(Math.abs(perTenCentimetresM / 0.1189 - 1)).toBeLessThan(0.01);
  });

  it('has no attitude for a ball, and speed counts for most', () => {
    const worth = tradeOff(14, { event: 'shot', massG: 7260, angleDeg: 37, heightCm: 210 });
    if (worth.kind === 'refused') throw new Error(worth.code);
    expect(worth.perDegreeOfAttitudeM).toBeNull();
    expect(worth.perMetrePerSecondM).toBeGreaterThan(10 * Math.abs(worth.perDegreeM));
  });

  it('is refused for a javelin, and outside the speeds of throwers', () => {
    expect(tradeOff(25, { ...DISCUS, event: 'javelin' })).toMatchObject({ code: 'NOT_MODELLED' });
    expect(tradeOff(41, DISCUS)).toMatchObject({ code: 'SPEED_OUT_OF_RANGE' });
    expect(tradeOff(Number.NaN, DISCUS)).toMatchObject({ code: 'SPEED_OUT_OF_RANGE' });
  });
});

describe('the speed that a mark needs', () => {
  it('is the one that makes it', () => {
    expect(speedNeeded(6588, DISCUS)).toMatchObject({ kind: 'speed', model: 'DISC-A' });
    const answer = speedNeeded(6588, DISCUS);
    expect(answer.kind === 'speed' && answer.speedMps).toBeCloseTo(25, 2);
  });

  it('is less into a headwind for a discus, more for a hammer', () => {
    const hammer: ThrowSetting = { event: 'hammer', massG: 4000, angleDeg: 42, heightCm: 170 };
    const change = (mark: number, setting: ThrowSetting): number => {
      const [still, against] = [speedNeeded(mark, setting), speedNeeded(mark, setting, -40)];
      return still.kind === 'speed' && against.kind === 'speed'
        ? against.speedMps - still.speedMps
        : Number.NaN;
    };
    expect(change(6000, DISCUS)).toBeLessThan(0);
    expect(change(6800, hammer)).toBeGreaterThan(0);
  });

  it('of a javelin is that without air, marked so', () => {
    // A printed 16.0 m/s for 46.43 m cannot be: without air it takes about 21.3.
    const answer = speedNeeded(4643, { event: 'javelin', massG: 700, angleDeg: 36.4, heightCm: 180 });
    expect(answer).toMatchObject({ kind: 'speed', model: 'vacuum' });
    expect(answer.kind === 'speed' && answer.speedMps).toBeCloseTo(21.3, 0);
  });

  it('is refused where nothing flies, or no thrower could', () => {
    expect(speedNeeded(600, { ...DISCUS, event: 'long-jump' })).toMatchObject({ code: 'NOT_MODELLED' });
    expect(speedNeeded(30_000, { ...DISCUS, event: 'javelin' })).toMatchObject({
      code: 'SPEED_OUT_OF_RANGE',
    });
    expect(speedNeeded(6000, { ...DISCUS, massG: 1234 })).toMatchObject({ code: 'IMPLEMENT_UNKNOWN' });
  });
});
