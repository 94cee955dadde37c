import { readUuid } from '../scalars/uuid.js';

/** The kinds of things that have an id of their own in the API. */
export const OBJECT_KINDS = [
  'Organisation',
  'Club',
  'Athlete',
  'Meet',
  'Competition',
  'Competitor',
  'Entry',
  'CallingGroup',
  'CombinedEvent',
  'CombinedEntrant',
  'Person',
] as const;
export type ObjectKind = (typeof OBJECT_KINDS)[number];

/** The id as the API shows it: opaque to clients, one per object of the whole installation. */
export function globalId(kind: ObjectKind, uuid: string): string {
  return Buffer.from(`${kind}:${uuid}`).toString('base64url');
}

/** Takes an id apart again; null unless this API could have made it. */
export function readGlobalId(id: string): { readonly kind: ObjectKind; readonly uuid: string } | null {
  const [kind, uuid, ...rest] = Buffer.from(id, 'base64url').toString('latin1').split(':');
  const known = OBJECT_KINDS.find((candidate) => candidate === kind);
  if (!known || uuid === undefined || rest.length > 0 || readUuid(uuid) !== uuid) return null;
  return globalId(known, uuid) === id ? { kind: known, uuid } : null;
}

/** The UUID behind an id of this kind, or null. */
export function uuidOf(kind: ObjectKind, id: unknown): string | null {
  const read = typeof id === 'string' && id.length <= 128 ? readGlobalId(id) : null;
  return read?.kind === kind ? read.uuid : null;
}
