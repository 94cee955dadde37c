import { combinedRequests, type Tx } from '#persistence';
import type { Authority, CombinedBody } from '#rules';
import { refusal, type UserError } from '../platform/errors/user-error.types.js';
import type { LoadedCombined } from './combined-loaded.js';

type Decision = Extract<CombinedBody, { kind: 'sign-off' | 'reopening' }>;

export function isDecision(body: CombinedBody): body is Decision {
  return body.kind === 'sign-off' || body.kind === 'reopening';
}

/** Whose word it is, and under which id. */
interface Word {
  readonly id: string;
  readonly authority: Authority;
  readonly holder: string;
}

/**
 * Where a meet demands two persons, a signature or a reopening is done by the second who says it of the same version.
 * Gives who said it first; `asked`: nobody had, and it waits now.
 */
export async function firstPersonOf(
  tx: Tx,
  { row }: LoadedCombined,
  body: Decision,
  { id, authority, holder }: Word,
): Promise<{ readonly firstPerson: string } | { readonly asked: true } | { readonly userError: UserError }> {
  const of = {
    ...{ organisationId: row.organisationId, combinedEventId: row.id },
    ...{ kind: body.kind, version: row.version },
  };
  const words = await combinedRequests.waiting(tx, of);
  const first = words.find(({ askedBy }) => askedBy !== holder);
  if (first) return { firstPerson: first.askedBy };
  if (words.some((word) => word.id === id)) return { asked: true };
  if (words.length > 0) return { userError: SAME_PERSON };
  const reason = body.kind === 'sign-off' ? body.incomplete : body.reason;
  await combinedRequests.ask(tx, { ...of, id, reason, authority, askedBy: holder });
  return { asked: true };
}

const SAME_PERSON = refusal({
  code: 'SAME_PERSON',
  message: 'Whoever said it first cannot be the second person.',
  remedy: 'Let another referee or director look at it and say the same.',
});
