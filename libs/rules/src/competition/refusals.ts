import { eventOf } from '../events/event.js';
import { MAX_MARK } from '../quantities/mark.js';
import { MAX_WIND_TENTHS } from '../quantities/wind.js';
import { ruleSet } from '../rule-sets/index.js';
import { needsRuling } from './activity.js';
import { progressOf } from './calls.js';
import type { Entry, EntryKind, Judgement } from './entry.js';
import type { CompetitionState, JournalItem } from './state.js';
import { RULED_HOLDS, type HoldCode, type RefusalCode } from './verdict.js';

/** The fault found and the part of the entry that has it (`null` = the whole). */
export interface Fault {
  readonly code: RefusalCode;
  readonly field: string | null;
}

const DECISIONS: ReadonlySet<EntryKind> = new Set([
  'ruling',
  'disqualification',
  'reinstatement',
  'admission',
  'sign-off',
  'reopening',
]);
/** What cannot happen to an official result, not even as a question: it has to be reopened first. */
const NOT_ON_OFFICIAL: ReadonlySet<EntryKind> = new Set([
  'ruling',
  'start',
  'disqualification',
  'reinstatement',
  'admission',
  'order',
]);

interface Context {
  readonly state: CompetitionState;
  readonly items: ReadonlyMap<string, JournalItem>;
}
type Check = (context: Context, entry: Entry) => string | null | undefined;

/**
 * The first reason, in order of precedence, why an entry can never be right; `undefined` when there is none. A check
 * answers with the field at fault (`null` = the whole entry) or `undefined`.
 */
export function faultOf(state: CompetitionState, entry: Entry): Fault | undefined {
  const context: Context = { state, items: new Map(state.journal.map((item) => [item.entry.id, item])) };
  for (const [code, check] of CHECKS) {
    const field = check(context, entry);
    if (field !== undefined) return { code, field };
  }
  return undefined;
}

const CHECKS: readonly (readonly [RefusalCode, Check])[] = [
  ['ID_REUSED', ({ items }, entry) => fault(items.has(entry.id), 'id')],
  ['NOT_ALLOWED', (_, entry) => fault(entry.by === 'official' && DECISIONS.has(entry.kind), null)],
  ['RESULT_OFFICIAL', ({ state }, entry) => fault(state.signedOff && NOT_ON_OFFICIAL.has(entry.kind), null)],
  ['UNKNOWN_COMPETITOR', unknownCompetitor],
  ['UNKNOWN_ENTRY', ({ items }, entry) => targetField(entry, (id) => !items.has(id))],
  ['WRONG_KIND_OF_ENTRY', wrongKind],
  ['NOT_IN_FORCE', notInForce],
  ['NO_QUESTION', noQuestion],
  ['NOT_BY_RULING', notByRuling],
  ['REASON_MISSING', reasonMissing],
  ['ROUND_NOT_IN_PLAN', roundNotInPlan],
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
  ['HAS_TRIALS', hasTrials],
  ['NAMED_TWICE', namedTwice],
  [
    'OPEN_QUESTIONS',
    ({ state }, entry) => fault(entry.kind === 'sign-off' && state.questions.length > 0, null),
  ],
  ['NOT_COMPLETE', notComplete],
  ['ALREADY_SO', alreadySo],
];

function fault(wrong: boolean, field: string | null): string | null | undefined {
  return wrong ? field : undefined;
}

function judged(
  entry: Entry,
  check: (judgement: Judgement) => string | null | undefined,
): string | null | undefined {
  return entry.kind === 'attempt' || entry.kind === 'correction' ? check(entry) : undefined;
}

function unknownCompetitor({ state }: Context, entry: Entry): string | undefined {
  const known = new Set(state.setup.competitors.map((competitor) => competitor.key));
  if (entry.kind === 'move')
    return (
      fault(
        entry.moves.some((m) => !known.has(m.competitor)),
        'moves',
      ) ?? undefined
    );
  if (entry.kind === 'order')
    return (
      fault(
        entry.competitors.some((key) => !known.has(key)),
        'competitors',
      ) ?? undefined
    );
  return 'competitor' in entry && !known.has(entry.competitor) ? 'competitor' : undefined;
}

/** The ids that an entry names, with the field that names them. */
export function targetsOf(entry: Entry): { readonly field: string; readonly ids: readonly string[] } {
  switch (entry.kind) {
    case 'wind':
    case 'correction':
    case 'replacement':
      return { field: 'attempt', ids: [entry.attempt] };
    case 'reversal':
    case 'ruling':
      return { field: 'entry', ids: [entry.entry] };
    case 'move':
      return { field: 'moves', ids: entry.moves.map((move) => move.attempt) };
    default:
      return { field: '', ids: [] };
  }
}

function targetField(entry: Entry, wrong: (id: string) => boolean): string | undefined {
  const { field, ids } = targetsOf(entry);
  return ids.some(wrong) ? field : undefined;
}

