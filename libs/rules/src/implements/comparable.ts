import type { EventCode } from '../codes.js';
import type { Unit } from '../quantities/mark.js';
import { isThrowEvent, type ThrowEventCode } from './throw-event.js';

/** What a mark was made with. */
export interface MarkContext {
  readonly event: EventCode;
  readonly unit: Unit;
  /** The mass of the implement's category; `null`: not known, or nothing is thrown. */
  readonly implementGrams: number | null;
  /** `YYYY-MM-DD` */
  readonly onDate: string;
}

/** An implement that was changed so much that its marks start anew, without a change of mass. */
interface NewModel {
  readonly event: ThrowEventCode;
  readonly grams: number;
  readonly from: string;
}

/** Javelins whose centre of gravity was moved forward (from memory). */
const NEW_MODELS: readonly NewModel[] = [
  { event: 'javelin', grams: 800, from: '1986-04-01' },
  { event: 'javelin', grams: 600, from: '1999-04-01' },
];

/** Why two marks do not compare as bests. */
export type Incomparable = 'event' | 'unit' | 'implement' | 'implement not known' | 'model of implement';

/**
 * Why one of two marks cannot be a better best than the other; `null`: they compare. Marks made with different
 * implements never do, nor do marks in different units; with an implement that is not known, nothing compares.
 */
export function incomparable(a: MarkContext, b: MarkContext): Incomparable | null {
  if (a.event !== b.event) return 'event';
  if (a.unit !== b.unit) return 'unit';
  if (!isThrowEvent(a.event)) return null;
  if (a.implementGrams === null || b.implementGrams === null) return 'implement not known';
  if (a.implementGrams !== b.implementGrams) return 'implement';
  return modelOf(a) === modelOf(b) ? null : 'model of implement';
}

export function comparable(a: MarkContext, b: MarkContext): boolean {
  return incomparable(a, b) === null;
}

/**
 * Names all marks that compare with each other: `discus/cm/2000`, `javelin/cm/800/1986-04-01`, `long-jump/cm`.
 * `null`: this mark compares with none, since the implement is not known.
 */
export function comparisonClass(mark: MarkContext): string | null {
  if (!isThrowEvent(mark.event)) return `${mark.event}/${mark.unit}`;
  if (mark.implementGrams === null) return null;
  const model = modelOf(mark);
  return `${mark.event}/${mark.unit}/${mark.implementGrams}${model === null ? '' : `/${model}`}`;
}

/** The day from which the model in use was thrown; `null`: there was no other, or it is the one before. */
function modelOf({ event, implementGrams, onDate }: MarkContext): string | null {
  const models = NEW_MODELS.filter(
    (one) => one.event === event && one.grams === implementGrams && one.from <= onDate,
  );
  return models.at(-1)?.from ?? null;
}
