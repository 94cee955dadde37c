import type { Problem } from '../result/result-document.js';
import { Findings } from './findings.js';
import type { JsonObject, JsonValue } from './json.js';
import { LIST, OBJECT, oneOf } from './kinds.js';
import { ObjectReader } from './object-reader.js';
import { DOCUMENT, itemOf, type Place } from './place.js';
import { readCombined } from './read-combined.js';
import { readCompetition } from './read-competition.js';
import { readScoring } from './read-scoring.js';
import { readSource } from './read-source.js';
import {
  COMBINED_FORMAT,
  COMPETITION_FORMAT,
  MEET_FORMAT,
  type CompetitionContent,
  type MeetContent,
  type SheetContent,
} from './sheet-content.js';
import { headOf, type SheetHead } from './sheet-head.js';

/** The most competitors that a file may hold, all its sheets together. */
export const MAX_COMPETITORS = 2_000;

const MEET_KEYS = ['format', 'scoring', 'sheets'];
const FORMATS = [COMPETITION_FORMAT, COMBINED_FORMAT, MEET_FORMAT] as const;

export type SheetReading =
  | { readonly ok: true; readonly content: SheetContent }
  | { readonly ok: false; readonly problems: readonly Problem[]; readonly head: SheetHead };

/** Reads and checks a file, or a text that stands for one. */
export function readSheetSource(source: Uint8Array | string): SheetReading {
  const reading = readSource(source);
  if (reading.ok) return readSheet(reading.value);
  return { ok: false, problems: [reading.problem], head: headOf(null) };
}

/** Reads and checks a sheet of any format: what it holds, or all that is wrong with it, in document order. */
export function readSheet(value: JsonValue): SheetReading {
  const findings = new Findings();
  const content = isTooLarge(value, findings) ? undefined : readAny(value, findings);
  if (content) return { ok: true, content };
  return { ok: false, problems: findings.problems(), head: headOf(value) };
}

function readAny(value: JsonValue, findings: Findings): SheetContent | undefined {
  const format = readFormat(value, DOCUMENT, FORMATS, findings);
  switch (format) {
    case undefined:
      return undefined;
    case COMPETITION_FORMAT:
      return readCompetition(value, DOCUMENT, 'alone', findings);
    case COMBINED_FORMAT: {
      const card = readCombined(value, DOCUMENT, findings);
      return card && { kind: 'combined', card };
    }
    case MEET_FORMAT:
      return readMeet(value, findings);
  }
}

/** Of what has no known format nothing more can be said. */
function readFormat<F extends string>(
  value: JsonValue,
  place: Place,
  formats: readonly F[],
  findings: Findings,
): F | undefined {
  const reader = ObjectReader.open(value, place, null, findings);
  return reader?.required('format', oneOf(formats));
}

function readMeet(value: JsonValue, findings: Findings): MeetContent | undefined {
  const before = findings.count;
  const meet = ObjectReader.open(value, DOCUMENT, MEET_KEYS, findings);
  const object = meet?.required('scoring', OBJECT);
  const list = meet?.required('sheets', LIST);
  if (!meet) return undefined;
  const scoring = object && readScoring(object, meet.placeOf('scoring'), findings);
  const sheets = list?.flatMap((item, index): CompetitionContent[] => {
    const place = itemOf(meet.placeOf('sheets'), index);
    if (!readFormat(item, place, [COMPETITION_FORMAT], findings)) return [];
    const sheet = readCompetition(item, place, 'in a meet', findings);
    return sheet ? [sheet] : [];
  });
  return findings.count === before && scoring && sheets ? { kind: 'meet', scoring, sheets } : undefined;
}

/** Counted before anything is looked at, so that nothing too large is worked on. */
function isTooLarge(value: JsonValue, findings: Findings): boolean {
  const count = competitorsIn(value);
  if (count <= MAX_COMPETITORS) return false;
  const message = `A file holds at most ${MAX_COMPETITORS} competitors, not ${count}; divide it.`;
  findings.report(DOCUMENT, 'TOO_LARGE', message);
  return true;
}

function competitorsIn(value: JsonValue): number {
  if (!(value instanceof Map)) return 0;
  const object: JsonObject = value;
  const sheets = object.get('sheets');
  const own = lengthOf(object.get('competitors')) + lengthOf(object.get('rows'));
  if (!Array.isArray(sheets)) return own;
  return (sheets as readonly JsonValue[]).reduce<number>(
    (sum, sheet) => sum + (sheet instanceof Map ? lengthOf((sheet as JsonObject).get('competitors')) : 0),
    own,
  );
}

function lengthOf(value: JsonValue | undefined): number {
  return Array.isArray(value) ? value.length : 0;
}
