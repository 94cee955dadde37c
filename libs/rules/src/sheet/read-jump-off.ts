import type { VerticalTrial } from '../vertical/vertical-card.js';
import { parseJumpOffTry } from '../vertical/vertical-cell.js';
import type { JsonObject } from './json.js';
import { describe, LIST, OBJECT, TEXT } from './kinds.js';
import { ObjectReader, readValue } from './object-reader.js';
import { itemOf, type Place } from './place.js';
import { readMark, reportUnknownBib } from './read-qualification.js';
import { belongs } from './read-terms.js';
import type { UnitWatch } from './unit-watch.js';

const ROUND_KEYS = ['height', 'tries'];

/** One round of a jump-off; `undefined`: a problem has been reported. */
export interface RoundDraft {
  readonly place: Place;
  readonly height: number | undefined;
  readonly tries: readonly TryDraft[] | undefined;
  /** Where the entry of a bib stands, or would stand. */
  readonly placeOf: (bib: string) => Place;
}

export interface TryDraft {
  readonly bib: string;
  readonly trial: VerticalTrial | undefined;
}

/** Reads the rounds of a jump-off. `bibs`: of all competitors, in order, if they are known. */
export function readJumpOff(
  sheet: ObjectReader,
  units: UnitWatch,
  bibs: ReadonlySet<string> | undefined,
): (RoundDraft | undefined)[] | undefined {
  if (!belongs(sheet, 'jumpOff')) return [];
  const list = sheet.required('jumpOff', LIST);
  return list?.map((item, index) => {
    const place = itemOf(sheet.placeOf('jumpOff'), index);
    const round = ObjectReader.open(item, place, ROUND_KEYS, sheet.findings);
    return round && readRound(round, units, bibs);
  });
}

function readRound(round: ObjectReader, units: UnitWatch, bibs: ReadonlySet<string> | undefined): RoundDraft {
  const text = round.required('height', TEXT);
  const height =
    text === undefined ? undefined : readMark(text, round.placeOf('height'), units, round.findings);
  const object = round.required('tries', OBJECT);
  const placeOf = placesOfBibs(object ?? new Map(), round.placeOf('tries'), [...(bibs ?? [])]);
  const tries = object && [...object.keys()].map((bib) => readTry(object, bib, placeOf(bib), round, bibs));
  return { place: round.place, height: height?.value, tries, placeOf };
}

function readTry(
  tries: JsonObject,
  bib: string,
  place: Place,
  { findings }: ObjectReader,
  bibs: ReadonlySet<string> | undefined,
): TryDraft {
  if (bibs && !bibs.has(bib)) reportUnknownBib(bib, place, findings);
  const text = readValue(tries.get(bib) ?? null, place, TEXT, findings);
  if (text === undefined) return { bib, trial: undefined };
  const trial = parseJumpOffTry(text) ?? undefined;
  if (!trial)
    findings.report(place, 'CELL', `${describe(text)} is no trial of a jump-off: write O, X, - or r.`);
  return { bib, trial };
}

/** An entry that is missing is told before those that are there, in the order of competition. */
function placesOfBibs(tries: JsonObject, parent: Place, bibs: readonly string[]): (bib: string) => Place {
  const missing = bibs.filter((bib) => !tries.has(bib));
  const order = [...missing, ...tries.keys()];
  const indexOf = new Map(order.map((bib, index) => [bib, index - missing.length]));
  return (bib) => ({ parent, step: bib, index: indexOf.get(bib) ?? order.length });
}
