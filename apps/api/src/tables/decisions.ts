import { createHash } from 'node:crypto';
import type { CsvSource } from '../platform/csv/csv-text.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import type { TableDecisionsInput } from './decisions.inputs.js';
import type { TableDecisions } from './table-reading.js';

export function decisionsOf({ athletes, clubs }: TableDecisionsInput): TableDecisions {
  return {
    athletes: athletes.map(({ line, choice, athleteId, sameLine }) => ({
      ...{ line, choice, athleteId: athleteId ?? null, sameLine: sameLine ?? null },
    })),
    clubs: clubs.map(({ name, choice, clubId }) => ({ name, choice, clubId: clubId ?? null })),
  };
}

/** By what a request is known when it is sent again. */
export function requestPrint(source: CsvSource, rest: unknown): string {
  return createHash('sha256').update(source).update(JSON.stringify(rest)).digest('hex');
}

/** Null: what was looked at is what would be stored. */
export function fingerprintProblem(sent: string | null, now: string): Refusal | null {
  if (sent === now) return null;
  return sent === null ? NOT_LOOKED_AT : CHANGED_SINCE;
}

const NOT_LOOKED_AT = refusal({
  code: 'FINGERPRINT_MISSING',
  path: ['fingerprint'],
  message: 'Nothing says that the table was looked at before it is stored.',
  remedy: 'Send it with `isDryRun` first, and then with the `fingerprint` of that answer.',
});

const CHANGED_SINCE = refusal({
  code: 'CHANGED_SINCE',
  path: ['fingerprint'],
  message:
    'Athletes or clubs that the table names have changed since it was looked at, or it is another table.',
  remedy: 'Look at the table again, and decide again.',
});
