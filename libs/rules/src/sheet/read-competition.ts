import { DISTANCE_EVENT_CODES, VERTICAL_EVENT_CODES } from '../codes.js';
import type { PlanOverrides } from '../plan.js';
import type { Scoring } from '../scoring/scoring.js';
import type { Findings } from './findings.js';
import type { JsonValue } from './json.js';
import { OBJECT, oneOf, TEXT, WHOLE } from './kinds.js';
import { ObjectReader } from './object-reader.js';
import type { Place } from './place.js';
import { bibsOf, readCompetitors, type CompetitorDraft } from './read-competitors.js';
import { readDistance } from './read-distance.js';
import { readHeights } from './read-heights.js';
import { readJumpOff } from './read-jump-off.js';
import { readPlan } from './read-plan.js';
import { readAdmitted, readQualifying } from './read-qualification.js';
import { readScoring } from './read-scoring.js';
import { readTerms, type Terms } from './read-terms.js';
import { readVertical } from './read-vertical.js';
import { SEXES, type Category, type CompetitionContent, type SheetInformation } from './sheet-content.js';
import { UnitWatch } from './unit-watch.js';

const SHEET_KEYS = [
  'format',
  'rules',
  'edition',
  'event',
  'category',
  'implementGrams',
  'indoor',
  'stage',
  'qualifying',
  'plan',
  'heights',
  'competitors',
  'admitted',
  'jumpOff',
  'scoring',
];
const CATEGORY_KEYS = ['sex', 'age'];

/** Whether the sheet is a file of its own or one of a meet, which alone has the scoring then. */
export type SheetPosition = 'alone' | 'in a meet';

/**
 * Reads and checks a `sectorline-sheet/1` whose format has been looked at; `undefined`: problems have been reported.
 */
export function readCompetition(
  value: JsonValue,
  place: Place,
  position: SheetPosition,
  findings: Findings,
): CompetitionContent | undefined {
  const before = findings.count;
  const sheet = ObjectReader.open(value, place, SHEET_KEYS, findings);
  if (!sheet) return undefined;
  const terms = readTerms(sheet);
  const category = readCategory(sheet);
  const implementGrams = sheet.optional('implementGrams', WHOLE, null) ?? null;
  const scoring = readOwnScoring(sheet, position);
  const informationWith: InformationWith = (plan, drafts) => ({
    edition: terms.edition ?? null,
    plan,
    category,
    implementGrams,
    scoring,
    competitors: drafts.flatMap((draft) => draft?.information ?? []),
  });
  const content = readContent(sheet, terms, informationWith);
  return findings.count === before ? content : undefined;
}

type InformationWith = (
  plan: PlanOverrides,
  drafts: readonly (CompetitorDraft<unknown> | undefined)[],
) => SheetInformation;

function readContent(
  sheet: ObjectReader,
  terms: Terms,
  informationWith: InformationWith,
): CompetitionContent | undefined {
  const distanceEvent = DISTANCE_EVENT_CODES.find((code) => code === terms.event);
  if (distanceEvent) {
    const { card, plan, drafts } = readDistance(sheet, terms, distanceEvent);
    return card && { kind: 'distance', card, information: informationWith(plan.overrides, drafts) };
  }
  const verticalEvent = VERTICAL_EVENT_CODES.find((code) => code === terms.event);
  if (verticalEvent) {
    const { card, drafts } = readVertical(sheet, terms, verticalEvent);
    return card && { kind: 'vertical', card, information: informationWith({}, drafts) };
  }
  checkWithoutEvent(sheet, terms);
  return undefined;
}

/** Without an event nothing is known of the cells; all the rest can be read. */
function checkWithoutEvent(sheet: ObjectReader, terms: Terms): void {
  const units = new UnitWatch();
  const { plan } = readPlan(sheet, terms);
  readHeights(sheet, units);
  readQualifying(sheet, units);
  const drafts = readCompetitors(sheet, (text) => text);
  const bibs = drafts && bibsOf(drafts);
  readAdmitted(sheet, terms, bibs, plan?.cuts);
  readJumpOff(sheet, units, bibs);
  units.settle(sheet.findings);
}

function readCategory(sheet: ObjectReader): Category {
  const object = sheet.optional('category', OBJECT, undefined);
  const category =
    object && ObjectReader.open(object, sheet.placeOf('category'), CATEGORY_KEYS, sheet.findings);
  const sex = category?.optional('sex', oneOf(SEXES), undefined);
  const age = category?.optional('age', TEXT, undefined);
  return { ...(sex !== undefined && { sex }), ...(age !== undefined && { age }) };
}

function readOwnScoring(sheet: ObjectReader, position: SheetPosition): Scoring | null {
  if (!sheet.has('scoring')) return null;
  const object = sheet.required('scoring', OBJECT);
  const place = sheet.placeOf('scoring');
  if (position === 'in a meet') {
    sheet.findings.report(
      place,
      'SCORING',
      'The scoring of a meet stands beside its sheets; take this one out.',
    );
    return null;
  }
  return (object && readScoring(object, place, sheet.findings)) ?? null;
}
