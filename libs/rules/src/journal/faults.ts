import { isLetIn, needsRuling } from './activity.js';
import type { AnyEntry, AnyEntryKind } from './any-entry.js';
import type { RulingEntry } from './entry.js';
import type { JournalItem } from './journal-item.js';
import type { JournalState, ListedCompetitor } from './journal-state.js';
import { isAboutList } from './list-entry.js';
import { safetyChecklist } from '../safety/checklist.js';
import { waitsUntil } from '../safety/interruption.js';
import { isAmendment, isTrial, targetsOf } from './targets.js';
import { RULED_HOLDS, type HoldCode, type RefusalCode } from './verdict.js';

/** The fault found and the part of the entry that has it (`null` = the whole). */
export interface Fault {
  readonly code: RefusalCode;
  readonly field: string | null;
}

export interface FaultContext<S extends JournalState = JournalState> {
  readonly state: S;
  readonly items: ReadonlyMap<string, JournalItem<AnyEntry>>;
}

/** Answers with the field at fault (`null` = the whole entry) or `undefined`. */
export type Check<S extends JournalState = JournalState, E extends AnyEntry = AnyEntry> = (
  context: FaultContext<S>,
  entry: E,
) => string | null | undefined;

export type CodedCheck<S extends JournalState = JournalState, E extends AnyEntry = AnyEntry> = readonly [
  RefusalCode,
  Check<S, E>,
];

/** The first reason, in order of precedence, why an entry can never be right; `undefined` when there is none. */
export function firstFault<S extends JournalState, E extends AnyEntry>(
  state: S,
  entry: E,
  checks: readonly CodedCheck<S, E>[],
): Fault | undefined {
  const context = { state, items: new Map(state.journal.map((item) => [item.entry.id, item])) };
  for (const [code, check] of checks) {
    const field = check(context, entry);
    if (field !== undefined) return { code, field };
  }
  return undefined;
}

export function fault(wrong: boolean, field: string | null): string | null | undefined {
  return wrong ? field : undefined;
}

const DECISIONS: ReadonlySet<AnyEntryKind> = new Set([
  'ruling',
  'disqualification',
  'reinstatement',
  'admission',
  'sign-off',
  'reopening',
  'match',
]);
/** What is refused in every event, before what belongs to one. */
export const FIRST_CHECKS: readonly CodedCheck[] = [
  ['ID_REUSED', ({ items }, entry) => fault(items.has(entry.id), 'id')],
  ['NOT_ALLOWED', notAllowed],
  ['RESULT_OFFICIAL', ({ state }, entry) => fault(state.signedOff && needsOpenResult(entry), null)],
  ['UNKNOWN_COMPETITOR', unknownCompetitor],
  ['UNKNOWN_ENTRY', ({ items }, entry) => targetField(entry, (id) => !items.has(id))],
  ['WRONG_KIND_OF_ENTRY', wrongKind],
  ['NOT_IN_FORCE', notInForce],
  ['NO_QUESTION', noQuestion],
  ['NOT_BY_RULING', notByRuling],
  ['REASON_MISSING', reasonMissing],
];

/** An official neither decides nor shortens the wait after lightning. */
function notAllowed(_: FaultContext, entry: AnyEntry): string | null | undefined {
  if (entry.by !== 'official') return undefined;
  if (entry.kind === 'all-clear') return fault(entry.despite !== null, 'despite');
  return fault(DECISIONS.has(entry.kind), null);
}

const SEEN: ReadonlySet<AnyEntryKind> = new Set(['bar', 'implement-query', 'note']);

/** What was seen on the field, or changes it, comes in as a question; all else waits until the result is reopened. */
function needsOpenResult(entry: AnyEntry): boolean {
  const seen = isTrial(entry.kind) || SEEN.has(entry.kind) || isAmendment(entry);
  return !seen && entry.kind !== 'reopening' && entry.kind !== 'sign-off';
}

function unknownCompetitor({ state }: FaultContext, entry: AnyEntry): string | undefined {
  const known = new Set(state.setup.competitors.map(({ key }) => key));
  if ('moves' in entry) return entry.moves.every((move) => known.has(move.competitor)) ? undefined : 'moves';
  if ('bibs' in entry) return entry.bibs.every((line) => known.has(line.competitor)) ? undefined : 'bibs';
  if ('competitors' in entry)
    return entry.competitors.every((key) => known.has(key)) ? undefined : 'competitors';
  if (!('competitor' in entry) || entry.competitor === null) return undefined;
  return known.has(entry.competitor) ? undefined : 'competitor';
}

