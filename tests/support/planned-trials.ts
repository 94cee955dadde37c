/** One trial of a made-up competition, as a field card writes it. */
export interface PlannedTrial {
  readonly bib: string;
  readonly round: number;
  readonly cell: string;
}

/** Numbers from 0 up to 1, the same for the same seed (a linear congruential generator modulo 2^32). */
export function numbersFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Every trial of a discus competition, round by round: one in six a failure, one in twenty a pass, many level marks. */
export function plannedTrials(competitors: number, rounds: number, seed: number): PlannedTrial[] {
  const next = numbersFrom(seed);
  const cell = (): string => {
    const kind = next();
    if (kind < 1 / 6) return 'X';
    if (kind < 1 / 6 + 1 / 20) return '-';
    return `${40 + Math.floor(next() * 20)}.${String(Math.floor(next() * 10) * 10).padStart(2, '0')}`;
  };
  return Array.from({ length: rounds * competitors }, (_, at) => ({
    bib: String((at % competitors) + 1),
    round: Math.floor(at / competitors) + 1,
    cell: cell(),
  }));
}

/** The series of each competitor by bib, as a sheet has them. */
export function seriesOf(trials: readonly PlannedTrial[]): Record<string, string[]> {
  const series: Record<string, string[]> = {};
  for (const { bib, round, cell } of trials) (series[bib] ??= [])[round - 1] = cell;
  return series;
}
