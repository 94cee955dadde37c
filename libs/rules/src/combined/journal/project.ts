import type { RulingDecision } from '../../journal/entry.js';
import type { CombinedEntry, CombinedPerformance } from './entry.js';
import type {
  CombinedEventState,
  CombinedItem,
  CombinedQuestion,
  CombinedSetup,
  ComponentResult,
  EnteredResult,
  OutOfEvent,
} from './state.js';
import type { CombinedHoldCode } from './verdict.js';

/** Holds that only a ruling ends. */
export const RULED_COMBINED_HOLDS: ReadonlySet<CombinedHoldCode> = new Set([
  'SIGNED_OFF',
  'RESULT_TAKEN',
  'AWAITS_REFEREE',
]);

/** The state that a journal describes, with what the linked competitions come to now. */
export function projectCombined(setup: CombinedSetup, journal: readonly CombinedItem[]): CombinedEventState {
  const activity = activityOf(journal);
  const { drafts, declared, signedOff } = draftsOf(setup, journal, activity);
  const counting = placed(drafts, activity.rulings);
  const first = resultsOf(setup, counting);
  const out = outOf(setup, first, declared);
  const entered = [...counting.values()].map((result) => lateFor(setup, result, out));
  const results = resultsOf(setup, new Map(entered.map((result) => [result.id, result])));
  return {
    setup,
    journal,
    entered: new Map(entered.map((result) => [result.id, result])),
    results,
    out,
    declared,
    questions: questionsOf(journal, entered, activity),
    signedOff,
    reversed: activity.reversed,
    rulings: activity.rulings,
  };
}

/** Which items of a journal have effect, and how held ones were ruled. */
interface Activity {
  /** By position: in effect (not taken back; where a ruling is needed, ruled to count). */
  readonly inEffect: readonly boolean[];
  readonly rulings: ReadonlyMap<string, RulingDecision>;
  readonly reversed: ReadonlySet<string>;
}

function needsRuling({ hold }: CombinedItem): boolean {
  return hold !== null && RULED_COMBINED_HOLDS.has(hold);
}

/** Reversals and rulings name earlier entries only: one pass from the newest to the oldest settles all. */
function activityOf(journal: readonly CombinedItem[]): Activity {
  const inEffect = new Array<boolean>(journal.length).fill(false);
  const rulings = new Map<string, RulingDecision>();
  const reversed = new Set<string>();
  for (let at = journal.length - 1; at >= 0; at--) {
    const item = journal[at]!;
    const { entry } = item;
    if (reversed.has(entry.id)) continue;
    if (needsRuling(item) && rulings.get(entry.id) !== 'count') continue;
    inEffect[at] = true;
    if (entry.kind === 'reversal') reversed.add(entry.entry);
    if (entry.kind === 'ruling' && !rulings.has(entry.entry)) rulings.set(entry.entry, entry.decision);
  }
  return { inEffect, rulings, reversed };
}

/** An entered result before it is known whether its entrant is in the event. */
type Draft = Omit<EnteredResult, 'standing'> & { readonly hold: CombinedHoldCode | null };

interface Drafts {
  readonly drafts: ReadonlyMap<string, Draft>;
  readonly declared: ReadonlyMap<string, OutOfEvent>;
  readonly signedOff: boolean;
}

function draftsOf(setup: CombinedSetup, journal: readonly CombinedItem[], activity: Activity): Drafts {
  const drafts = new Map<string, Draft>();
  const declared = new Map<string, OutOfEvent>();
  let signedOff = false;
  for (const [at, { entry, hold }] of journal.entries()) {
    if (entry.kind === 'result' && !activity.reversed.has(entry.id)) {
      const { id, entrant, event } = entry;
      drafts.set(id, { id, entrant, event, performance: performanceOf(entry), hold });
    }
    if (!activity.inEffect[at]) continue;
    if (entry.kind === 'correction') {
      const target = drafts.get(entry.entry);
      if (target) drafts.set(target.id, { ...target, performance: corrected(target.performance, entry) });
    } else if (entry.kind === 'start') {
      if (entry.status === 'started') declared.delete(entry.entrant);
      else declared.set(entry.entrant, { status: entry.status, from: fromOf(setup, entry) });
    } else if (entry.kind === 'sign-off' || entry.kind === 'reopening') {
      signedOff = entry.kind === 'sign-off';
    }
  }
  return { drafts, declared, signedOff };
}

function fromOf({ table }: CombinedSetup, { from }: Extract<CombinedEntry, { kind: 'start' }>): number {
  return from === null ? 0 : Math.max(0, table.events.indexOf(from));
}

