import {
  DISTANCE_EVENT_CODES,
  RULE_SET_CODES,
  VERTICAL_EVENT_CODES,
  type EventCode,
  type RuleSetCode,
  type Stage,
} from '../codes.js';
import { eventOf } from '../events/event.js';
import { editionsOf, ruleSet } from '../rule-sets/index.js';
import type { RuleSet } from '../rule-sets/rule-set.js';
import { FLAG, LIST, OBJECT, oneOf, TEXT } from './kinds.js';
import type { ObjectReader } from './object-reader.js';

/** What the head of a sheet settles. `undefined`: it does not, a problem has been reported. */
export interface Terms {
  readonly ruleSet: RuleSet | undefined;
  /** As the sheet names it; `null`: it does not. */
  readonly edition: string | null | undefined;
  readonly event: EventCode | undefined;
  readonly indoor: boolean | undefined;
  readonly stage: Stage | undefined;
  readonly isVertical: boolean | undefined;
  /** Whether a mark may have a wind beside it. */
  readonly hasWind: boolean | undefined;
}

const EVENT_CODES = [...DISTANCE_EVENT_CODES, ...VERTICAL_EVENT_CODES] as const;
const STAGES = ['final', 'qualification'] as const;

/** Reads the head of a sheet, and reports keys that do not belong to such a competition and those that are missing. */
export function readTerms(sheet: ObjectReader): Terms {
  const rules = sheet.required('rules', oneOf(RULE_SET_CODES));
  const edition = readEdition(sheet, rules);
  const event = sheet.required('event', oneOf(EVENT_CODES));
  const indoor = sheet.optional('indoor', FLAG, false);
  const stage = sheet.optional('stage', oneOf(STAGES), 'final' as const);
  const terms: Terms = {
    ruleSet: rules && edition !== undefined ? ruleSet(rules, edition ?? undefined) : undefined,
    edition,
    event,
    indoor,
    stage,
    isVertical: event && eventOf(event).kind === 'vertical-jump',
    hasWind: event && hasWind(event, indoor),
  };
  checkKeys(sheet, terms);
  return terms;
}

function readEdition(sheet: ObjectReader, rules: RuleSetCode | undefined): string | null | undefined {
  const kind = rules ? oneOf(editionsOf(rules)) : TEXT;
  return sheet.optional('edition', kind, null);
}

/** When the roof is not known, an event without wind outdoors has none anyway. */
function hasWind(event: EventCode, indoor: boolean | undefined): boolean | undefined {
  const outdoors = eventOf(event).hasWind(false);
  return indoor === undefined && outdoors ? undefined : outdoors && indoor === false;
}

/** What belongs to one kind of competition only. Of the wrong type, a key is that before it is out of place. */
function checkKeys(sheet: ObjectReader, { isVertical, stage }: Terms): void {
  if (isVertical === true) {
    refuse(sheet, 'plan', 'vertical jumps have no plan of rounds');
    if (!sheet.has('heights')) sheet.reportMissing('heights', 'the heights of the bar, rising');
  }
  if (isVertical === false) refuse(sheet, 'heights', 'only vertical jumps have heights');
  if (stage === 'final') refuse(sheet, 'qualifying', 'only a qualification has it');
  if (stage === 'qualification' && !sheet.has('qualifying')) {
    sheet.reportMissing('qualifying', 'the standard, and how many the field is filled up to');
  }
  if (isVertical === false || stage === 'qualification') {
    refuse(sheet, 'jumpOff', 'only the final of a vertical jump has a jump-off');
  }
}

const TYPES = { plan: OBJECT, qualifying: OBJECT, heights: LIST, jumpOff: LIST } as const;

function refuse(sheet: ObjectReader, key: keyof typeof TYPES, because: string): void {
  if (!sheet.has(key)) return;
  sheet.required<unknown>(key, TYPES[key]);
  sheet.reportOutOfPlace(key, because);
}

/** Whether a key is there and belongs to such a competition, as far as that is known. */
export function belongs(sheet: ObjectReader, key: string): boolean {
  return sheet.has(key) && !sheet.findings.hasAt(sheet.placeOf(key));
}
