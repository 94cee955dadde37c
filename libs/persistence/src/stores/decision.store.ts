import { DecisionConfirmation } from '../entities/decision-confirmation.entity.js';
import { DecisionRequest } from '../entities/decision-request.entity.js';
import type { DecisionRequestRow, DecisionState } from '../access-rows.js';
import type { Authority } from '../rows.js';
import { columns } from '../statement.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

export type NewDecisionRequest = Omit<DecisionRequestRow, 'askedAt'>;

/** Asks for a second person. The caller holds the competition's lock. */
export async function ask(tx: Tx, row: NewDecisionRequest): Promise<void> {
  await managerOf(tx).insert(DecisionRequest, row);
}

const SELECT = `
  SELECT ${columns('id', 'competitionId', 'kind', 'reason', 'version', 'askedAt', 'confirmedBy', 'confirmedAt', 'entryId')},
         request.organisation_id AS "organisationId", request.authority, request.asked_by AS "askedBy",
         word.authority AS "confirmingAuthority"
    FROM decision_request AS request LEFT JOIN decision_confirmation AS word
      ON word.organisation_id = request.organisation_id AND word.request_id = request.id`;

export async function find(at: Reads, organisationId: string, id: string): Promise<DecisionState | null> {
  const rows = await managerOf(at).query<DecisionState[]>(
    `${SELECT} WHERE request.organisation_id = $1 AND request.id = $2`,
    [organisationId, id],
  );
  return rows[0] ?? null;
}

/** Everything that was asked of a second person, the newest first. */
export async function ofCompetition(
  at: Reads,
  organisationId: string,
  competitionId: string,
): Promise<DecisionState[]> {
  return managerOf(at).query<DecisionState[]>(
    `${SELECT} WHERE request.organisation_id = $1 AND competition_id = $2 ORDER BY asked_at DESC, request.id DESC`,
    [organisationId, competitionId],
  );
}

export interface NewConfirmation {
  readonly organisationId: string;
  readonly requestId: string;
  readonly askedBy: string;
  readonly entryId: string;
  readonly authority: Authority;
  readonly confirmedBy: string;
}

/** Throws a `check` violation of `decision_confirmation_two_persons` when the second is the first. */
export async function confirm(tx: Tx, row: NewConfirmation): Promise<void> {
  await managerOf(tx).insert(DecisionConfirmation, row);
}
