import { chanceOf } from '../numbers/random.js';
import type { Block } from './block.js';
import { LEAST_TO_RESAMPLE, resampledInterval } from './cluster-bootstrap.js';
import { withinSeriesTest } from './within-series-test.js';

function blocks(count: number, effect: number): Block[] {
  const chance = chanceOf(4);
  return Array.from({ length: count }, () => {
    const x = [1, 0, 0, 1, 0, 1];
    return { x, y: x.map((noted) => 8 + effect * noted + 0.035 * chance.normal()) };
  });
}

describe('drawing whole series', () => {
  it('gives much the same interval as laying out anew, when series are alike', () => {
    const all = blocks(60, -0.03);
    const [one, other] = [
      resampledInterval(all, 0.9, chanceOf(1)),
      withinSeriesTest(all, { level: 0.9, draws: 5000, chance: chanceOf(1) })?.interval,
    ];
    expect(Math.abs((one?.low ?? 0) - (other?.low ?? 1))).toBeLessThan(0.003);
    expect(Math.abs((one?.high ?? 0) - (other?.high ?? 1))).toBeLessThan(0.003);
  });

  it('needs fifteen series that tell something', () => {
    const few = blocks(LEAST_TO_RESAMPLE - 1, 0);
    const mute: Block = { x: [0, 0], y: [8, 8.1] };
    expect(resampledInterval([...few, mute, mute], 0.9, chanceOf(1))).toBeNull();
    expect(resampledInterval(blocks(LEAST_TO_RESAMPLE, 0), 0.9, chanceOf(1))).not.toBeNull();
  });
});
