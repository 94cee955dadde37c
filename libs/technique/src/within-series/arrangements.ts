import type { Chance } from '../numbers/random.js';
import type { CentredBlock } from './block.js';

/** Sums of a rearranged x with the centred y, x and z, one entry per arrangement. */
export interface ArrangementSums {
  readonly withY: Float64Array;
  readonly withX: Float64Array;
  /** `null` without a covariate. */
  readonly withZ: Float64Array | null;
}

/** Blocks with more arrangements are shuffled throw by throw instead of being looked up. */
const TABLE_UP_TO = 2000;

/** In how many ways the values of a block can be laid out: n! over the factorials of how often each occurs. */
export function arrangementsOf(x: readonly number[]): number {
  const counts = new Map<number, number>();
  let ways = 1;
  x.forEach((value, before) => {
    const count = (counts.get(value) ?? 0) + 1;
    counts.set(value, count);
    ways = (ways * (before + 1)) / count;
  });
  return Math.round(ways);
}

/** Over all blocks; may be infinite. */
export function arrangementsOver(blocks: readonly Pick<CentredBlock, 'x'>[]): number {
  return blocks.reduce((ways, { x }) => ways * arrangementsOf(x), 1);
}

/** Every arrangement of every block with every other: for products that are small enough to list. */
export function everyArrangement(blocks: readonly CentredBlock[]): ArrangementSums {
  return blocks.map(tableOf).reduce(combined, { withY: zeros(1), withX: zeros(1), withZ: null });
}

/** `draws` arrangements, each drawn independently within every block. */
export function drawnArrangements(
  blocks: readonly CentredBlock[],
  draws: number,
  chance: Chance,
): ArrangementSums {
  const sums: ArrangementSums = {
    withY: zeros(draws),
    withX: zeros(draws),
    withZ: blocks[0]?.dz ? zeros(draws) : null,
  };
  for (const block of blocks) {
    if (arrangementsOf(block.x) <= TABLE_UP_TO) addLookedUp(sums, tableOf(block), chance);
    else addShuffled(sums, block, chance);
  }
  return sums;
}

function zeros(count: number): Float64Array {
  return new Float64Array(count);
}

function addLookedUp(sums: ArrangementSums, table: ArrangementSums, chance: Chance): void {
  const count = table.withY.length;
  for (let draw = 0; draw < sums.withY.length; draw++) {
    const at = chance.below(count);
    (sums.withY[draw] as number) += table.withY[at] as number;
    (sums.withX[draw] as number) += table.withX[at] as number;
    if (sums.withZ && table.withZ) (sums.withZ[draw] as number) += table.withZ[at] as number;
  }
}

/**
 * The columns are centred, so the commonest value may be taken off x: only the other values then need places, drawn
 * one after the other from those still free (Fisher and Yates).
 */
function addShuffled(sums: ArrangementSums, { x, dx, dy, dz }: CentredBlock, chance: Chance): void {
  const usual = commonest(x);
  const others = x.filter((value) => value !== usual).map((value) => value - usual);
  const places = Int32Array.from(x, (_, at) => at);
  const size = places.length;
  for (let draw = 0; draw < sums.withY.length; draw++) {
    let [withY, withX, withZ] = [0, 0, 0];
    for (let next = 0; next < others.length; next++) {
      const chosen = next + chance.below(size - next);
      const place = places[chosen] as number;
      places[chosen] = places[next] as number;
      places[next] = place;
      const value = others[next] as number;
      withY += value * (dy[place] as number);
      withX += value * (dx[place] as number);
      if (dz) withZ += value * (dz[place] as number);
    }
    (sums.withY[draw] as number) += withY;
    (sums.withX[draw] as number) += withX;
    if (sums.withZ) (sums.withZ[draw] as number) += withZ;
  }
}

function commonest(x: readonly number[]): number {
  const count = (value: number): number => x.filter((other) => other === value).length;
  return x.reduce((best, value) => (count(value) > count(best) ? value : best));
}

/** Every different arrangement of one block, equally likely. */
function tableOf({ x, dx, dy, dz }: CentredBlock): ArrangementSums {
  const values = [...new Set(x)];
  const left = values.map((value) => x.filter((other) => other === value).length);
  const sums = { withY: [] as number[], withX: [] as number[], withZ: [] as number[] };
  const place = (at: number, withY: number, withX: number, withZ: number): void => {
    if (at === x.length) {
      sums.withY.push(withY);
      sums.withX.push(withX);
      sums.withZ.push(withZ);
      return;
    }
    values.forEach((value, kind) => {
      const count = left[kind] as number;
      if (count === 0) return;
      left[kind] = count - 1;
      const [y, own, z] = [dy[at] as number, dx[at] as number, dz?.[at] ?? 0];
      place(at + 1, withY + value * y, withX + value * own, withZ + value * z);
      left[kind] = count;
    });
  };
  place(0, 0, 0, 0);
  return {
    withY: Float64Array.from(sums.withY),
    withX: Float64Array.from(sums.withX),
    withZ: dz ? Float64Array.from(sums.withZ) : null,
  };
}

function combined(a: ArrangementSums, b: ArrangementSums): ArrangementSums {
  const each = (one: Float64Array, other: Float64Array): Float64Array => {
    const all = zeros(one.length * other.length);
    let next = 0;
    for (const left of one) for (const right of other) all[next++] = left + right;
    return all;
  };
  const withZ = b.withZ ? each(a.withZ ?? zeros(a.withY.length), b.withZ) : null;
  return { withY: each(a.withY, b.withY), withX: each(a.withX, b.withX), withZ };
}
