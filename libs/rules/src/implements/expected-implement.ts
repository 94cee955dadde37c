import type { EventCode, RuleSetCode } from '../codes.js';
import { citation } from '../rule-sets/citing.js';
import type { Citation } from '../rule-sets/rule-set.js';
import { isValidOn } from '../categories/validity.js';
import { implementFor, implementOf, type Implement } from './implement-for.js';
import { IMPLEMENT_RULES } from './implement-rules.js';
import { implementRule } from './specifications.js';
import { isThrowEvent, type ThrowEventCode } from './throw-event.js';

/** Who throws, as a competition says it. */
export interface Thrower {
  readonly rules: RuleSetCode;
  readonly event: EventCode;
  readonly sex: 'M' | 'W' | 'X' | null;
  /** As it was written: `U18`, `45`, `45+`, `W45`; `null`: everybody of the rule set's open category. */
  readonly age: string | null;
  /** `YYYY-MM-DD` */
  readonly onDate: string;
  /** What the meet lays down; `null`: nothing, the table decides. */
  readonly grams: number | null;
}

export interface ExpectedImplement {
  readonly implement: Implement;
  /** What the table of the rule set has for the category, where the meet lays down another mass. */
  readonly tableGrams: number | null;
}

const OF_THE_MEET: Citation = citation('regulations of the meet', 'constructed', 'No table was asked.');

/**
 * The implement that is thrown: of the mass that the meet lays down, else of the table in force on the day. `null`:
 * nothing is thrown, or nobody says what.
 */
export function expectedImplement(thrower: Thrower): ExpectedImplement | null {
  const { event, grams } = thrower;
  if (!isThrowEvent(event)) return null;
  const ofTable = tableImplement(thrower, event);
  if (grams === null || ofTable?.grams === grams) {
    return ofTable && { implement: ofTable, tableGrams: null };
  }
  return { implement: implementOf(event, grams, OF_THE_MEET), tableGrams: ofTable?.grams ?? null };
}

function tableImplement({ rules, sex, age, onDate }: Thrower, event: ThrowEventCode): Implement | null {
  const code = categoryCode(rules, age);
  return code === null || (sex !== 'M' && sex !== 'W') ? null : implementFor(rules, event, sex, code, onDate);
}

const OPEN_CATEGORIES: Readonly<Record<RuleSetCode, string | null>> = {
  WA: 'senior',
  USATF: 'senior',
  NFHS: 'high-school',
  NCAA: 'college',
  WMA: null,
};

/** The code of the tables for a category as it is written on programmes. */
function categoryCode(rules: RuleSetCode, age: string | null): string | null {
  if (age === null) return OPEN_CATEGORIES[rules];
  return /^[MW]?(\d{2,3})\+?$/.exec(age)?.[1] ?? age;
}

/**
 * An implement as what it is registered as, whoever throws it: the mass by a table of the rule set that has it on
 * that day, else by the rule that describes the implement.
 */
export function registeredImplement(
  rules: RuleSetCode,
  event: ThrowEventCode,
  grams: number,
  onDate: string,
): Implement {
  const rule = IMPLEMENT_RULES.find(
    (one) =>
      one.rules === rules && one.event === event && one.grams === grams && isValidOn(one.valid, onDate),
  );
  return implementOf(event, grams, rule?.cite ?? citation(implementRule(event), 'memory'));
}
