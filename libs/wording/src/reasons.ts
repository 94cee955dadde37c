import type { Reason, VerticalReason } from '#rules';
import type { ReasonKey, ReasonWords } from './en.js';
import { filled, type Values } from './filled.js';

/** The words of a language, and how it writes the decimals of a mark. */
export interface Writing {
  readonly words: ReasonWords;
  /** Who has no mark takes no more trials; absent: may still take some. */
  readonly isOver?: boolean;
  readonly decimals: (text: string) => string;
}

/** Why a row of a throw or a horizontal jump stands where it stands, without the place itself. */
export function distanceReason(reason: Reason, writing: Writing): string {
  if (reason.place === null) return withoutPlace(reason, writing);
  const { decidedBy, shared, undecidable } = reason;
  const say = sayIn(writing);
  const own = reason.own === null ? null : writing.decimals(reason.own);
  const other = reason.other === null ? null : writing.decimals(reason.other);
  const level = reason.level.map(writing.decimals).join(' · ');
  if (decidedBy === 'equal' || (shared && own === null && other === null)) {
    if (level === '') return say('reason.unmeasured');
    return undecidable ? say('reason.undecidable', { level }) : say('reason.shared', { level });
  }
  if (decidedBy === 'first' || decidedBy === 1) {
    if (own === null) return say('reason.unmeasured');
    return other === null ? say('reason.best', { own }) : say('reason.against', { own, other });
  }
  if (own === null) return say('reason.noFurther', { level, other: other ?? '' });
  return say('reason.level', { level, own, other: other ?? '' });
}

/** The same at a bar. */
export function verticalReason(reason: VerticalReason, writing: Writing): string {
  if (reason.place === null) return withoutPlace(reason, writing);
  const { decidedBy, own, other, jumpedOff } = reason;
  const say = sayIn(writing);
  if (jumpedOff && reason.place === 1) return say('reason.jumpOff');
  const height = writing.decimals(own.height);
  switch (other === null ? 'first' : decidedBy) {
    case 'first':
      return say('reason.height', { own: height });
    case 'height':
      return say('reason.heightAgainst', { own: height, other: writing.decimals(other!.height) });
    case 'failures at height':
      return say('reason.failuresAt', { height, own: own.failuresAtHeight, other: other!.failuresAtHeight });
    case 'total failures':
      return say('reason.failures', { height, own: own.totalFailures, other: other!.totalFailures });
    case 'jump-off':
      return say('reason.jumpOff');
    case 'equal':
      return say('reason.sharedHeight', { height });
  }
}

/** Whatever the event is. */
export function placeReason(reason: Reason | VerticalReason, writing: Writing): string {
  return 'jumpedOff' in reason ? verticalReason(reason, writing) : distanceReason(reason, writing);
}

type Unplaced = Extract<Reason | VerticalReason, { readonly place: null }>;

function withoutPlace({ status, mark }: Unplaced, writing: Writing): string {
  const say = sayIn(writing);
  if (status === 'NM' && !writing.isOver) return say('standing.none');
  const text = say(`status.${status}`);
  return mark === null ? text : `${text}, ${say('reason.best', { own: writing.decimals(mark) })}`;
}

function sayIn({ words }: Writing): (key: ReasonKey, values?: Values) => string {
  return (key, values = {}) => filled(words[key], values);
}