function targetField(entry: AnyEntry, wrong: (id: string) => boolean): string | undefined {
  const { field, ids } = targetsOf(entry);
  return ids.some(wrong) ? field : undefined;
}

/** A signature ends otherwise; a change of the start list is put right by another one. */
const NOT_TAKEN_BACK: ReadonlySet<AnyEntryKind> = new Set(['sign-off', 'reopening']);

function wrongKind({ items }: FaultContext, entry: AnyEntry): string | undefined {
  if (entry.kind === 'ruling') return undefined;
  return targetField(entry, (id) => {
    const { kind } = items.get(id)!.entry;
    return entry.kind === 'reversal' ? NOT_TAKEN_BACK.has(kind) || isAboutList(kind) : !isTrial(kind);
  });
}

/** An entry that is held, taken back, struck or dismissed cannot be changed further. */
function notInForce({ state, items }: FaultContext, entry: AnyEntry): string | undefined {
  const { reversed } = state.activity;
  if (entry.kind === 'ruling') return targetField(entry, (id) => reversed.has(id));
  return targetField(entry, (id) => {
    const item = items.get(id)!;
    if (reversed.has(id)) return true;
    if (needsRuling(item) && !isLetIn(state.activity, item)) return true;
    const standing = state.attempts.get(id)?.standing;
    const gone = standing === 'struck' || standing === 'displaced' || standing === 'dismissed';
    return entry.kind !== 'reversal' && gone;
  });
}

function noQuestion({ state, items }: FaultContext, entry: AnyEntry): string | undefined {
  if (entry.kind !== 'ruling') return undefined;
  const item = items.get(entry.entry)!;
  const open = state.questions.some((question) => question.entry === entry.entry);
  const ruledBefore = state.activity.rulings.has(entry.entry);
  return open || ruledBefore || needsRuling(item) ? undefined : 'entry';
}

/** A trial held for something missing counts when that comes in; a ruling cannot supply it. */
function notByRuling({ state }: FaultContext, entry: AnyEntry): string | undefined {
  if (entry.kind !== 'ruling' || entry.decision !== 'count') return undefined;
  const standing = state.attempts.get(entry.entry)?.standing;
  const held = standing !== undefined && !['counts', 'struck', 'displaced', 'dismissed'].includes(standing);
  return held && !RULED_HOLDS.has(standing as HoldCode) ? 'decision' : undefined;
}

function reasonMissing(_: FaultContext, entry: AnyEntry): string | undefined {
  if (entry.kind === 'disqualification' && entry.rule.trim() === '') return 'rule';
  if (entry.kind === 'sign-off') {
    if (entry.incomplete?.trim() === '') return 'incomplete';
    return entry.despite?.trim() === '' ? 'despite' : undefined;
  }
  if (entry.kind === 'all-clear') return entry.despite?.trim() === '' ? 'despite' : undefined;
  if (entry.kind === 'note') return entry.text.trim() === '' ? 'text' : undefined;
  return 'reason' in entry && entry.reason.trim() === '' ? 'reason' : undefined;
}

/** What is refused in every event, after what belongs to one. A sign-off without a reason asks `isComplete`. */
export function lastChecks<S extends JournalState>(
  isComplete: (state: S) => boolean,
): readonly CodedCheck<S>[] {
  return [
    ['CHECKS_MISSING', checksMissing],
    ['WAIT_NOT_OVER', waitNotOver],
    ['HAS_TRIALS', hasTrials],
    ['NAMED_TWICE', namedTwice],
    ['BIB_TAKEN', bibTaken],
    ['FLIGHT_UNKNOWN', flightUnknown],
    ['UNMATCHED', ({ state }, entry) => fault(entry.kind === 'sign-off' && hasUnmatched(state), null)],
    [
      'OPEN_QUESTIONS',
      ({ state }, entry) => fault(entry.kind === 'sign-off' && state.questions.length > 0, null),
    ],
    [
      'NOT_COMPLETE',
      ({ state }, entry) => {
        const whole = entry.kind === 'sign-off' && entry.incomplete === null && !state.signedOff;
        return fault(whole && !isComplete(state), 'incomplete');
      },
    ],
    ['ALREADY_SO', alreadySo],
  ];
}

