import { seriesMissing, type Answer } from '../answer.js';
import { mean } from '../numbers/moments.js';
import type { Chance } from '../numbers/random.js';
import { implementsDiffer, isMarked, type Series } from '../series.js';
import { withinSeriesTest, type WithinSeriesTest } from '../within-series/within-series-test.js';

export interface RoundMean {
  readonly round: number;
  readonly marks: number;
  /** Against the mean of the marks of the same series. */
  readonly aboveSeriesMeanCm: number;
  /** For this round being different, already allowing for how many rounds were looked at. */
  readonly p: number;
}

export interface RoundEffect {
  readonly rounds: readonly RoundMean[];
  /** Centimetres per round within series. */
  readonly slope: WithinSeriesTest;
  readonly series: number;
}

export interface RoundOptions {
  readonly chance: Chance;
  readonly draws?: number;
  readonly level?: number;
}

const LEAST_ATTEMPTS = 5;
const LEAST_SERIES = 3;

/**
 * Whether some rounds go further than others for the same athlete. Only series of five trials or more: who reaches
 * the last rounds is not who throws in the first. The marks of a series are dealt out anew over its rounds; a round
 * is judged by the largest of all rounds' standing out in each deal.
 */
export function roundEffect(all: readonly Series[], options: RoundOptions): Answer<RoundEffect> {
  const differ = implementsDiffer(all);
  if (differ) return differ;
  const rows = all.filter(({ trials }) => trials.length >= LEAST_ATTEMPTS).map(rowOf);
  const usable = rows.filter(({ rounds }) => rounds.length > 1);
  if (usable.length < LEAST_SERIES) return seriesMissing('LT_SERIES', usable.length, LEAST_SERIES);
  const { chance, draws = 2000, level = 0.9 } = options;
  const blocks = usable.map(({ rounds, marks }) => ({ x: rounds, y: marks }));
  const slope = withinSeriesTest(blocks, { level, draws, chance });
  if (slope === null) return seriesMissing('LT_SERIES', 0, LEAST_SERIES);
  return { kind: 'answer', rounds: roundMeans(usable, draws, chance), slope, series: usable.length };
}

interface Row {
  readonly rounds: readonly number[];
  readonly marks: readonly number[];
}

function rowOf({ trials }: Series): Row {
  const marked = trials.filter(isMarked);
  return { rounds: marked.map(({ round }) => round), marks: marked.map(({ markCm }) => markCm) };
}

function roundMeans(rows: readonly Row[], draws: number, chance: Chance): readonly RoundMean[] {
  const rounds = [...new Set(rows.flatMap((row) => row.rounds))].sort((a, b) => a - b);
  const above = rows.map(({ marks }) => {
    const middle = mean(marks);
    return marks.map((mark) => mark - middle);
  });
  const observed = totalsBy(rounds, rows, above);
  const counts = rounds.map(
    (round) => rows.flatMap((row) => row.rounds).filter((one) => one === round).length,
  );
  const standing = (totals: readonly number[]): readonly number[] =>
    totals.map((total, at) => Math.abs(total) / Math.sqrt(counts[at] ?? 1));
  const own = standing(observed);
  const asLarge = rounds.map(() => 0);
  for (let draw = 0; draw < draws; draw++) {
    const largest = Math.max(
      ...standing(
        totalsBy(
          rounds,
          rows,
          above.map((row) => shuffled(row, chance)),
        ),
      ),
    );
    own.forEach((size, at) => size <= largest + 1e-9 && (asLarge[at] = (asLarge[at] ?? 0) + 1));
  }
  return rounds.map((round, at) => ({
    round,
    marks: counts[at] ?? 0,
    aboveSeriesMeanCm: (observed[at] ?? 0) / (counts[at] ?? 1),
    p: ((asLarge[at] ?? 0) + 1) / (draws + 1),
  }));
}

function totalsBy(
  rounds: readonly number[],
  rows: readonly Row[],
  above: readonly (readonly number[])[],
): readonly number[] {
  const totals = new Map<number, number>();
  rows.forEach((row, at) =>
    row.rounds.forEach((round, i) => totals.set(round, (totals.get(round) ?? 0) + (above[at]?.[i] ?? 0))),
  );
  return rounds.map((round) => totals.get(round) ?? 0);
}

function shuffled(values: readonly number[], chance: Chance): readonly number[] {
  const order = [...values];
  for (let at = order.length - 1; at > 0; at--) {
    const other = chance.below(at + 1);
    [order[at], order[other]] = [order[other] as number, order[at] as number];
  }
  return order;
}
