import { mean } from '../numbers/moments.js';
import { fitMixed } from '../numbers/mixed-model.js';
import { isMarked, type Marked } from '../series.js';
import { assessedTrials, isPresent, type Assessed, type AssessedSeries } from './assessed.js';

/** A series with whose it is. */
export interface SquadSeries extends AssessedSeries {
  readonly athlete: string;
}

export interface AcrossDays {
  /** On log marks: against the rest of the same series, and a series full of the fault against one without. */
  readonly within: { readonly beta: number; readonly error: number };
  readonly between: { readonly beta: number; readonly error: number };
}

/**
 * The second opinion: a mixed model over a squad with levels for athletes and series, the fault split into its share
 * of the series and the departure from it. Days full of a fault may simply be poor days, so only `within` speaks of
 * the fault, and the test within series stays the answer. `null` where the data do not allow it.
 */
export function acrossDays(all: readonly SquadSeries[]): AcrossDays | null {
  const rows = all.flatMap((series) => {
    const marked = assessedTrials(series).filter((trial): trial is Marked<Assessed> => isMarked(trial));
    const share = mean(marked.map((trial) => Number(isPresent(trial))));
    return marked.map((trial) => ({
      athlete: series.athlete,
      series: series.id,
      y: Math.log(trial.markCm),
      fixed: [1, Number(isPresent(trial)) - share, share],
    }));
  });
  if (rows.length < 6) return null;
  const one = rows.map(() => [1]);
  const random = [
    { groups: rows.map((row) => row.series), columns: one },
    { groups: rows.map((row) => row.athlete), columns: one },
  ];
  const fit = fitMixed({ y: rows.map((row) => row.y), fixed: rows.map((row) => row.fixed), random }, 'REML');
  if (fit === null) return null;
  const at = (place: number) => ({
    beta: fit.fixed[place] ?? Number.NaN,
    error: fit.standardErrors[place] ?? Number.NaN,
  });
  return { within: at(1), between: at(2) };
}
