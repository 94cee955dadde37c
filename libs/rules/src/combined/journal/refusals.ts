import type { Wind } from '../../quantities/wind.js';
import { MAX_WIND_TENTHS } from '../../quantities/wind.js';
import { windEventsOf } from '../combined-wind.js';
import { isTrackEvent, type CombinedEventCode } from '../scoring-table.js';
import { isComplete } from './complete.js';
import type { CombinedEntry, CombinedEntryKind, CombinedPerformance } from './entry.js';
import { corrected, RULED_COMBINED_HOLDS } from './project.js';
import type { CombinedEventState, CombinedItem } from './state.js';
import type { CombinedRefusalCode } from './verdict.js';

/** The fault found and the part of the entry that has it (`null` = the whole). */
export interface CombinedFault {
  readonly code: CombinedRefusalCode;
  readonly field: string | null;
}

interface Context {
  readonly state: CombinedEventState;
  readonly items: ReadonlyMap<string, CombinedItem>;
}

/** Answers with the field at fault (`null` = the whole entry) or `undefined`. */
type Check = (context: Context, entry: CombinedEntry) => string | null | undefined;

/** The first reason, in order of precedence, why an entry can never be right; `undefined` when there is none. */
export function combinedFaultOf(state: CombinedEventState, entry: CombinedEntry): CombinedFault | undefined {
  const context = { state, items: new Map(state.journal.map((item) => [item.entry.id, item])) };
  for (const [code, check] of CHECKS) {
    const field = check(context, entry);
    if (field !== undefined) return { code, field };
  }
  return undefined;
}

const CHECKS: readonly (readonly [CombinedRefusalCode, Check])[] = [
  ['ID_REUSED', ({ items }, { id }) => fault(items.has(id), 'id')],
  ['NOT_ALLOWED', (_, entry) => fault(entry.by === 'official' && DECISIONS.has(entry.kind), null)],
  ['RESULT_OFFICIAL', ({ state }, { kind }) => fault(state.signedOff && NEEDS_OPEN.has(kind), null)],
  ['UNKNOWN_ENTRANT', unknownEntrant],
  ['UNKNOWN_EVENT', unknownEvent],
  ['COMPONENT_LINKED', componentLinked],
  ['UNKNOWN_ENTRY', ({ items }, entry) => targetFault(entry, (id) => !items.has(id))],
  ['WRONG_KIND_OF_ENTRY', wrongKind],
  ['NOT_IN_FORCE', notInForce],
  ['NO_QUESTION', noQuestion],
  ['NOT_BY_RULING', notByRuling],
  ['REASON_MISSING', reasonMissing],
  ['OUTCOME_NOT_OF_EVENT', outcomeNotOfEvent],
  ['MARK_MISSING', (_, entry) => performed(entry, (p) => fault(isWithout(p, 'valid'), 'hundredths'))],
  ['MARK_NOT_EXPECTED', markNotExpected],
  ['MARK_OUT_OF_RANGE', (_, entry) => performed(entry, markOutOfRange)],
  ['WIND_NOT_MEASURED', windNotMeasured],
  [
    'WIND_NOT_EXPECTED',
    (_, entry) => performed(entry, (p) => fault(p.wind !== null && p.outcome !== 'valid', 'wind')),
  ],
  ['WIND_OUT_OF_RANGE', (_, entry) => performed(entry, (p) => fault(isWindOutOfRange(p.wind), 'wind'))],
  ['HAS_RESULTS', hasResults],
  ['OPEN_QUESTIONS', ({ state }, { kind }) => fault(kind === 'sign-off' && state.questions.length > 0, null)],
  ['NOT_COMPLETE', notComplete],
  ['ALREADY_SO', alreadySo],
];

const DECISIONS: ReadonlySet<CombinedEntryKind> = new Set(['ruling', 'sign-off', 'reopening']);
/** What was seen on the track, or changes it, comes in as a question; all else waits until it is reopened. */
const NEEDS_OPEN: ReadonlySet<CombinedEntryKind> = new Set(['start', 'ruling']);

function fault(wrong: boolean, field: string | null): string | null | undefined {
  return wrong ? field : undefined;
}

function isWithout({ outcome, hundredths }: CombinedPerformance, wanted: string): boolean {
  return outcome === wanted && hundredths === null;
}

function performed(
  entry: CombinedEntry,
  check: (performance: CombinedPerformance) => string | null | undefined,
): string | null | undefined {
  return entry.kind === 'result' || entry.kind === 'correction' ? check(entry) : undefined;
}

/** The event that a result, or a correction of one, is about. */
export function eventOfEntry(state: CombinedEventState, entry: CombinedEntry): CombinedEventCode | null {
  if (entry.kind === 'result') return entry.event;
  return entry.kind === 'correction' ? (state.entered.get(entry.entry)?.event ?? null) : null;
}

function unknownEntrant({ state }: Context, entry: CombinedEntry): string | undefined {
  if (!('entrant' in entry)) return undefined;
  return state.setup.entrants.some(({ key }) => key === entry.entrant) ? undefined : 'entrant';
}

function unknownEvent({ state }: Context, entry: CombinedEntry): string | undefined {
  const { events } = state.setup.table;
  if (entry.kind === 'result') return events.includes(entry.event) ? undefined : 'event';
  if (entry.kind !== 'start' || entry.from === null) return undefined;
  return entry.status === 'DNF' && events.includes(entry.from) ? undefined : 'from';
}

function componentLinked({ state }: Context, entry: CombinedEntry): string | undefined {
  return entry.kind === 'result' && state.setup.linked.has(entry.event) ? 'event' : undefined;
}

