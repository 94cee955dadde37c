import type { EventCode, VerticalEventCode } from '../codes.js';
import { foulsOf } from '../foul-rules.js';
import type { FoulCode } from '../fouls.js';
import type { ImperialStyle } from '../quantities/conversion.js';

type HorizontalJumpCode = 'long-jump' | 'triple-jump';

export type EventKind = 'throw' | 'horizontal-jump' | 'vertical-jump';

/** Marks that competitors of some level reach, in centimetres. What lies outside is worth a second look, no more. */
export interface PlausibleRange {
  readonly minCm: number;
  readonly maxCm: number;
}

/** What one event is, whatever the rule set. */
export interface EventRules {
  readonly code: EventCode;
  readonly kind: EventKind;
  /** Whether a wind belongs to each trial: horizontal jumps, outdoors only. */
  readonly hasWind: (indoor: boolean) => boolean;
  /** Whether something of a set mass is thrown. */
  readonly hasImplement: boolean;
  /** How a metric mark of the event is shown in feet and inches. */
  readonly imperial: Required<ImperialStyle>;
  /** Constructed: from about a small child's mark to a little beyond the best on record with a light implement. */
  readonly plausible: PlausibleRange;
  readonly fouls: readonly FoulCode[];
}

/** What an event file states: the differences. */
export interface EventDifferences<C extends EventCode> {
  readonly code: C;
  readonly plausible: PlausibleRange;
  /** Long throws are listed in whole inches, the others in quarter inches. */
  readonly listedIn?: ImperialStyle['step'];
}

export function throwEvent(
  event: EventDifferences<Exclude<EventCode, VerticalEventCode | HorizontalJumpCode>>,
): EventRules {
  return shape(event, 'throw');
}

export function horizontalJump(event: EventDifferences<HorizontalJumpCode>): EventRules {
  return shape(event, 'horizontal-jump');
}

export function verticalJump(event: EventDifferences<VerticalEventCode>): EventRules {
  return shape(event, 'vertical-jump');
}

function shape(event: EventDifferences<EventCode>, kind: EventKind): EventRules {
  return {
    code: event.code,
    kind,
    hasWind: (indoor) => kind === 'horizontal-jump' && !indoor,
    hasImplement: kind === 'throw',
    imperial: {
      step: event.listedIn ?? 'quarter',
      kind: kind === 'vertical-jump' ? 'vertical' : 'other',
      method: 'list',
    },
    plausible: event.plausible,
    fouls: foulsOf(event.code).map((foul) => foul.code),
  };
}