function wrongKind({ items }: Context, entry: Entry): string | undefined {
  if (entry.kind === 'ruling') return undefined;
  return targetField(entry, (id) => {
    const kind = items.get(id)!.entry.kind;
    return entry.kind === 'reversal' ? kind === 'sign-off' || kind === 'reopening' : kind !== 'attempt';
  });
}

/** An entry that is held, taken back, struck or dismissed cannot be changed further. */
function notInForce({ state, items }: Context, entry: Entry): string | undefined {
  if (entry.kind === 'ruling') return targetField(entry, (id) => state.activity.reversed.has(id));
  return targetField(entry, (id) => {
    const item = items.get(id)!;
    if (state.activity.reversed.has(id)) return true;
    if (needsRuling(item) && state.activity.rulings.get(id)?.decision !== 'count') return true;
    const standing = state.attempts.get(id)?.standing;
    const gone = standing === 'struck' || standing === 'displaced' || standing === 'dismissed';
    return entry.kind !== 'reversal' && gone;
  });
}

function noQuestion({ state, items }: Context, entry: Entry): string | undefined {
  if (entry.kind !== 'ruling') return undefined;
  const item = items.get(entry.entry)!;
  const open = state.questions.some((question) => question.entry === entry.entry);
  const ruledBefore = state.activity.rulings.has(entry.entry);
  return open || ruledBefore || needsRuling(item) ? undefined : 'entry';
}

/** A trial held for something missing counts when that comes in; a ruling cannot supply it. */
function notByRuling({ state }: Context, entry: Entry): string | undefined {
  if (entry.kind !== 'ruling' || entry.decision !== 'count') return undefined;
  const standing = state.attempts.get(entry.entry)?.standing;
  const held = standing !== undefined && !['counts', 'struck', 'displaced', 'dismissed'].includes(standing);
  return held && !RULED_HOLDS.has(standing as HoldCode) ? 'decision' : undefined;
}

function reasonMissing(_: Context, entry: Entry): string | undefined {
  if (entry.kind === 'disqualification' && entry.rule.trim() === '') return 'rule';
  if (entry.kind === 'sign-off') return entry.incomplete?.trim() === '' ? 'incomplete' : undefined;
  return 'reason' in entry && entry.reason.trim() === '' ? 'reason' : undefined;
}

function roundNotInPlan({ state }: Context, entry: Entry): string | undefined {
  const wrong = (round: number): boolean =>
    !Number.isSafeInteger(round) || round < 1 || round > state.setup.plan.rounds;
  if (entry.kind === 'move') return entry.moves.some((move) => wrong(move.round)) ? 'moves' : undefined;
  return (entry.kind === 'attempt' || entry.kind === 'order') && wrong(entry.round) ? 'round' : undefined;
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

function hasTrials({ state }: Context, entry: Entry): string | undefined {
  if (entry.kind !== 'start' || entry.status !== 'DNS') return undefined;
  const own = state.competitors.find((competitor) => competitor.key === entry.competitor)!;
  return own.series.some((id) => id !== null) ? 'status' : undefined;
}

function namedTwice(_: Context, entry: Entry): string | undefined {
  const twice = (names: readonly string[]): boolean => new Set(names).size < names.length;
  if (entry.kind === 'move') return twice(entry.moves.map((move) => move.attempt)) ? 'moves' : undefined;
  return entry.kind === 'order' && twice(entry.competitors) ? 'competitors' : undefined;
}

function notComplete({ state }: Context, entry: Entry): string | undefined {
  if (entry.kind !== 'sign-off' || entry.incomplete !== null || state.signedOff) return undefined;
  return progressOf(state).remaining > 0 ? 'incomplete' : undefined;
}

function alreadySo({ state }: Context, entry: Entry): string | null | undefined {
  switch (entry.kind) {
    case 'start': {
      const own = state.competitors.find((competitor) => competitor.key === entry.competitor)!;
      return fault((own.status === 'DNS') === (entry.status === 'DNS'), 'status');
    }
    case 'disqualification':
    case 'reinstatement': {
      const own = state.competitors.find((competitor) => competitor.key === entry.competitor)!;
      return fault((own.status === 'DQ') === (entry.kind === 'disqualification'), 'competitor');
    }
    case 'sign-off':
      return fault(state.signedOff, null);
    case 'reopening':
      return fault(!state.signedOff, null);
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
    case 'ruling':
      return fault(state.activity.rulings.get(entry.entry)?.decision === entry.decision, 'decision');
    case 'admission': {
      const bib = state.competitors.find((competitor) => competitor.key === entry.competitor)!.bib;
      return fault(
        state.card.admitted.some((a) => a.bib === bib && a.after === entry.after),
        'competitor',
      );
    }
    default:
      return undefined;
  }
}

function sameJudgement(now: Judgement | undefined, then: Judgement): boolean {
  if (!now) return false;
  const keys = ['outcome', 'mark', 'wind', 'foul', 'protested', 'implementGrams'] as const;
  return keys.every(
    (key) => now[key] === then[key] || ((key === 'wind' || key === 'implementGrams') && then[key] === null),
  );
}
