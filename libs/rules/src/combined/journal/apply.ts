import { windEventsOf } from '../combined-wind.js';
import { combinedPoints } from '../count-combined.js';
import { isTrackEvent } from '../scoring-table.js';
import type { CombinedEntry } from './entry.js';
import { isOutAt, projectCombined } from './project.js';
import { combinedFaultOf, eventOfEntry } from './refusals.js';
import type { CombinedEventState, CombinedItem, CombinedSetup } from './state.js';
import { combinedObjection, COMBINED_HOLDS, COMBINED_REFUSALS } from './texts.js';
import type { CombinedHoldCode, CombinedNoticeCode, CombinedVerdict } from './verdict.js';

export interface CombinedApplied {
  /** With the entry in its journal; the same state as before when it was refused. */
  readonly state: CombinedEventState;
  readonly verdict: CombinedVerdict;
}

/** The state that a stored journal describes, with the holds as they were decided when the entries came in. */
export function restoreCombined(setup: CombinedSetup, journal: readonly CombinedItem[]): CombinedEventState {
  return projectCombined(setup, journal);
}

/** Decides one entry: accepted, held, or refused (then it is no part of the journal). Pure. */
export function applyCombined(state: CombinedEventState, entry: CombinedEntry): CombinedApplied {
  const subject = subjectOf(state, entry);
  const fault = combinedFaultOf(state, entry);
  if (fault) {
    const { code, field } = fault;
    const refusal = combinedObjection(code, field, COMBINED_REFUSALS[code], subject);
    return { state, verdict: { standing: 'refused', refusal } };
  }
  const hold = holdOf(state, entry);
  const after = projectCombined(state.setup, [...state.journal, { entry, hold }]);
  if (hold === null) {
    return { state: after, verdict: { standing: 'accepted', notices: noticesOf(state, entry) } };
  }
  const objection = combinedObjection(hold, null, COMBINED_HOLDS[hold], subject);
  return { state: after, verdict: { standing: 'held', hold: objection } };
}

function subjectOf(state: CombinedEventState, entry: CombinedEntry): string | null {
  const key =
    'entrant' in entry ? entry.entrant : 'entry' in entry && state.entered.get(entry.entry)?.entrant;
  const bib = state.setup.entrants.find((entrant) => entrant.key === key)?.bib;
  return bib === undefined ? null : `No. ${bib}`;
}

function holdOf(state: CombinedEventState, entry: CombinedEntry): CombinedHoldCode | null {
  const isSeen = entry.kind === 'result' || entry.kind === 'correction' || entry.kind === 'reversal';
  if (state.signedOff && isSeen) return 'SIGNED_OFF';
  if (entry.kind === 'result') {
    const index = state.setup.table.events.indexOf(entry.event);
    if (isTaken(state, entry)) return 'RESULT_TAKEN';
    return isOutAt(state.out.get(entry.entrant), index) && entry.outcome !== 'DNS' ? 'OUT_OF_EVENT' : null;
  }
  if (entry.kind !== 'correction' && entry.kind !== 'reversal') return null;
  return awaitsReferee(state, entry) ? 'AWAITS_REFEREE' : null;
}

function isTaken(
  { entered }: CombinedEventState,
  { entrant, event }: { readonly entrant: string; readonly event: string },
): boolean {
  return [...entered.values()].some((other) => {
    const isGone = other.standing === 'displaced' || other.standing === 'dismissed';
    return !isGone && other.entrant === entrant && other.event === event;
  });
}

/** An official corrects and takes back what he entered himself until a result of a later event is in. */
function awaitsReferee(
  state: CombinedEventState,
  entry: Extract<CombinedEntry, { kind: 'correction' | 'reversal' }>,
): boolean {
  if (entry.by !== 'official') return false;
  const target = state.journal.find((item) => item.entry.id === entry.entry)?.entry;
  if (!target || target.actor !== entry.actor || target.by !== 'official') return true;
  const event = state.entered.get(target.id)?.event;
  if (event === undefined) return target.kind !== 'start';
  const { events } = state.setup.table;
  const index = events.indexOf(event);
  return [...state.results.values()].some((line) => line.slice(index + 1).some((result) => result !== null));
}

/** Worth more than anybody ever reached in one event (constructed: about a sixth above the best ever). */
const FAR_OUTSIDE_POINTS = 1400;

function noticesOf(state: CombinedEventState, entry: CombinedEntry): CombinedNoticeCode[] {
  const event = eventOfEntry(state, entry);
  if (event === null || (entry.kind !== 'result' && entry.kind !== 'correction')) return [];
  const { table } = state.setup;
  const notices: CombinedNoticeCode[] = [];
  const index = table.events.indexOf(event);
  const own = entry.kind === 'result' ? (state.results.get(entry.entrant) ?? []) : [];
  if (own.slice(0, index).includes(null)) notices.push('EARLIER_EVENT_OPEN');
  const { hundredths, timing, outcome, wind } = entry;
  if (hundredths !== null) {
    const points = combinedPoints(table.scoredBy, event, hundredths, timing ?? 'electronic') ?? 0;
    if (points > FAR_OUTSIDE_POINTS) notices.push('FAR_OUTSIDE');
  }
  const hasWind = isTrackEvent(event) && outcome === 'valid' && windEventsOf(table).includes(event);
  if (hasWind && wind === null) notices.push('WIND_TO_COME');
  return notices;
}
