import { mean, squaresAround, sum } from './moments.js';

/** One-way analysis of variance. */
export interface VarianceAnalysis {
  readonly groups: number;
  readonly count: number;
  readonly freedomBetween: number;
  readonly freedomWithin: number;
  readonly squaresBetween: number;
  readonly squaresWithin: number;
  readonly meanSquareBetween: number;
  readonly meanSquareWithin: number;
  readonly f: number;
  readonly rSquared: number;
  /** The size of a group that stands for all: (N − Σn²/N)/(k − 1). */
  readonly typicalSize: number;
}

/** `null` for fewer than two groups, or when no group has two values. Empty groups are left out. */
export function analyseVariance(all: readonly (readonly number[])[]): VarianceAnalysis | null {
  const groups = all.filter((group) => group.length > 0);
  const count = sum(groups.map((group) => group.length));
  const [freedomBetween, freedomWithin] = [groups.length - 1, count - groups.length];
  if (freedomBetween < 1 || freedomWithin < 1) return null;
  const middle = mean(groups.flat());
  const squaresWithin = sum(groups.map((group) => squaresAround(group)));
  const squaresBetween = sum(groups.map((group) => group.length * (mean(group) - middle) ** 2));
  const meanSquareBetween = squaresBetween / freedomBetween;
  const meanSquareWithin = squaresWithin / freedomWithin;
  return {
    groups: groups.length,
    count,
    freedomBetween,
    freedomWithin,
    squaresBetween,
    squaresWithin,
    meanSquareBetween,
    meanSquareWithin,
    f: meanSquareBetween / meanSquareWithin,
    rSquared: squaresBetween / (squaresBetween + squaresWithin),
    typicalSize: (count - sum(groups.map((group) => group.length ** 2)) / count) / freedomBetween,
  };
}

/** How alike values of one group are: (MSB − MSW)/(MSB + (n₀ − 1) MSW); `null` where nothing varies. */
export function intraclassCorrelation(analysis: VarianceAnalysis): number | null {
  const { meanSquareBetween, meanSquareWithin, typicalSize } = analysis;
  const whole = meanSquareBetween + (typicalSize - 1) * meanSquareWithin;
  return whole === 0 ? null : (meanSquareBetween - meanSquareWithin) / whole;
}
