import type { Refusal } from '../platform/errors/user-error.types.js';
import { refusal } from '../platform/errors/user-error.types.js';
import type { LogResult } from './practice.types.js';

/** What becomes of the items of a batch, in their order. */
export class Batch {
  readonly results: LogResult[] = [];
  readonly userErrors: Refusal[] = [];

  stored(id: string): void {
    this.results.push({ id, status: 'stored' });
  }

  replayed(id: string): void {
    this.results.push({ id, status: 'replayed' });
  }

  refused(id: string, ...why: readonly Refusal[]): void {
    this.results.push({ id, status: 'refused' });
    this.userErrors.push(...why);
  }
}

/** Something that was sent under its own id, as it lies there already. */
interface Known {
  readonly id: string;
  readonly replacesId: string | null;
  readonly fingerprint: string;
}

/** What is known of an item before anything else is asked: `new`, or what to answer at once. */
export function knownAs(
  wanted: Known,
  there: readonly Known[],
  path: readonly string[],
): 'new' | 'replayed' | Refusal {
  const same = there.find(({ id }) => id === wanted.id);
  if (same) return same.fingerprint === wanted.fingerprint ? 'replayed' : reused(path);
  const taken =
    wanted.replacesId !== null && there.some(({ replacesId }) => replacesId === wanted.replacesId);
  return taken ? replacedAlready(path) : 'new';
}

function reused(path: readonly string[]): Refusal {
  return refusal({
    code: 'ID_REUSED',
    path: [...path, 'id'],
    message: 'Something else was made under this id.',
    remedy: 'Make a new id; send the same id only with the same content.',
  });
}

function replacedAlready(path: readonly string[]): Refusal {
  return refusal({
    code: 'REPLACED_ALREADY',
    path: [...path, 'replacesId'],
    message: 'It has been corrected before.',
    remedy: 'Read it again and correct the newest row.',
  });
}

export function noSuch(what: string, path: readonly string[]): Refusal {
  return refusal({
    code: 'NOT_FOUND',
    path,
    message: `There is no such ${what}, or it is not yours to write about.`,
    remedy: `Send the id of a ${what} of an athlete whom you coach.`,
  });
}

export function reasonOf(
  replacesId: string | null | undefined,
  reason: string | null | undefined,
  isTakenBack: boolean,
  path: readonly string[],
): Refusal | null {
  const replaces = typeof replacesId === 'string';
  if (replaces && typeof reason !== 'string') {
    return refusal({
      code: 'REASON_MISSING',
      path: [...path, 'reason'],
      message: 'A correction says why.',
      remedy: 'Send a reason.',
    });
  }
  if (!replaces && (typeof reason === 'string' || isTakenBack)) {
    return refusal({
      code: 'REASON_NOT_EXPECTED',
      path: [...path, typeof reason === 'string' ? 'reason' : 'replacesId'],
      message: 'Only what replaces something has a reason, or takes something back.',
      remedy: 'Send replacesId with it, or leave it out.',
    });
  }
  return null;
}
