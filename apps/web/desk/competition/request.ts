import { formatMark, formatWind, type EntryBody, type Unit, type VerticalBody, type Wind } from '#rules';
import { idOf } from '../../offline/object-ids.js';

/** What can be entered at the desk. */
export type Body = EntryBody | VerticalBody;

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
    default:
      return null;
  }
}

function competitor(key: string): string {
  return idOf('Competitor', key);
}

type Judged = Extract<Body, { readonly kind: 'attempt' | 'correction' }>;

function judged({ outcome, mark, wind, foul, protested, implementGrams }: Judged, unit: Unit) {
  return {
    outcome: outcome.toUpperCase(),
    mark: mark === null ? null : formatMark(mark, unit),
    wind: writtenWind(wind),
    foul,
    protestedMark: protested === null ? null : formatMark(protested, unit),
    implementGrams,
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
