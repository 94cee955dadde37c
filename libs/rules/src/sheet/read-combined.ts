import type { CombinedCard, CombinedCompetitor, CombinedMark } from '../combined/combined-card.js';
import { parseCombinedMark, type Timing } from '../combined/combined-mark.js';
import { COMBINED_TABLE_CODES, COMBINED_TABLES } from '../combined/combined-tables.js';
import type { CombinedEventCode } from '../combined/scoring-table.js';
import type { Findings } from './findings.js';
import type { JsonObject, JsonValue } from './json.js';
import { describe, LIST, OBJECT, oneOf, orNull, TEXT } from './kinds.js';
import { ObjectReader } from './object-reader.js';
import { itemOf, type Place } from './place.js';
import { BibRegister, readClub } from './read-competitors.js';

const COMBINED_KEYS = ['format', 'table', 'timing', 'rows'];
const ROW_KEYS = ['bib', 'name', 'club', 'marks'];
const TIMINGS: readonly Timing[] = ['electronic', 'hand'];

/** What settles how marks are read. `undefined`: a problem has been reported. */
interface MarkTerms {
  readonly events: readonly CombinedEventCode[] | undefined;
  readonly timing: Timing | undefined;
}

/** Reads and checks a `sectorline-combined/1`; `undefined`: problems have been reported. */
export function readCombined(value: JsonValue, place: Place, findings: Findings): CombinedCard | undefined {
  const before = findings.count;
  const sheet = ObjectReader.open(value, place, COMBINED_KEYS, findings);
  const table = sheet?.required('table', oneOf(COMBINED_TABLE_CODES));
  const timing = sheet?.optional('timing', oneOf(TIMINGS), 'electronic' as const);
  const list = sheet?.required('rows', LIST);
  if (!sheet || !list) return undefined;
  const terms: MarkTerms = { events: table && COMBINED_TABLES[table].events, timing };
  const bibs = new BibRegister(findings);
  const rows = list.flatMap((item, index) => {
    const row = ObjectReader.open(item, itemOf(sheet.placeOf('rows'), index), ROW_KEYS, findings);
    return row ? [readRow(row, bibs, terms)] : [];
  });
  return findings.count === before && table && timing ? { table, timing, rows } : undefined;
}

function readRow(row: ObjectReader, bibs: BibRegister, terms: MarkTerms): CombinedCompetitor {
  const bib = bibs.read(row) ?? '';
  const name = row.optional('name', TEXT, null) ?? null;
  const club = readClub(row);
  const object = row.required('marks', OBJECT);
  const marks = object ? readMarks(object, row.placeOf('marks'), terms, row.findings) : [];
  return { bib, name, club, marks };
}

function readMarks(object: JsonObject, place: Place, terms: MarkTerms, findings: Findings): CombinedMark[] {
  const marks = ObjectReader.open(object, place, terms.events ?? null, findings);
  const events = terms.events ?? [];
  // Without a table nothing is known of the events; a mark is a string or null whatever they are.
  if (!terms.events) for (const key of object.keys()) marks?.required(key, orNull(TEXT));
  return events.map((event): CombinedMark => {
    const text = marks?.required(event, orNull(TEXT));
    if (!marks || text === undefined || text === null || text === 'DNS') return text === 'DNS' ? text : null;
    return readMark(text, event, marks.placeOf(event), terms.timing, findings);
  });
}

function readMark(
  text: string,
  event: CombinedEventCode,
  place: Place,
  timing: Timing | undefined,
  findings: Findings,
): number | null {
  // Where the timing is not known, a time of either kind may be right.
  const mark = parseCombinedMark(text, event, timing ?? 'hand');
  if (mark === null) {
    const message = `${describe(text)} is no mark: write a time like 10.39 or 4:36.40, a distance or height in metres, null or "DNS".`;
    findings.report(place, 'CELL', message);
  }
  return mark;
}
