import { demandSameSize } from './fairness.js';
import type { LoadResult } from './load.js';
import { againstFloor, type Measure } from './measure.js';
import { SCALE } from './scale.js';

type Side = () => Promise<LoadResult>;

/** Loads us and the floor by turns, so that whatever else the machine does falls on both. */
export async function compare(
  name: string,
  unit: string,
  target: number,
  { ours, floor }: { ours: Side; floor: Side },
): Promise<Measure> {
  const results: Record<'ours' | 'floor', LoadResult[]> = { ours: [], floor: [] };
  for (let round = 0; round <= SCALE.rounds; round += 1) {
    const turns = [
      async () => void results.ours.push(await ours()),
      async () => void results.floor.push(await floor()),
    ];
    for (const turn of round % 2 === 0 ? turns : turns.reverse()) await turn();
  }
  demandSameSize(name, [results.ours[0]!.bytes, results.floor[0]!.bytes]);
  // The first round warms both up.
  const [values, floorValues] = [results.ours, results.floor].map((side) =>
    side.slice(1).map(({ perSecond }) => perSecond),
  );
  return againstFloor(name, unit, { values: values!, floor: floorValues!, target });
}