/** A wind that a correction leaves out stays as it was, as long as there is a time or mark that it belongs to. */
export function corrected(before: CombinedPerformance, after: CombinedPerformance): CombinedPerformance {
  const wind = after.wind ?? (after.outcome === 'valid' ? before.wind : null);
  return { ...performanceOf(after), wind };
}

export function performanceOf({
  outcome,
  hundredths,
  timing,
  wind,
}: CombinedPerformance): CombinedPerformance {
  return { outcome, hundredths, timing, wind };
}

/** Of several results of one entrant in one event one counts: the first, or the one that was ruled to. */
function placed(
  drafts: ReadonlyMap<string, Draft>,
  rulings: ReadonlyMap<string, RulingDecision>,
): Map<string, EnteredResult> {
  const placedResults = new Map<string, EnteredResult>();
  const slots = new Map<string, string>();
  for (const { hold, ...draft } of drafts.values()) {
    const slot = `${draft.event} ${draft.entrant}`;
    const before = placedResults.get(slots.get(slot) ?? '');
    const standing = standingOf(hold, rulings.get(draft.id), before);
    placedResults.set(draft.id, { ...draft, standing });
    if (standing !== 'counts') continue;
    if (before) placedResults.set(before.id, { ...before, standing: 'displaced' });
    slots.set(slot, draft.id);
  }
  return placedResults;
}

function standingOf(
  hold: CombinedHoldCode | null,
  ruling: RulingDecision | undefined,
  before: EnteredResult | undefined,
): EnteredResult['standing'] {
  if (ruling === 'dismiss') return 'dismissed';
  if (ruling === 'count') return 'counts';
  if (hold !== null && RULED_COMBINED_HOLDS.has(hold)) return hold;
  // Whatever was held for being out is looked at again by whoever knows who is out.
  if (before) return 'RESULT_TAKEN';
  return hold ?? 'counts';
}

/**
 * What was held because its entrant was out counts by itself once that is no longer so. What was accepted stays: who
 * is found out later keeps the points so far.
 */
function lateFor(
  { table }: CombinedSetup,
  result: EnteredResult,
  out: ReadonlyMap<string, OutOfEvent>,
): EnteredResult {
  if (result.standing !== 'OUT_OF_EVENT') return result;
  return isOutAt(out.get(result.entrant), table.events.indexOf(result.event))
    ? result
    : { ...result, standing: 'counts' };
}

/** Whether an entrant who is out takes no part in the event at `index`. */
export function isOutAt(out: OutOfEvent | undefined, index: number): boolean {
  return out !== undefined && index >= out.from;
}

/** By entrant and event what counts: an entered result, or what a linked competition comes to. */
function resultsOf(
  { table, entrants, linked }: CombinedSetup,
  entered: ReadonlyMap<string, EnteredResult>,
): Map<string, (ComponentResult | null)[]> {
  const own = new Map(entrants.map(({ key }) => [key, table.events.map((): ComponentResult | null => null)]));
  for (const { id, entrant, event, performance, standing } of entered.values()) {
    const line = own.get(entrant);
    if (line && standing === 'counts') line[table.events.indexOf(event)] = { entry: id, ...performance };
  }
  for (const [event, { results }] of linked) {
    for (const [entrant, performance] of results) {
      const line = own.get(entrant);
      if (line) line[table.events.indexOf(event)] = { entry: null, ...performanceOf(performance) };
    }
  }
  return own;
}

/** Who does not start an event is out of the rest (from memory; the same in every rule set seen). */
function outOf(
  { entrants }: CombinedSetup,
  results: ReadonlyMap<string, readonly (ComponentResult | null)[]>,
  declared: ReadonlyMap<string, OutOfEvent>,
): Map<string, OutOfEvent> {
  const out = new Map<string, OutOfEvent>();
  for (const { key } of entrants) {
    const missed = results.get(key)?.findIndex((result) => result?.outcome === 'DNS') ?? -1;
    const said = declared.get(key);
    if (missed >= 0 && (!said || missed < said.from)) {
      out.set(key, { status: missed === 0 ? 'DNS' : 'DNF', from: missed + 1 });
    } else if (said) out.set(key, said);
  }
  return out;
}

function questionsOf(
  journal: readonly CombinedItem[],
  entered: readonly EnteredResult[],
  { reversed, rulings }: Activity,
): CombinedQuestion[] {
  const standings = new Map(entered.map(({ id, standing }) => [id, standing]));
  return journal.flatMap((item): CombinedQuestion[] => {
    const { entry, hold } = item;
    if (reversed.has(entry.id) || rulings.has(entry.id)) return [];
    const standing = standings.get(entry.id) ?? (needsRuling(item) ? hold : null);
    if (standing === null || standing === 'counts') return [];
    return standing === 'displaced' || standing === 'dismissed' ? [] : [{ entry: entry.id, hold: standing }];
  });
}