function targetFault(entry: CombinedEntry, wrong: (id: string) => boolean): string | undefined {
  return 'entry' in entry && wrong(entry.entry) ? 'entry' : undefined;
}

function wrongKind({ items }: Context, entry: CombinedEntry): string | undefined {
  if (entry.kind === 'ruling') return undefined;
  return targetFault(entry, (id) => {
    const { kind } = items.get(id)!.entry;
    return entry.kind === 'correction' ? kind !== 'result' : kind === 'sign-off' || kind === 'reopening';
  });
}

/** An entry that is held, taken back, set aside or dismissed cannot be changed further. */
function notInForce({ state, items }: Context, entry: CombinedEntry): string | undefined {
  return targetFault(entry, (id) => {
    if (state.reversed.has(id)) return true;
    if (entry.kind === 'ruling') return false;
    const { hold } = items.get(id)!;
    const isHeld = hold !== null && RULED_COMBINED_HOLDS.has(hold);
    if (isHeld && state.rulings.get(id) !== 'count') return true;
    const standing = state.entered.get(id)?.standing ?? 'counts';
    return entry.kind === 'correction' && standing !== 'counts';
  });
}

function noQuestion({ state }: Context, entry: CombinedEntry): string | undefined {
  if (entry.kind !== 'ruling') return undefined;
  const isOpen = state.questions.some((question) => question.entry === entry.entry);
  return isOpen || state.rulings.has(entry.entry) ? undefined : 'entry';
}

function notByRuling({ state }: Context, entry: CombinedEntry): string | undefined {
  if (entry.kind !== 'ruling' || entry.decision !== 'count') return undefined;
  return state.entered.get(entry.entry)?.standing === 'OUT_OF_EVENT' ? 'decision' : undefined;
}

function reasonMissing(_: Context, entry: CombinedEntry): string | undefined {
  if (entry.kind === 'sign-off') return entry.incomplete?.trim() === '' ? 'incomplete' : undefined;
  return 'reason' in entry && entry.reason.trim() === '' ? 'reason' : undefined;
}

function outcomeNotOfEvent({ state }: Context, entry: CombinedEntry): string | null | undefined {
  const event = eventOfEntry(state, entry);
  const other = event !== null && isTrackEvent(event) ? 'NM' : 'DNF';
  return performed(entry, ({ outcome }) => fault(outcome === other, 'outcome'));
}

/** A time says how it was taken; a height or distance does not. */
function markNotExpected({ state }: Context, entry: CombinedEntry): string | null | undefined {
  const event = eventOfEntry(state, entry);
  const isTime = event !== null && isTrackEvent(event);
  return performed(entry, ({ outcome, hundredths, timing }) => {
    if (hundredths !== null && outcome !== 'valid') return 'hundredths';
    return fault((timing !== null) !== (isTime && outcome === 'valid'), 'timing');
  });
}

/** Under 100 minutes, and under a kilometre: what a mark can be written as. */
function markOutOfRange({ hundredths }: CombinedPerformance): string | undefined {
  if (hundredths === null) return undefined;
  const isIn = Number.isSafeInteger(hundredths) && hundredths >= 1 && hundredths < 600_000;
  return isIn ? undefined : 'hundredths';
}

function windNotMeasured({ state }: Context, entry: CombinedEntry): string | null | undefined {
  const event = eventOfEntry(state, entry);
  if (event === null || windEventsOf(state.setup.table).includes(event)) return undefined;
  return performed(entry, ({ wind }) => fault(wind !== null, 'wind'));
}

function isWindOutOfRange(wind: Wind | null): boolean {
  if (typeof wind !== 'number') return false;
  const isIn = Number.isSafeInteger(wind) && Math.abs(wind) <= MAX_WIND_TENTHS;
  return !isIn || Object.is(wind, -0);
}

/** Who did something in an event did start, and did not give up before it. */
function hasResults({ state }: Context, entry: CombinedEntry): string | undefined {
  if (entry.kind !== 'start' || entry.status === 'started') return undefined;
  const own = state.results.get(entry.entrant) ?? [];
  const from = entry.from === null ? 0 : state.setup.table.events.indexOf(entry.from);
  const took = own.slice(from).some((result) => result !== null && result.outcome !== 'DNS');
  return took ? (entry.status === 'DNS' ? 'status' : 'from') : undefined;
}

function notComplete({ state }: Context, entry: CombinedEntry): string | undefined {
  const whole = entry.kind === 'sign-off' && entry.incomplete === null && !state.signedOff;
  return whole && !isComplete(state) ? 'incomplete' : undefined;
}

function alreadySo({ state }: Context, entry: CombinedEntry): string | null | undefined {
  switch (entry.kind) {
    case 'start': {
      const now = state.declared.get(entry.entrant);
      const from = entry.from === null ? 0 : state.setup.table.events.indexOf(entry.from);
      const isSame = entry.status === 'started' ? !now : now?.status === entry.status && now.from === from;
      return fault(isSame, 'status');
    }
    case 'sign-off':
      return fault(state.signedOff, null);
    case 'reopening':
      return fault(!state.signedOff, null);
    case 'ruling':
      return fault(state.rulings.get(entry.entry) === entry.decision, 'decision');
    case 'correction': {
      const now = state.entered.get(entry.entry)?.performance;
      const keys = ['outcome', 'hundredths', 'timing', 'wind'] as const;
      const then = now && corrected(now, entry);
      return fault(!!now && keys.every((key) => now[key] === then?.[key]), null);
    }
    default:
      return undefined;
  }
}
