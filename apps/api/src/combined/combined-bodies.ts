import { parseMark, parseRaceTime, parseWind, type CombinedBody, type CombinedPerformance } from '#rules';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import type { CombinedEntryInput, MarkedInput, TimedInput } from './combined-entries.inputs.js';

/** One entry as it reached the API. */
export interface CombinedRequest {
  readonly combinedEventId: string;
  readonly entryId: string;
  readonly device: string | null;
  readonly deviceAt: Date | null;
  /** `null`: the entry does not depend on what the sender has seen. */
  readonly expectedVersion: number | null;
  readonly body: CombinedBody | Refusal;
  /** How the input calls what the entry calls otherwise. */
  readonly fields: Readonly<Record<string, string>>;
}

const FIELDS = { id: 'entryId', entrant: 'entrantId', entry: 'targetEntryId', from: 'fromEvent' } as const;

export function requestFor(
  { combinedEventId, entryId, device, deviceAt }: CombinedEntryInput,
  body: CombinedRequest['body'],
  expectedVersion: number | null = null,
  fields: CombinedRequest['fields'] = {},
): CombinedRequest {
  return {
    combinedEventId,
    entryId,
    device: device ?? null,
    deviceAt: deviceAt ?? null,
    expectedVersion,
    body,
    fields: { ...FIELDS, ...fields },
  };
}

export const TIME_FIELDS = { hundredths: 'time', timing: 'time' } as const;
export const MARK_FIELDS = { hundredths: 'mark', timing: 'mark' } as const;

/** How a race ended, in whole hundredths. */
export function timed({ outcome, time, wind }: TimedInput): CombinedPerformance {
  const read = typeof time === 'string' ? parseRaceTime(time) : null;
  return {
    outcome: outcome === 'finished' ? 'valid' : outcome,
    hundredths: read?.hundredths ?? null,
    timing: read?.timing ?? null,
    wind: windIn(wind),
  };
}

/** What a field event brought, in whole centimetres; the tables are metric. */
export function marked({ outcome, mark, wind }: MarkedInput): CombinedPerformance | Refusal {
  const read = typeof mark === 'string' ? parseMark(mark) : null;
  if (read && read.unit !== 'cm') return IN_METRES;
  return { outcome, hundredths: read?.value ?? null, timing: null, wind: windIn(wind) };
}

export function isRefusal(value: object): value is Refusal {
  return 'code' in value && 'remedy' in value;
}

function windIn(text: string | null | undefined): number | 'NWI' | null {
  return typeof text === 'string' ? parseWind(text) : null;
}

const IN_METRES = refusal({
  code: 'MARK_UNIT',
  path: ['mark'],
  message: 'The scoring tables are metric.',
  remedy: 'Measure in metres with two decimals, like "12.34"; a mark in feet and inches is not converted.',
  rule: 'Scoring tables for combined events: centimetres',
});
