import { formatMark } from '#rules';
import { readTyped } from '../../ui/typed.js';
import type { Thrown } from '../keeping/database.js';
import type { Checklist } from '../shapes.js';

/** What was seen of one point: how far off it was, that it was not there, or that nobody looked. */
export type Seen = 0 | 1 | 2 | 3 | 'unseen';

/** One throw as it is being written down. */
export interface Draft {
  readonly seen: Readonly<Record<string, Seen>>;
  readonly mark: string;
  readonly isMeasured: boolean;
  readonly isFoul: boolean;
  readonly foul: string | null;
  /** A mark stood there before the first point was noted. */
  readonly markWasKnown: boolean;
  readonly note: string;
}

export const EMPTY_DRAFT: Draft = {
  ...{ seen: {}, mark: '', isMeasured: true, isFoul: false, foul: null, markWasKnown: false, note: '' },
};

/** Notes a point; the same answer again takes it back. */
export function noted(draft: Draft, code: string, seen: Seen): Draft {
  const isFirst = Object.keys(draft.seen).length === 0;
  const { [code]: before, ...others } = draft.seen;
  return {
    ...draft,
    seen: before === seen ? others : { ...draft.seen, [code]: seen },
    markWasKnown: isFirst ? draft.mark.trim() !== '' : draft.markWasKnown,
  };
}

/** What stands for the points that nothing was noted of. Nothing is taken for absent that nobody looked at. */
export type Rest = 'not-there' | 'unseen';

export interface ThrowOf {
  readonly athleteId: string;
  readonly thrown: Thrown;
  readonly checklist: Checklist | null;
  /** What is looked at today. */
  readonly codes: readonly string[];
  readonly round: number;
  readonly ids: { readonly throwId: string; readonly observationId: string };
  readonly nowMs: number;
}

/** In metres with two decimals; null: there is none. */
export function markOf({ mark, isFoul }: Draft): string | null {
  const typed = readTyped(isFoul ? '' : mark, 'cm');
  return typed.kind === 'mark' ? formatMark(typed.value, 'cm') : null;
}

/** Something was typed that is no mark. */
export function isUnreadable({ mark, isFoul }: Draft): boolean {
  return !isFoul && !['mark', 'nothing'].includes(readTyped(mark, 'cm').kind);
}

/** The throw as the server takes it. */
export function throwInput(draft: Draft, rest: Rest, of: ThrowOf): Readonly<Record<string, unknown>> {
  const { thrown, ids } = of;
  return {
    ...{ id: ids.throwId, athleteId: of.athleteId, event: thrown.event, variant: thrown.variant },
    ...{ implementGrams: thrown.implementGrams, round: of.round, outcome: draft.isFoul ? 'FOUL' : 'VALID' },
    ...{ mark: markOf(draft), isMeasured: draft.isMeasured, foul: draft.foul },
    effortPercent: thrown.effortPercent,
    observation: observationOf(draft, rest, of),
  };
}

function observationOf(draft: Draft, rest: Rest, { codes, checklist, ids, nowMs }: ThrowOf) {
  const scope = codes.filter((code) => (draft.seen[code] ?? (rest === 'unseen' ? 'unseen' : 0)) !== 'unseen');
  if (scope.length === 0) return null;
  const isWhole = checklist !== null && scope.length === checklist.codes.length;
  return {
    ...{ id: ids.observationId, observedAt: new Date(nowMs).toISOString(), method: 'LIVE' },
    ...{ markKnown: draft.markWasKnown, scope, note: draft.note.trim() || null },
    checklist: isWhole ? { name: checklist.name, version: checklist.version } : null,
    marks: scope.flatMap((code) => {
      const severity = draft.seen[code] ?? 0;
      return severity === 'unseen' || severity === 0 ? [] : [{ code, severity }];
    }),
  };
}
