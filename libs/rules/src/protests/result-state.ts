import type { AnyEntryKind } from '../journal/any-entry.js';
import type { ProtestRules } from '../rule-sets/protest-rules.js';
import { isOpenProtest, type Protest } from './protest.js';
import { windowUntil } from './timeliness.js';

/** What a result was announced and signed as. Times are milliseconds since the epoch. */
export interface Proceedings {
  /** Each time the result was signed, in order; after the first it was an amended one. */
  readonly signatures: readonly { readonly signedAt: number }[];
  /** Each time it was posted: the journal up to this entry, in order. */
  readonly postings: readonly { readonly sequence: number; readonly postedAt: number }[];
  readonly protests: readonly Protest[];
}

/** What the state of a result is read from beside the proceedings. */
export interface ResultFacts {
  /** In the order of recording; `isHeld`: it was kept as a question. */
  readonly journal: readonly { readonly kind: AnyEntryKind; readonly isHeld: boolean }[];
  readonly isComplete: boolean;
  readonly signedOff: boolean;
  /** A trial that counts only if its protest succeeds. */
  readonly hasTrialUnderProtest: boolean;
  /** When the latest entry was recorded. */
  readonly changedAt: number | null;
}

export const RESULT_STATES = [
  'running',
  'unofficial',
  'posted',
  'under protest',
  'official',
  'amended',
] as const;
export type ResultStateCode = (typeof RESULT_STATES)[number];

export interface ResultState {
  readonly state: ResultStateCode;
  /** `null`: nothing has happened yet. */
  readonly since: number | null;
  /** When what stands was announced: posted, or else signed; `null`: it was not. */
  readonly announcedAt: number | null;
  /** Of the posting of what stands. */
  readonly postedAt: number | null;
  /** Until when it may be protested that rules were misapplied. */
  readonly protestsUntil: number | null;
  readonly isUnderProtest: boolean;
  /** It was official and is open again. */
  readonly isReopened: boolean;
  /** How many times it was signed. */
  readonly revision: number;
}

/** Entries after which what was posted still stands. */
const CHANGES_NOTHING: ReadonlySet<AnyEntryKind> = new Set(['sign-off', 'interruption', 'all-clear']);

/**
 * Where a result is on its way from the field to the archive. What was posted stands until something is entered that may
 * change it: then the result is amended, has to be posted anew, and its time for protests begins anew.
 */
export function resultStateOf(
  facts: ResultFacts,
  proceedings: Proceedings,
  rules: ProtestRules,
): ResultState {
  const { signedOff, isComplete, changedAt } = facts;
  const { signatures, protests } = proceedings;
  const signedAt = signatures.at(-1)?.signedAt ?? null;
  const postedAt = postingInForce(facts, proceedings);
  const announcedAt = postedAt ?? (signedOff ? signedAt : null);
  const open = protests.filter(isOpenProtest);
  const isUnderProtest = open.length > 0 || (facts.hasTrialUnderProtest && !signedOff);
  const head = {
    announcedAt,
    postedAt,
    protestsUntil: windowUntil(rules, 'rules', announcedAt),
    isUnderProtest,
    isReopened: !signedOff && signatures.length > 0,
    revision: signatures.length,
  };
  if (signedOff) return { state: signatures.length > 1 ? 'amended' : 'official', since: signedAt, ...head };
  if (!isComplete && postedAt === null) return { state: 'running', since: changedAt, ...head };
  if (isUnderProtest) {
    const first = open.length > 0 ? Math.min(...open.map(({ lodgedAt }) => lodgedAt)) : changedAt;
    return { state: 'under protest', since: first, ...head };
  }
  return postedAt === null
    ? { state: 'unofficial', since: changedAt, ...head }
    : { state: 'posted', since: postedAt, ...head };
}

function postingInForce({ journal }: ResultFacts, { postings }: Proceedings): number | null {
  const last = postings.at(-1);
  if (!last) return null;
  const after = journal.slice(last.sequence);
  return after.every(({ kind, isHeld }) => isHeld || CHANGES_NOTHING.has(kind)) ? last.postedAt : null;
}

/** Why a result cannot be signed yet; `null`: nothing stands against it. */
export type SigningObstacle = 'PROTEST_OPEN' | 'PROTEST_TIME_RUNS';

/** @param now milliseconds since the epoch */
export function signingObstacle(
  { protestsUntil }: Pick<ResultState, 'protestsUntil'>,
  { protests }: Pick<Proceedings, 'protests'>,
  now: number,
): SigningObstacle | null {
  if (protests.some(isOpenProtest)) return 'PROTEST_OPEN';
  return protestsUntil !== null && now <= protestsUntil ? 'PROTEST_TIME_RUNS' : null;
}
