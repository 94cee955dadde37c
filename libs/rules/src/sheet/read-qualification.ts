import type { Admission } from '../card.js';
import type { AdmittedBy } from '../codes.js';
import type { Cut } from '../plan.js';
import { parseMark, type Mark } from '../quantities/mark.js';
import type { Findings } from './findings.js';
import type { JsonValue } from './json.js';
import { describe, LIST, OBJECT, oneOf, TEXT, wholeFrom, WHOLE } from './kinds.js';
import { ObjectReader, readValue } from './object-reader.js';
import { itemOf, type Place } from './place.js';
import { belongs, type Terms } from './read-terms.js';
import type { UnitWatch } from './unit-watch.js';

const QUALIFYING_KEYS = ['standard', 'fill'];
const ADMITTED_KEYS = ['bib', 'after', 'by'];
const ADMITTED_BY: readonly AdmittedBy[] = ['R', 'J', 'D'];

export interface Qualifying {
  /** In units of the sheet. */
  readonly standard: number;
  readonly fill: number;
}

/** Reads the standard of a qualification; `null` when there is none to read, `undefined` when it cannot be read. */
export function readQualifying(sheet: ObjectReader, units: UnitWatch): Qualifying | null | undefined {
  if (!belongs(sheet, 'qualifying')) return null;
  const object = sheet.required('qualifying', OBJECT);
  const place = sheet.placeOf('qualifying');
  const qualifying = object && ObjectReader.open(object, place, QUALIFYING_KEYS, sheet.findings);
  const text = qualifying?.required('standard', TEXT);
  const fill = qualifying?.optional('fill', wholeFrom(0), 0);
  if (!qualifying || text === undefined) return undefined;
  const mark = readMark(text, qualifying.placeOf('standard'), units, sheet.findings);
  return mark && fill !== undefined ? { standard: mark.value, fill } : undefined;
}

/** Reads a mark or height that is no trial. */
export function readMark(
  value: JsonValue,
  place: Place,
  units: UnitWatch,
  findings: Findings,
): Mark | undefined {
  const text = readValue(value, place, TEXT, findings);
  if (text === undefined) return undefined;
  const mark = parseMark(text);
  if (mark) {
    units.note(place, mark.unit);
    return mark;
  }
  findings.report(place, 'CELL', `${describe(text)} is no mark: write it like 58.00 or 47-06.25.`);
  return undefined;
}

/** Reads who was let through a cut, or to the final; `cuts`: those in force, if they are known. */
export function readAdmitted(
  sheet: ObjectReader,
  { stage }: Terms,
  bibs: ReadonlySet<string> | undefined,
  cuts: readonly Cut[] | undefined,
): readonly Admission[] | undefined {
  if (!belongs(sheet, 'admitted')) return [];
  const list = sheet.required('admitted', LIST);
  const seen = new Set<string>();
  const admitted = list?.map((item, index) => {
    const place = itemOf(sheet.placeOf('admitted'), index);
    const reader = ObjectReader.open(item, place, ADMITTED_KEYS, sheet.findings);
    const admission = reader && readAdmission(reader, stage, cuts, bibs);
    if (admission) checkAgain(reader, admission, seen);
    return admission;
  });
  return admitted?.some((one) => one === undefined) ? undefined : (admitted as Admission[] | undefined);
}

function readAdmission(
  reader: ObjectReader,
  stage: Terms['stage'],
  cuts: readonly Cut[] | undefined,
  bibs: ReadonlySet<string> | undefined,
): Admission | undefined {
  const bib = reader.required('bib', TEXT);
  if (bib !== undefined && bibs?.has(bib) === false) {
    reportUnknownBib(bib, reader.placeOf('bib'), reader.findings);
  }
  const by = reader.required('by', oneOf(ADMITTED_BY));
  const after = readAfter(reader, stage, cuts);
  return bib === undefined || by === undefined || after === undefined ? undefined : { bib, after, by };
}

function readAfter(
  reader: ObjectReader,
  stage: Terms['stage'],
  cuts: readonly Cut[] | undefined,
): number | null | undefined {
  if (stage !== 'final') {
    const after = reader.optional('after', WHOLE, null);
    if (stage !== 'qualification' || !reader.has('after')) return after;
    reader.reportOutOfPlace('after', 'a qualification admits to the final, not through a cut');
    return undefined;
  }
  const after = reader.required('after', WHOLE);
  if (after === undefined || !cuts || cuts.some((cut) => cut.after === after)) return after;
  const rounds = cuts.map((cut) => cut.after).join(', ');
  const remedy = rounds === '' ? 'there is none at all' : `there are cuts after ${rounds}`;
  reader.findings.report(
    reader.placeOf('after'),
    'UNKNOWN_VALUE',
    `There is no cut after ${after}: ${remedy}.`,
  );
  return undefined;
}

function checkAgain(reader: ObjectReader, { bib, after }: Admission, seen: Set<string>): void {
  const key = JSON.stringify([bib, after]);
  if (seen.has(key)) {
    const message = `Bib ${describe(bib)} is admitted twice; keep one of them.`;
    reader.findings.report(reader.placeOf('bib'), 'DUPLICATE', message);
  }
  seen.add(key);
}

export function reportUnknownBib(bib: string, place: Place, findings: Findings): void {
  findings.report(place, 'UNKNOWN_BIB', `No competitor of this sheet has bib ${describe(bib)}.`);
}
