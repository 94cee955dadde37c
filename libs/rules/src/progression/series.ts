import type { CardCompetitor } from '../card.js';
import type { Series } from '../trial.js';

/** The last round in which a trial is recorded; 0 without any. */
export function lastRound(series: Series): number {
  let end = series.length;
  while (end > 0 && series[end - 1] === null) end--;
  return end;
}

/** The round in which the competitor retired; `Infinity` = never. */
export function retiredIn(series: Series): number {
  const at = series.findIndex((trial) => trial?.outcome === 'retired');
  return at < 0 ? Infinity : at + 1;
}

/** The round of the first mark at or over the standard; `Infinity` = none. */
export function reachedIn(series: Series, standard: number): number {
  const at = series.findIndex((trial) => trial?.outcome === 'valid' && trial.mark! >= standard);
  return at < 0 ? Infinity : at + 1;
}

/** Whether a competitor is out of the competition from the round after `round` on: a disqualification ended the series. */
export function endedBy(competitor: CardCompetitor, round: number): boolean {
  return competitor.status === 'DQ' && lastRound(competitor.series) <= round;
}
