import {
  checkIns,
  competitions,
  competitors,
  journal,
  type CompetitionRow,
  type CompetitorRow,
  type JournalRow,
  type Tx,
} from '#persistence';
import { isTrial, ruleSet } from '#rules';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type Refusal, type UserError } from '../platform/errors/user-error.types.js';
import { versionConflict } from '../platform/errors/version-conflict.types.js';
import type { Identity } from '../platform/identity/identity.js';
import type { StartLineInput } from './entries.inputs.js';

export type Locked = { readonly competition: CompetitionRow } | { readonly refusal: Refusal };

/** Locks the competition for a change of its start list, for a director of the meet. */
export async function lockStartList(
  tx: Tx,
  competitionId: string,
  viewer: Identity,
  path: readonly string[],
): Promise<Locked> {
  return lockOpenList(tx, viewer.organisationId, competitionId, path, ({ meetId }) => {
    viewer.requireDirector(meetId);
  });
}

/**
 * Locks the competition for a change of its start list: nothing is signed off and no trial has been recorded. After
 * the first trial the list is what the places are counted from. `requireRight` throws for those who may not change it.
 */
export async function lockOpenList(
  tx: Tx,
  organisationId: string,
  competitionId: string,
  path: readonly string[],
  requireRight: (competition: CompetitionRow) => void,
): Promise<Locked> {
  const competition = await competitions.lock(tx, organisationId, competitionId);
  if (!competition) return { refusal: notFound('competition', path) };
  requireRight(competition);
  if (competition.status === 'official') return { refusal: SIGNED_OFF };
  const entries = await journalOf(tx, competition);
  return entries.some(({ kind }) => isTrial(kind)) ? { refusal: started(competition) } : { competition };
}

/** Null: taken off, and the others have moved up. */
export async function takeOff(
  tx: Tx,
  competition: CompetitionRow,
  competitor: CompetitorRow,
): Promise<Refusal | null> {
  const { organisationId, id } = competition;
  const entries = await journalOf(tx, competition);
  if (entries.some(({ body }) => 'competitor' in body && body.competitor === competitor.id))
    return IN_JOURNAL;
  if ((await checkIns.ofCompetitors(tx, organisationId, [competitor.id])).length > 0) return CHECKED_IN;
  await competitors.remove(tx, organisationId, competitor.id);
  const rest = await competitors.ofCompetition(tx, organisationId, id);
  await competitors.reposition(
    tx,
    organisationId,
    id,
    rest.map((line) => line.id),
  );
  return null;
}

/** Null: these lines name everybody of the start list once, and nobody changed it meanwhile. */
export async function orderProblem(
  tx: Tx,
  competition: CompetitionRow,
  expectedVersion: number,
  lines: readonly StartLineInput[],
): Promise<UserError | null> {
  if (competition.version !== expectedVersion) return versionConflict(competition.version);
  const list = await competitors.ofCompetition(tx, competition.organisationId, competition.id);
  const named = new Set(lines.map(({ competitorId }) => competitorId));
  const isWhole =
    named.size === lines.length && lines.length === list.length && list.every(({ id }) => named.has(id));
  return isWhole ? null : ORDER_INCOMPLETE;
}

async function journalOf(
  tx: Tx,
  { organisationId, id, lastSequence }: CompetitionRow,
): Promise<JournalRow[]> {
  return lastSequence === 0 ? [] : journal.read(tx, organisationId, id, 0);
}

const SIGNED_OFF = refusal({
  code: 'SIGNED_OFF',
  message: 'The result of the competition is official.',
  remedy: 'A director can open it again, with a reason.',
});

function started({ rules, edition }: CompetitionRow): Refusal {
  return refusal({
    code: 'COMPETITION_STARTED',
    message: 'The first trial has been recorded; the start list stands.',
    rule: ruleSet(rules, edition).draw.rule,
    remedy: 'Record who did not start or retired; the referee may change the order of a round.',
  });
}

const IN_JOURNAL = refusal({
  code: 'IN_JOURNAL',
  path: ['competitorId'],
  message: 'The journal names the competitor, so the line stays.',
  remedy: 'Record that the competitor did not start.',
});

const CHECKED_IN = refusal({
  code: 'CHECKED_IN',
  path: ['competitorId'],
  message: 'The check-in has written about the competitor, so the line stays.',
  remedy: 'Record that the competitor did not start.',
});

const ORDER_INCOMPLETE = refusal({
  code: 'ORDER_INCOMPLETE',
  path: ['lines'],
  message: 'The order does not name everybody of the start list exactly once.',
  remedy: 'Send every competitor of the list once.',
});
