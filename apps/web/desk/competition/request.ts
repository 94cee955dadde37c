import {
  formatMark,
  formatWind,
  type EntryBody,
  type LateEntryEntry,
  type Unit,
  type VerticalBody,
  type Wind,
} from '#rules';
import { idOf } from '../../offline/object-ids.js';

/** What stands in a journal. */
export type Journalled = EntryBody | VerticalBody;

/** What can be entered at the desk. A name goes to the start list, and not into the journal. */
export type Body =
  | Exclude<Journalled, { readonly kind: 'late-entry' }>
  | (LateEntryEntry & { readonly listedName: string; readonly listedClub: string | null });

export interface EntryRequest {
  readonly mutation: string;
  readonly input: Readonly<Record<string, unknown>>;
}

/** The mutation that says the same as the body of an entry; null for what the desk does not enter. */
export function requestOf(body: Body, unit: Unit, version: number): EntryRequest | null {
  const at = (height: number): string => formatMark(height, unit);
  switch (body.kind) {
    case 'attempt':
      return {
        mutation: 'attemptRecord',
        input: { competitorId: competitor(body.competitor), round: body.round, ...judged(body, unit) },
      };
    case 'correction': {
      const { attempt: attemptId, reason } = body;
      return {
        mutation: 'attemptCorrect',
        input: { attemptId, reason, expectedVersion: version, ...judged(body, unit) },
      };
    }
    case 'wind':
      return {
        mutation: 'attemptWindRecord',
        input: { attemptId: body.attempt, wind: formatWind(body.wind) },
      };
    case 'move': {
      const moves = body.moves.map(({ attempt: attemptId, competitor: key, round }) => ({
        attemptId,
        competitorId: competitor(key),
        round,
      }));
      return { mutation: 'attemptsMove', input: { moves, reason: body.reason, expectedVersion: version } };
    }
    case 'jump':
      return {
        mutation: 'jumpRecord',
        input: {
          competitorId: competitor(body.competitor),
          height: at(body.height),
          trial: body.trial,
          ...jumped(body),
        },
      };
    case 'jump-off':
      return {
        mutation: 'jumpOffRecord',
        input: {
          competitorId: competitor(body.competitor),
          height: at(body.height),
          round: body.trial,
          ...jumped(body),
        },
      };
    case 'jump-correction': {
      const { attempt: attemptId, reason } = body;
      return {
        mutation: 'jumpCorrect',
        input: { attemptId, reason, expectedVersion: version, ...jumped(body) },
      };
    }
    default:
      return otherRequest(body, unit, version);
  }
}

function otherRequest(body: Body, unit: Unit, version: number): EntryRequest | null {
  const at = (height: number): string => formatMark(height, unit);
  switch (body.kind) {
    case 'jump-move': {
      const moves = body.moves.map(({ attempt: attemptId, competitor: key, height, trial }) => ({
        attemptId,
        competitorId: competitor(key),
        height: at(height),
        trial,
      }));
      return { mutation: 'jumpsMove', input: { moves, reason: body.reason, expectedVersion: version } };
    }
    case 'bar':
      return {
        mutation: 'barSet',
        input: { height: at(body.height), leavesOut: body.leavesOut.map(at) },
      };
    case 'uprights':
      return {
        mutation: 'uprightsSet',
        input: { competitorId: competitor(body.competitor), behindZeroCm: body.behindZeroCm },
      };
    case 'jump-off-declined':
      return { mutation: 'jumpOffDecline', input: { reason: body.reason } };
    case 'reversal':
      return { mutation: 'entryReverse', input: { targetEntryId: body.entry, reason: body.reason } };
    case 'replacement':
      return { mutation: 'attemptReplace', input: { attemptId: body.attempt, reason: body.reason } };
    case 'start':
      return {
        mutation: 'competitorStartSet',
        input: { competitorId: competitor(body.competitor), status: body.status.toUpperCase() },
      };
    case 'interruption':
      return {
        mutation: 'competitionInterrupt',
        input: {
          cause: body.cause.toUpperCase().replaceAll('-', '_'),
          note: body.note,
          seenAt: new Date(body.seenAt).toISOString(),
        },
      };
    case 'all-clear':
      return {
        mutation: 'competitionClear',
        input: {
          confirmed: body.confirmed,
          newWarmUp: body.newWarmUp,
          clearedAt: new Date(body.clearedAt).toISOString(),
          despite: body.despite,
        },
      };
    case 'ruling':
      return {
        mutation: 'entryRule',
        input: { targetEntryId: body.entry, decision: body.decision.toUpperCase(), reason: body.reason },
      };
    case 'sign-off':
      return {
        mutation: 'competitionSignOff',
        input: { incomplete: body.incomplete, expectedVersion: version },
      };
    default:
      return besideRequest(body);
  }
}

/** What is written down beside the trials, and changes of the start list. */
function besideRequest(body: Body): EntryRequest | null {
  switch (body.kind) {
    case 'note':
      return {
        mutation: 'noteRecord',
        input: {
          about: body.about.toUpperCase().replaceAll('-', '_'),
          text: body.text,
          competitorId: body.competitor === null ? null : competitor(body.competitor),
          seenAt: new Date(body.seenAt).toISOString(),
        },
      };
    case 'excuse':
      return {
        mutation: 'competitorExcuse',
        input: {
          competitorId: competitor(body.competitor),
          to: body.to,
          until: body.until === null ? null : new Date(body.until).toISOString(),
        },
      };
    case 'card-signed':
      return { mutation: 'cardSign', input: { remark: body.remark } };
    case 'late-entry': {
      const { bib, flight, listedName, listedClub } = body;
      return { mutation: 'competitorAdd', input: { bib, flight, listedName, listedClub } };
    }
    case 'bibs': {
      const bibs = body.bibs.map(({ competitor: key, bib }) => ({ competitorId: competitor(key), bib }));
      return { mutation: 'bibsSet', input: { bibs, reason: body.reason } };
    }
    case 'flight':
      return {
        mutation: 'competitorFlightSet',
        input: { competitorId: competitor(body.competitor), flight: body.flight, reason: body.reason },
      };
    default:
      return null;
  }
}

function competitor(key: string): string {
  return idOf('Competitor', key);
}

type Judged = Extract<Body, { readonly kind: 'attempt' | 'correction' }>;

function judged({ outcome, mark, wind, foul, protested, implementGrams, implementId }: Judged, unit: Unit) {
  return {
    outcome: outcome.toUpperCase(),
    mark: mark === null ? null : formatMark(mark, unit),
    wind: writtenWind(wind),
    foul,
    protestedMark: protested === null ? null : formatMark(protested, unit),
    // The mass of an implement that is named comes from the register.
    ...(implementId === undefined ? { implementGrams } : { implementId }),
  };
}

/** A reading that is still to come is said by saying nothing. */
function writtenWind(wind: Wind | null): string | null {
  return wind === null || wind === 'pending' ? null : formatWind(wind);
}

const JUMP_OUTCOMES = { cleared: 'CLEARED', failed: 'FAILED', passed: 'PASS', retired: 'RETIRED' } as const;

type Jumped = Extract<Body, { readonly kind: 'jump' | 'jump-off' | 'jump-correction' }>;

function jumped({ outcome, foul, incident, protested: isProtested }: Jumped) {
  return { outcome: JUMP_OUTCOMES[outcome], foul, incident, isProtested };
}