function checksMissing({ state }: FaultContext, entry: AnyEntry): string | null | undefined {
  if (entry.kind !== 'all-clear') return undefined;
  const confirmed = new Set(entry.confirmed);
  const open = safetyChecklist(state.setup.event).filter(({ code }) => !confirmed.has(code));
  return fault(open.length > 0, 'confirmed');
}

function waitNotOver({ state }: FaultContext, entry: AnyEntry): string | null | undefined {
  if (entry.kind !== 'all-clear' || entry.despite !== null) return undefined;
  const until = waitsUntil(state.safety.stops, state.setup.rules);
  return fault(until !== null && entry.clearedAt < until, 'clearedAt');
}

function hasTrials({ state }: FaultContext, entry: AnyEntry): string | null | undefined {
  const isFlight = entry.kind === 'flight';
  if (!isFlight && (entry.kind !== 'start' || entry.status !== 'DNS')) return undefined;
  const own = [...state.attempts.values()].filter(({ competitor }) => competitor === entry.competitor);
  return fault(
    own.some(({ standing }) => standing === 'counts'),
    isFlight ? 'competitor' : 'status',
  );
}

/** Everybody else keeps the bib; who gets one that is worn already has to give his own away in the same entry. */
function bibTaken({ state }: FaultContext, entry: AnyEntry): string | undefined {
  if (entry.kind !== 'bibs') return undefined;
  const given = new Map(entry.bibs.map(({ competitor, bib }) => [competitor, bib]));
  const worn = state.setup.competitors.map(({ key, bib }) => given.get(key) ?? bib);
  return new Set(worn).size < worn.length ? 'bibs' : undefined;
}

function flightUnknown({ state }: FaultContext, entry: AnyEntry): string | undefined {
  if (entry.kind !== 'flight') return undefined;
  return state.setup.competitors.some(({ flight }) => flight === entry.flight) ? undefined : 'flight';
}

function hasUnmatched({ setup }: JournalState): boolean {
  return setup.competitors.some(({ unmatched }) => unmatched === true);
}

function namedTwice(_: FaultContext, entry: AnyEntry): string | null | undefined {
  const twice = (names: readonly string[]): boolean => new Set(names).size < names.length;
  if ('moves' in entry) return fault(twice(entry.moves.map((move) => move.attempt)), 'moves');
  if ('bibs' in entry) return fault(twice(entry.bibs.map((line) => line.competitor)), 'bibs');
  return 'competitors' in entry ? fault(twice(entry.competitors), 'competitors') : undefined;
}

function alreadySo({ state }: FaultContext, entry: AnyEntry): string | null | undefined {
  const status = (key: string) => state.competitors.find((competitor) => competitor.key === key)!.status;
  switch (entry.kind) {
    case 'start':
      return fault((status(entry.competitor) === 'DNS') === (entry.status === 'DNS'), 'status');
    case 'disqualification':
      return fault(status(entry.competitor) === 'DQ', 'competitor');
    case 'reinstatement':
      return fault(status(entry.competitor) !== 'DQ', 'competitor');
    case 'excuse':
      return fault(entry.to === null && !state.away.has(entry.competitor), 'to');
    case 'bibs':
      return fault(
        entry.bibs.every(({ competitor, bib }) => lineOf(state, competitor).bib === bib),
        'bibs',
      );
    case 'flight':
      return fault(lineOf(state, entry.competitor).flight === entry.flight, 'flight');
    case 'sign-off':
      return fault(state.signedOff, null);
    case 'reopening':
      return fault(!state.signedOff, null);
    case 'ruling':
      return fault(ruledSo(state, entry), 'decision');
    case 'admission': {
      const { bib } = lineOf(state, entry.competitor);
      return fault(
        state.card.admitted.some((a) => a.bib === bib && a.after === entry.after),
        'competitor',
      );
    }
    default:
      return undefined;
  }
}

function lineOf({ setup }: JournalState, competitor: string): ListedCompetitor {
  return setup.competitors.find(({ key }) => key === competitor)!;
}

/** A trial may come into question again after a ruling: then the same decision is another one. */
function ruledSo({ activity, questions }: JournalState, ruling: RulingEntry): boolean {
  const isOpen = questions.some((question) => question.entry === ruling.entry);
  return !isOpen && activity.rulings.get(ruling.entry)?.decision === ruling.decision;
}
