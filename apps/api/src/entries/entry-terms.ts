import type { EntryTermsRow } from '#persistence';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';

/** Who enters: a director of the meet may do so late, with a reason; a coach until the entries close. */
export type EntryRole = 'director' | 'coach';

/** Entries are closed from this instant on; without a time they are open to the director alone, until the first trial. */
export function isClosed(terms: Pick<EntryTermsRow, 'closesAt'> | null, now: Date): boolean {
  const closesAt = terms?.closesAt ?? null;
  return closesAt !== null && now.getTime() >= Date.parse(closesAt);
}

/** Null: somebody of this role may enter or withdraw now. */
export function closingProblem(
  terms: Pick<EntryTermsRow, 'closesAt'> | null,
  { role, reason, now }: { readonly role: EntryRole; readonly reason: string | null; readonly now: Date },
): Refusal | null {
  if (role === 'coach' && (terms?.closesAt ?? null) === null) return NOT_OPEN;
  if (!isClosed(terms, now)) return null;
  if (role === 'coach') return CLOSED;
  return reason === null ? LATE_REASON_MISSING : null;
}

const NOT_OPEN = refusal({
  code: 'ENTRIES_NOT_OPEN',
  path: ['competitionId'],
  message: 'The meet takes entries from its director alone.',
  remedy: 'Ask the director, who opens entries to coaches by saying when they close.',
});

const CLOSED = refusal({
  code: 'ENTRIES_CLOSED',
  path: ['competitionId'],
  message: 'The entries are closed.',
  remedy: 'Ask the director of the meet, who may still change the start list with a reason.',
});

const LATE_REASON_MISSING = refusal({
  code: 'LATE_REASON_MISSING',
  path: ['reason'],
  message: 'The entries are closed; what changes now is kept with a reason.',
  remedy: 'Send `reason`.',
});
