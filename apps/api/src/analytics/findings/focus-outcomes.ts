import { assessedThrows, focusFollowUp, type FocusWindow } from '#technique';
import { intervalOf, refusedOf, type OpenInterval, type Refused } from './answers.js';
import { assessedIds, seenOf, type Seen } from './fault-findings.js';
import { occasionOf } from './series-of.js';
import { dayOf, type AnalysisTask, type FocusAsked } from './task.js';

export interface FocusOutcome {
  readonly focusId: string;
  readonly code: string;
  readonly how: FocusAsked['how'];
  readonly what: string | null;
  readonly from: string;
  readonly to: string | null;
  /** In the four weeks before. */
  readonly before: Seen;
  readonly windows: readonly {
    readonly window: FocusWindow;
    readonly seen: Seen;
    /** Share now less share before; negative is fewer. */
    readonly difference: number | null;
    readonly interval: OpenInterval | null;
    readonly refused: Refused | null;
  }[];
}

/** Whether what was worked on changed, and held: of each focus of the event. */
export function focusOutcomes(task: AnalysisTask): readonly FocusOutcome[] {
  const inMeets = new Set(
    task.throws.filter(({ thrownIn }) => thrownIn === 'competition').map(({ occasion }) => occasion),
  );
  return task.focuses.map((focus) => {
    const { series } = assessedThrows(task, focus.code, 'prevalence');
    const period = {
      ...{ code: focus.code, how: focus.how, fromDay: dayOf(focus.from) },
      toDay: focus.to === null ? null : dayOf(focus.to),
    };
    const { before, windows } = focusFollowUp(period, series, (one) => inMeets.has(occasionOf(one)));
    const attempts = assessedIds(focus.code, task);
    const { id: focusId, code, how, what, from, to } = focus;
    return {
      ...{ focusId, code, how, what, from, to, before: seenOf(before, attempts) },
      windows: windows.map(({ window, seen, change }) => ({
        ...{ window, seen: seenOf(seen, attempts) },
        difference: change.kind === 'answer' ? change.difference : null,
        interval: change.kind === 'answer' ? intervalOf(change.interval) : null,
        refused: change.kind === 'answer' ? null : refusedOf(change),
      })),
    };
  });
}
