import type { Needed, Reason, VerticalNeeded, VerticalReason } from '#rules';
import { localDecimals, placeText } from './format.js';
import { t, tCode } from './languages.js';

/** Why a row of a throw or a horizontal jump stands where it stands, without the place itself. */
export function reasonText(reason: Reason): string {
  if (reason.place === null) return statusText(reason.status, reason.mark);
  const { decidedBy, shared, undecidable } = reason;
  const own = reason.own === null ? null : localDecimals(reason.own);
  const other = reason.other === null ? null : localDecimals(reason.other);
  const level = reason.level.map(localDecimals).join(' · ');
  if (decidedBy === 'equal' || (shared && own === null && other === null)) {
    if (level === '') return t('reason.unmeasured');
    return undecidable ? t('reason.undecidable', { level }) : t('reason.shared', { level });
  }
  if (decidedBy === 'first' || decidedBy === 1) {
    if (own === null) return t('reason.unmeasured');
    return other === null ? t('reason.best', { own }) : t('reason.against', { own, other });
  }
  if (own === null) return t('reason.noFurther', { level, other: other ?? '' });
  return t('reason.level', { level, own, other: other ?? '' });
}

/** The same at a bar. */
export function verticalReasonText(reason: VerticalReason): string {
  if (reason.place === null) return statusText(reason.status, reason.mark);
  const { decidedBy, own, other, jumpedOff } = reason;
  if (jumpedOff && reason.place === 1) return t('reason.jumpOff');
  const height = localDecimals(own.height);
  switch (other === null ? 'first' : decidedBy) {
    case 'first':
      return t('reason.height', { own: height });
    case 'height':
      return t('reason.heightAgainst', { own: height, other: localDecimals(other!.height) });
    case 'failures at height':
      return t('reason.failuresAt', { height, own: own.failuresAtHeight, other: other!.failuresAtHeight });
    case 'total failures':
      return t('reason.failures', { height, own: own.totalFailures, other: other!.totalFailures });
    case 'jump-off':
      return t('reason.jumpOff');
    case 'equal':
      return t('reason.sharedHeight', { height });
  }
}

function statusText(status: string, mark: string | null): string {
  if (status === 'NM') return t('standing.none');
  const text = tCode('status', status);
  return mark === null ? text : `${text}, ${t('reason.best', { own: localDecimals(mark) })}`;
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
