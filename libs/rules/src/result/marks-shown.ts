import type { Card } from '../card.js';
import { eventOf } from '../events/event.js';
import { formatMark, type Unit } from '../quantities/mark.js';
import { formatWind, isWindLegal, type Wind } from '../quantities/wind.js';
import { ruleSet } from '../rule-sets/index.js';
import type { Series, Trial } from '../trial.js';
import { bestTrialOf } from './best-trial.js';
import type { ResultRow } from './result-document.js';

export type MarksShown = Pick<ResultRow, 'mark' | 'wind' | 'windLegal' | 'windLegalMark'>;

export const NO_MARKS: MarksShown = { mark: null, wind: null, windLegal: null, windLegalMark: null };

/** What the result shows of a series on this card. */
export function marksShownOn(card: Card): (series: Series) => MarksShown {
  const hasWind = eventOf(card.event).hasWind(card.indoor);
  const limit = hasWind ? ruleSet(card.rules, card.edition).windLimit.value : null;
  return (series) => {
    const { shown, legal } = bestTrialOf(series, limit);
    if (shown === null) return { ...NO_MARKS, mark: hasUnmeasured(series) ? 'O' : null };
    return {
      mark: written(shown, card.unit),
      wind: shown.wind === null ? null : windWritten(shown.wind),
      windLegal: limit === null || shown.wind === null ? null : isWindLegal(shown.wind, limit),
      windLegalMark: legal && written(legal, card.unit),
    };
  };
}

function written(trial: Trial, unit: Unit): string {
  return formatMark(trial.mark!, unit);
}

/** A reading that is still expected shows as nothing. */
function windWritten(wind: Wind): string | null {
  return wind === 'pending' ? null : formatWind(wind);
}

function hasUnmeasured(series: Series): boolean {
  return series.some((trial) => trial?.outcome === 'unmeasured');
}
