import { refused, type Refusal } from '../answer.js';
import { meantTrials, type Series, type Trial } from '../series.js';

/** 0 looked at and not there, 1 slight, 2 clear, 3 breaks the throw. */
export type Severity = 0 | 1 | 2 | 3;

/** A throw with what was noted of one fault. */
export interface AssessedTrial extends Trial {
  /** `null` when nobody looked for it: that is not the same as absent. */
  readonly severity: Severity | null;
  /** Whether the observer knew the mark before noting. */
  readonly markKnown?: boolean;
  /** Only what struck the eye was noted, so nothing is known of throws without a note: kept out of every number. */
  readonly noticedOnly?: boolean;
}

export type AssessedSeries = Series<AssessedTrial>;

/** From which severity a fault counts as present. */
export const PRESENT_FROM: Severity = 2;

export type Assessed = AssessedTrial & { readonly severity: Severity };

export function assessedTrials(series: AssessedSeries): readonly Assessed[] {
  return meantTrials(series).filter(
    (trial): trial is Assessed => trial.severity !== null && trial.noticedOnly !== true,
  );
}

export function isPresent({ severity }: Assessed, presentFrom: Severity = PRESENT_FROM): boolean {
  return severity >= presentFrom;
}

/** Nobody looked for it with a scope; some only noted what they noticed. */
export function notLookedFor(all: readonly AssessedSeries[]): Refusal {
  const noticed = all.flatMap(({ trials }) => trials).filter((trial) => trial.noticedOnly === true).length;
  return noticed > 0
    ? refused('NOTICED_ONLY', 'throws', noticed, noticed, noticed)
    : refused('NOT_ASSESSED', 'throws', 0, 1, 1);
}

/** The same series as if throws whose mark was known beforehand had not been looked at. */
export function notedBlind(all: readonly AssessedSeries[]): readonly AssessedSeries[] {
  return all.map((series) => ({
    ...series,
    trials: series.trials.map((trial) => (trial.markKnown === true ? { ...trial, severity: null } : trial)),
  }));
}
