import { createHash } from 'node:crypto';

/**
 * SHA-256 over what was entered where: the same id with another one is another entry, and is not taken. Device and
 * time are left out, so that a resend from a restarted device is the same entry.
 */
export function fingerprintOf(competitionId: string, body: object): string {
  return createHash('sha256')
    .update(canonical([competitionId, body]))
    .digest('hex');
}

/** JSON with the keys of every object in order. */
function canonical(value: unknown): string {
  return JSON.stringify(value, (_, inner: unknown) => {
    if (typeof inner !== 'object' || inner === null || Array.isArray(inner)) return inner;
    return Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)));
  });
}
