import { refusal, type Refusal } from '../platform/errors/user-error.types.js';

/** Clocks of devices differ by that much without anybody being wrong. */
const LENIENCY_MS = 60_000;

/** What was done cannot have been done later than now. */
export function inFuture(at: Date, field: string): Refusal | null {
  if (at.getTime() <= Date.now() + LENIENCY_MS) return null;
  return refusal({
    code: 'IN_THE_FUTURE',
    path: [field],
    message: 'This is later than now.',
    remedy: 'Send when it was; or leave it out, for now.',
  });
}
