import type { Admission } from '../card.js';
import type { AdmittedBy } from '../codes.js';
import type { SafetyState, Stop } from '../safety/interruption.js';
import type { AnyEntry } from './any-entry.js';

/** Where somebody has gone, and when back (milliseconds since the epoch), if that was said. */
export interface Away {
  readonly to: string;
  readonly until: number | null;
}

/** What a journal says of the competitors beside their trials, and of the result as a whole. */
export interface Decisions {
  readonly notStarted: Set<string>;
  /** By competitor: the position of the disqualification in force. */
  readonly disqualifiedAt: Map<string, number>;
  readonly admissions: { competitor: string; after: number | null; by: AdmittedBy }[];
  signedOff: boolean;
  /** By competitor: who is away at another event. */
  readonly away: Map<string, Away>;
  /** What has stopped the competition and is not cleared. */
  stops: Stop[];
  /** The latest all-clear granted a new warm-up; `null`: there was none yet. */
  newWarmUp: boolean | null;
}

export function noDecisions(): Decisions {
  return {
    notStarted: new Set(),
    disqualifiedAt: new Map(),
    admissions: [],
    signedOff: false,
    away: new Map(),
    stops: [],
    newWarmUp: null,
  };
}

/** Takes in an entry that decides about a competitor or the result; leaves the others alone. */
export function decide(decisions: Decisions, entry: AnyEntry, sequence: number): void {
  switch (entry.kind) {
    case 'start':
      if (entry.status === 'DNS') decisions.notStarted.add(entry.competitor);
      else decisions.notStarted.delete(entry.competitor);
      return;
    case 'disqualification':
      decisions.disqualifiedAt.set(entry.competitor, sequence);
      return;
    case 'reinstatement':
      decisions.disqualifiedAt.delete(entry.competitor);
      return;
    case 'admission':
      decisions.admissions.push({ competitor: entry.competitor, after: entry.after, by: entry.admittedBy });
      return;
    case 'sign-off':
    case 'reopening':
      decisions.signedOff = entry.kind === 'sign-off';
      return;
    case 'excuse':
      if (entry.to === null) decisions.away.delete(entry.competitor);
      else decisions.away.set(entry.competitor, { to: entry.to, until: entry.until });
      return;
    case 'interruption': {
      const { id, cause, note, seenAt } = entry;
      decisions.stops.push({ entry: id, cause, note, seenAt });
      return;
    }
    case 'all-clear':
      decisions.stops = [];
      decisions.newWarmUp = entry.newWarmUp;
      return;
    default:
      return;
  }
}

export function safetyOf({ stops, newWarmUp }: Decisions): SafetyState {
  return { stops, isConfirmed: newWarmUp !== null, hasNewWarmUp: newWarmUp === true };
}

export function statusOf({ notStarted, disqualifiedAt }: Decisions, competitor: string): 'DNS' | 'DQ' | null {
  if (notStarted.has(competitor)) return 'DNS';
  return disqualifiedAt.has(competitor) ? 'DQ' : null;
}

/** The admissions as a card has them. */
export function admittedOf(
  { admissions }: Decisions,
  competitors: readonly { readonly key: string; readonly bib: string }[],
): Admission[] {
  const bibs = new Map(competitors.map(({ key, bib }) => [key, bib]));
  return admissions.map(({ competitor, after, by }) => ({ bib: bibs.get(competitor)!, after, by }));
}
