import type { EntryBody, SharedBody, VerticalBody } from '#rules';
import type { EntryInput } from './entry.inputs.js';
import type { Entered, EntryRequest } from './entry-request.js';

/** The request for an entry that is alike in every event. */
export function requestOf(
  input: EntryInput,
  body: SharedBody,
  expectedVersion: number | null = null,
): EntryRequest {
  return requestFor(input, { in: 'any', body }, expectedVersion);
}

/** The request for an entry in rounds whose body needs nothing of the competition. */
export function roundRequest(
  input: EntryInput,
  body: EntryBody,
  expectedVersion: number | null = null,
): EntryRequest {
  return requestFor(input, { in: 'distance', bodyFor: () => body }, expectedVersion);
}

/** The same at a bar. */
export function barRequest(
  input: EntryInput,
  body: VerticalBody,
  expectedVersion: number | null = null,
): EntryRequest {
  return requestFor(input, { in: 'vertical', bodyFor: () => body }, expectedVersion);
}

export function requestFor(
  { competitionId, entryId, device, deviceAt }: EntryInput,
  entered: Entered,
  expectedVersion: number | null = null,
): EntryRequest {
  return {
    competitionId,
    entryId,
    device: device ?? null,
    deviceAt: deviceAt ?? null,
    expectedVersion,
    entered,
  };
}
