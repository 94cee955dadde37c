import type { Needed, Reason, VerticalNeeded, VerticalReason } from '#rules';
import { distanceReason, REASON_WORDS, verticalReason, type Writing } from '#wording';
import { localDecimals, placeText } from './format.js';
import { language, t } from './languages.js';

function writing(): Writing {
  return { words: REASON_WORDS[language.value], decimals: localDecimals };
}

/** Why a row of a throw or a horizontal jump stands where it stands, without the place itself. */
export function reasonText(reason: Reason): string {
  return distanceReason(reason, writing());
}

/** The same at a bar. */
export function verticalReasonText(reason: VerticalReason): string {
  return verticalReason(reason, writing());
}

/** What one competitor needs with the next trial: the nearest better places first, then the cut. */
export function neededTexts({ places, cut }: Needed): string[] {
  const nearest = places.at(0);
  const best = places.length > 1 ? places.at(-1) : undefined;
  const texts = [best, nearest].flatMap((one) =>
    one
      ? [
          t(one.shared ? 'needed.shared' : 'needed.place', {
            mark: localDecimals(one.mark),
            place: placeText(one.place),
          }),
        ]
      : [],
  );
  if (!cut) return texts;
  if (cut.isIn) return [...texts, t('needed.isIn')];
  if (cut.mark === null) return texts;
  const pass = t('needed.cut', { mark: localDecimals(cut.mark), round: cut.after });
  return [...texts, cut.rival?.equalIsEnough ? `${pass} (${t('needed.equal')})` : pass];
}

export function verticalNeededTexts({ places }: VerticalNeeded): string[] {
  const nearest = places.at(0);
  const best = places.length > 1 ? places.at(-1) : undefined;
  return [best, nearest].flatMap((one) =>
    one
      ? [
          t('needed.clear', {
            mark: localDecimals(one.height),
            trial: one.trial,
            place: placeText(one.place),
          }),
        ]
      : [],
  );
}
