import { eventOf } from '../events/event.js';
import {
  fault,
  FIRST_CHECKS,
  firstFault,
  lastChecks,
  type CodedCheck,
  type Fault,
  type FaultContext,
} from '../journal/faults.js';
import { MAX_MARK } from '../quantities/mark.js';
import { MAX_WIND_TENTHS } from '../quantities/wind.js';
import { ruleSet } from '../rule-sets/index.js';
import { progressOf } from './calls.js';
import type { Entry, Judgement } from './entry.js';
import { isAfterTheFact, isOrderFixed } from './order-change.js';
import type { CompetitionState } from './state.js';

/** The first reason, in order of precedence, why an entry can never be right; `undefined` when there is none. */
export function faultOf(state: CompetitionState, entry: Entry): Fault | undefined {
  return firstFault(state, entry, CHECKS);
}

type Context = FaultContext<CompetitionState>;

const CHECKS: readonly CodedCheck<CompetitionState, Entry>[] = [
  ...FIRST_CHECKS,
  ['ROUND_NOT_IN_PLAN', roundNotInPlan],
  ['LAST_ROUND_ORDER', lastRoundOrder],
  ['CUT_NOT_IN_PLAN', cutNotInPlan],
  [
    'MARK_MISSING',
    (_, entry) => judged(entry, (j) => fault(j.outcome === 'valid' && j.mark === null, 'mark')),
  ],
  ['MARK_NOT_EXPECTED', (_, entry) => judged(entry, markNotExpected)],
  ['MARK_OUT_OF_RANGE', ({ state }, entry) => judged(entry, (j) => markOutOfRange(state, j))],
  ['WIND_NOT_MEASURED', windNotMeasured],
  ['WIND_NOT_EXPECTED', (_, entry) => judged(entry, windNotExpected)],
  ['WIND_OUT_OF_RANGE', windOutOfRange],
  ['FOUL_NOT_OF_EVENT', ({ state }, entry) => judged(entry, (j) => foulNotOfEvent(state, j))],
  ...lastChecks<CompetitionState>((state) => progressOf(state).remaining === 0),
  ['ALREADY_SO', alreadySo],
];

function judged(
  entry: Entry,
  check: (judgement: Judgement) => string | null | undefined,
): string | null | undefined {
  return entry.kind === 'attempt' || entry.kind === 'correction' ? check(entry) : undefined;
}

function roundNotInPlan({ state }: Context, entry: Entry): string | undefined {
  const wrong = (round: number): boolean =>
    !Number.isSafeInteger(round) || round < 1 || round > state.setup.plan.rounds;
  if (entry.kind === 'move') return entry.moves.some((move) => wrong(move.round)) ? 'moves' : undefined;
  return (entry.kind === 'attempt' || entry.kind === 'order') && wrong(entry.round) ? 'round' : undefined;
}

/** An order that is still to be called is a decision and can be taken otherwise; one that was called has happened. */
function lastRoundOrder({ state }: Context, entry: Entry): string | null | undefined {
  if (entry.kind !== 'order') return undefined;
  return fault(isOrderFixed(state, entry) && !isAfterTheFact(state, entry), 'round');
}

function cutNotInPlan({ state: { setup } }: Context, entry: Entry): string | undefined {
  if (entry.kind !== 'admission') return undefined;
  const right =
    setup.stage === 'qualification'
      ? entry.after === null
      : setup.plan.cuts.some((cut) => cut.after === entry.after);
  return right ? undefined : 'after';
}

function markNotExpected(judgement: Judgement): string | undefined {
  if (judgement.mark !== null && judgement.outcome !== 'valid') return 'mark';
  return judgement.protested !== null && judgement.outcome !== 'foul' ? 'protested' : undefined;
}

function markOutOfRange({ setup }: CompetitionState, judgement: Judgement): string | undefined {
  const wrong = (mark: number | null): boolean =>
    mark !== null && !(Number.isSafeInteger(mark) && mark > 0 && mark <= MAX_MARK[setup.unit]);
  if (wrong(judgement.mark)) return 'mark';
  if (wrong(judgement.protested)) return 'protested';
  const grams = judgement.implementGrams;
  return grams !== null && !(Number.isSafeInteger(grams) && grams > 0) ? 'implementGrams' : undefined;
}

function windNotMeasured({ state: { setup } }: Context, entry: Entry): string | undefined {
  if (eventOf(setup.event).hasWind(setup.indoor)) return undefined;
  if (entry.kind === 'wind') return 'wind';
  return judged(entry, (judgement) => fault(judgement.wind !== null, 'wind')) ?? undefined;
}

function windNotExpected({ outcome, wind }: Judgement): string | undefined {
  return wind !== null && outcome !== 'valid' && outcome !== 'foul' ? 'wind' : undefined;
}

function windOutOfRange(_: Context, entry: Entry): string | undefined {
  if (!('wind' in entry) || typeof entry.wind !== 'number') return undefined;
  const right = Number.isSafeInteger(entry.wind) && Math.abs(entry.wind) <= MAX_WIND_TENTHS;
  return right && !Object.is(entry.wind, -0) ? undefined : 'wind';
}

function foulNotOfEvent({ setup }: CompetitionState, { outcome, foul }: Judgement): string | undefined {
  if (foul === null) return undefined;
  const known = ruleSet(setup.rules, setup.edition).fouls[setup.event];
  return outcome === 'foul' && known.some((cited) => cited.value === foul) ? undefined : 'foul';
}

function alreadySo({ state }: Context, entry: Entry): string | null | undefined {
  switch (entry.kind) {
    case 'correction':
      return fault(sameJudgement(state.attempts.get(entry.attempt)?.judgement, entry), null);
    case 'move':
      return fault(
        entry.moves.every((move) => {
          const attempt = state.attempts.get(move.attempt);
          return attempt?.competitor === move.competitor && attempt.round === move.round;
        }),
        'moves',
      );
    default:
      return undefined;
  }
}

/** What a correction may leave out, to stay as it was known. */
const LEFT_OUT: ReadonlySet<string> = new Set(['wind', 'implementGrams', 'implementId']);

function isLeftOut(value: unknown): boolean {
  return value === null || value === undefined;
}

function sameJudgement(now: Judgement | undefined, then: Judgement): boolean {
  if (!now) return false;
  const keys = ['outcome', 'mark', 'wind', 'foul', 'protested', 'implementGrams', 'implementId'] as const;
  return keys.every((key) => now[key] === then[key] || (LEFT_OUT.has(key) && isLeftOut(then[key])));
}
