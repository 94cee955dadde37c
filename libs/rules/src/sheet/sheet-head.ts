import { RULE_SET_CODES, type RuleSetCode } from '../codes.js';
import { editionsOf } from '../rule-sets/index.js';
import type { JsonObject, JsonValue } from './json.js';
import { MEET_FORMAT } from './sheet-content.js';

/** What can be said of a sheet that is not valid: what its result would have been, and by which rules. */
export interface SheetHead {
  readonly isMeet: boolean;
  readonly rules?: RuleSetCode;
  readonly edition?: string;
}

export function headOf(value: JsonValue): SheetHead {
  if (!(value instanceof Map)) return { isMeet: false };
  const sheet: JsonObject = value;
  const isMeet = sheet.get('format') === MEET_FORMAT;
  const rules = RULE_SET_CODES.find((code) => code === sheet.get('rules'));
  if (isMeet || !rules) return { isMeet };
  const editions = editionsOf(rules);
  const edition = sheet.has('edition')
    ? editions.find((one) => one === sheet.get('edition'))
    : editions.at(-1);
  return { isMeet, rules, ...(edition !== undefined && { edition }) };
}
