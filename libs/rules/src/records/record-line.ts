import { compareInTime, windStanding, type Performance } from './performance.js';
import { decisionKey, type RatificationDecision } from './ratification.js';
import { isRatified, type RecordList } from './record-list.js';
import type { RecordTerms } from './record-terms.js';

/** How one list stands. */
export interface RecordLine {
  readonly list: RecordList;
  /** The best or record: all level on the greatest mark that counts, the first of them first. */
  readonly best: readonly Performance[];
  /**
   * What broke or equalled it when it was made and waits for the referee or for a wind reading; in order of time. A
   * later one is the greater or level.
   */
  readonly wouldBe: readonly Performance[];
  /** The greatest marks beyond the best that the wind keeps from counting; shown as such. */
  readonly windAssisted: readonly Performance[];
}

/** What of a list decides. */
export interface LineFacts {
  readonly terms: RecordTerms;
  readonly decisions: ReadonlyMap<string, RatificationDecision>;
}

/** `counts`: as a best. `waits`: it may yet. `assisted`: only the wind is against it. `refused`: by the referee. */
type Standing = 'counts' | 'waits' | 'assisted' | 'refused';

/** @param performances all of the list, in any order. */
export function lineOf(list: RecordList, performances: readonly Performance[], facts: LineFacts): RecordLine {
  const inTime = performances.toSorted(compareInTime);
  const standings = new Map(inTime.map((one) => [one.id, standingIn(list, one, facts)]));
  const having = (...wanted: Standing[]): Performance[] =>
    inTime.filter(({ id }) => wanted.includes(standings.get(id)!));
  const best = greatest(having('counts'));
  const least = best[0]?.mark ?? 0;
  const assisted = greatest(having('assisted').filter(({ mark }) => mark > least));
  const waiting = breaking(having('counts', 'waits'), facts.terms).filter(({ id, mark }) => {
    return standings.get(id) === 'waits' && mark >= least;
  });
  return { list, best, wouldBe: waiting, windAssisted: assisted };
}

/** Whether a mark counts in a list as a best or a record, as far as wind and referee decide. */
export function counts(list: RecordList, performance: Performance, facts: LineFacts): boolean {
  return standingIn(list, performance, facts) === 'counts';
}

function standingIn(list: RecordList, performance: Performance, { terms, decisions }: LineFacts): Standing {
  const decision = isRatified(list.kind) ? decisions.get(decisionKey(list.kind, performance.id)) : undefined;
  if (decision === 'refused') return 'refused';
  const wind = windStanding(performance, terms.windLimitTenths);
  if (wind === 'expected') return 'waits';
  if (wind !== 'legal') return 'assisted';
  return isSettled(list, performance, decision) ? 'counts' : 'waits';
}

/** What was entered as a starting point is taken as it is. */
function isSettled(
  list: RecordList,
  { competition }: Performance,
  decision: RatificationDecision | undefined,
): boolean {
  return !isRatified(list.kind) || competition === null || decision === 'ratified';
}

/** Those that were at least level with all before them; a mark whose wind is still expected stands in nobody's way. */
function breaking(inTime: readonly Performance[], { windLimitTenths }: RecordTerms): Performance[] {
  let best = 0;
  return inTime.filter((performance) => {
    const breaks = performance.mark >= best;
    if (windStanding(performance, windLimitTenths) === 'legal') best = Math.max(best, performance.mark);
    return breaks;
  });
}

function greatest(performances: readonly Performance[]): Performance[] {
  const mark = Math.max(...performances.map((one) => one.mark));
  return performances.filter((one) => one.mark === mark);
}
