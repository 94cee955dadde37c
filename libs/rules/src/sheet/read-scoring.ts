import { parsePlacePoints, type Scoring } from '../scoring/scoring.js';
import type { Fraction } from '../quantities/fraction.js';
import type { Findings } from './findings.js';
import type { JsonValue } from './json.js';
import { describe, LIST, oneOf, orNull, wholeFrom, type Kind } from './kinds.js';
import { ObjectReader, readValue } from './object-reader.js';
import { itemOf, type Place } from './place.js';

const SCORING_KEYS = ['places', 'scorersPerClub', 'nonScorers'];
const NON_SCORERS = ['out', 'hold'] as const;

const NUMBER: Kind<number> = {
  expected: 'a number',
  read: (value) => (typeof value === 'number' ? value : undefined),
};

/** Reads how places give points to clubs. */
export function readScoring(value: JsonValue, place: Place, findings: Findings): Scoring | undefined {
  const scoring = ObjectReader.open(value, place, SCORING_KEYS, findings);
  if (!scoring) return undefined;
  const places = readPlacePoints(scoring);
  const scorersPerClub = scoring.optional('scorersPerClub', orNull(wholeFrom(1)), null);
  const nonScorers = scoring.optional('nonScorers', oneOf(NON_SCORERS), 'out' as const);
  if (!places || scorersPerClub === undefined || !nonScorers) return undefined;
  return { places, scorersPerClub, nonScorers };
}

function readPlacePoints(scoring: ObjectReader): readonly Fraction[] | undefined {
  const list = scoring.required('places', LIST);
  const points = list?.map((item, index) => {
    const place = itemOf(scoring.placeOf('places'), index);
    return readPoints(item, place, scoring.findings);
  });
  return points?.some((one) => one === undefined) ? undefined : (points as readonly Fraction[] | undefined);
}

function readPoints(item: JsonValue, place: Place, findings: Findings): Fraction | undefined {
  const number = readValue(item, place, NUMBER, findings);
  if (number === undefined) return undefined;
  const points = parsePlacePoints(String(number));
  if (points) return points;
  const message = `Points are from 0 to 10000 with at most three decimals, not ${describe(number)}.`;
  findings.report(place, 'SCORING', message);
  return undefined;
}
