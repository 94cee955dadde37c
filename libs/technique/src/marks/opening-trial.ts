import { throwsMissing, type Answer } from '../answer.js';
import { isMarked, meantTrials, type Series } from '../series.js';
import { jeffreys } from './proportion.js';
import type { Interval } from '../answer.js';

export interface OpeningTrial {
  readonly series: number;
  readonly valid: number;
  readonly interval: Interval;
}

const LEAST_SERIES = 5;

/** How often the first trial of a competition was valid. One trial a series, so they are taken as independent. */
export function openingTrial(all: readonly Series[], level = 0.9): Answer<OpeningTrial> {
  const first = all.flatMap((series) => meantTrials(series).filter((trial) => trial.round === 1));
  if (first.length < LEAST_SERIES) return throwsMissing('LT_SERIES', first.length, LEAST_SERIES);
  const valid = first.filter(isMarked).length;
  return { kind: 'answer', series: first.length, valid, interval: jeffreys(valid, first.length, level) };
}
