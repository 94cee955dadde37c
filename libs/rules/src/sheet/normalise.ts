import { RULE_SET_CODES } from '../codes.js';
import { parseTime } from '../combined/combined-mark.js';
import { isTrackEvent, type CombinedEventCode } from '../combined/scoring-table.js';
import { resolvePlan } from '../progression/resolve-plan.js';
import { editionsOf, ruleSet } from '../rule-sets/index.js';
import type { RuleSet } from '../rule-sets/rule-set.js';
import { formatTime } from './combined-text.js';
import { parseDistanceCell, formatDistanceCell } from './distance-cell.js';
import { plainObject, type PlainJson, type PlainObject } from './json.js';
import { COMBINED_FORMAT, COMPETITION_FORMAT, MEET_FORMAT } from './sheet-content.js';

/**
 * The one form of all sheets that say the same: defaults left out (also parts of a plan that are the rule set's own,
 * and an edition that is the newest), no empty cells at the end of a series, cells written in one way. Two sheets
 * are the same when their normal forms are equal as JSON values. Takes what `JSON.parse` gives of a valid sheet;
 * what it does not know it leaves alone.
 */
export function normaliseSheet(sheet: PlainJson): PlainJson {
  if (!isObject(sheet)) return sheet;
  switch (sheet['format']) {
    case COMPETITION_FORMAT:
      return normaliseCompetition(sheet);
    case COMBINED_FORMAT:
      return normaliseCombined(sheet);
    case MEET_FORMAT:
      return change(sheet, { scoring: normaliseScoring, sheets: eachItem(normaliseSheet) });
    default:
      return sheet;
  }
}

function normaliseCompetition(sheet: PlainObject): PlainObject {
  const changed = change(sheet, {
    qualifying: (value) => without(value, { fill: 0 }),
    plan: (value) => withoutOwnPlan(value, sheet),
    competitors: eachItem(normaliseCompetitor),
    scoring: normaliseScoring,
  });
  const newest = editionsFor(sheet).at(-1) ?? null;
  return without(changed, {
    edition: newest,
    category: EMPTY_OBJECT,
    indoor: false,
    stage: 'final',
    plan: EMPTY_OBJECT,
    admitted: EMPTY_LIST,
    jumpOff: EMPTY_LIST,
  });
}

function normaliseCompetitor(competitor: PlainJson): PlainJson {
  const changed = change(competitor, { series: normaliseSeries });
  return without(normaliseClub(changed), { guest: false, series: EMPTY_LIST });
}

function normaliseClub(competitor: PlainJson): PlainJson {
  return without(competitor, { club: '' });
}

function normaliseCombined(sheet: PlainObject): PlainObject {
  const isByHand = sheet['timing'] === 'hand';
  const normaliseMarks: Change = (marks) => (isByHand && isObject(marks) ? eachTime(marks) : marks);
  const normaliseRow: Change = (row) => change(normaliseClub(row), { marks: normaliseMarks });
  return without(change(sheet, { rows: eachItem(normaliseRow) }), { timing: 'electronic' });
}

/** A time by hand in whole tenths may be written with a second decimal. */
function eachTime(marks: PlainObject): PlainObject {
  const entries = Object.entries(marks).map(([event, text]) => {
    const isTime = typeof text === 'string' && isTrackEvent(event as CombinedEventCode);
    const time = isTime ? parseTime(text, 'hand') : null;
    return [event, time === null ? text : formatTime(time, 'hand')] as const;
  });
  return plainObject(entries);
}

function normaliseSeries(series: PlainJson): PlainJson {
  if (!isList(series)) return series;
  const end = series.findLastIndex((cell) => cell !== null) + 1;
  return series.slice(0, end).map(normaliseCell);
}

/** A wind may be written with a zero in front. */
function normaliseCell(cell: PlainJson): PlainJson {
  const read = typeof cell === 'string' ? parseDistanceCell(cell) : null;
  return read?.trial.mark ? formatDistanceCell(read.trial, read.unit ?? 'cm') : cell;
}

function normaliseScoring(scoring: PlainJson): PlainJson {
  return without(scoring, { scorersPerClub: null, nonScorers: 'out' });
}

/** The rule set's own cuts and new orders are those of as many rounds as the sheet has. */
function withoutOwnPlan(plan: PlainJson, sheet: PlainObject): PlainJson {
  const rules = ruleSetFor(sheet);
  if (!isObject(plan) || !rules) return plan;
  const stage = sheet['stage'] === 'qualification' ? 'qualification' : 'final';
  const own = resolvePlan(rules, stage);
  const { rounds } = plan;
  const withRounds = typeof rounds === 'number' ? resolvePlan(rules, stage, { rounds }) : own;
  if (!own.ok || !withRounds.ok) return plan;
  const defaults = { ...withRounds.plan, rounds: own.plan.rounds };
  return without(plan, JSON.parse(JSON.stringify(defaults)) as PlainObject);
}

function editionsFor(sheet: PlainObject): readonly string[] {
  const code = RULE_SET_CODES.find((candidate) => candidate === sheet['rules']);
  return code ? editionsOf(code) : [];
}

function ruleSetFor(sheet: PlainObject): RuleSet | null {
  const code = RULE_SET_CODES.find((candidate) => candidate === sheet['rules']);
  const edition = sheet['edition'] ?? editionsFor(sheet).at(-1);
  if (!code || typeof edition !== 'string' || !editionsOf(code).includes(edition)) return null;
  return ruleSet(code, edition);
}

const EMPTY_OBJECT: PlainObject = {};
const EMPTY_LIST: readonly PlainJson[] = [];

type Change = (value: PlainJson) => PlainJson;

function eachItem(changeItem: Change): Change {
  return (value) => (isList(value) ? value.map(changeItem) : value);
}

/** Changes the values of some keys, where they are there. */
function change<J extends PlainJson>(value: J, changes: Readonly<Record<string, Change>>): J {
  if (!isObject(value)) return value;
  const entries = Object.entries(value).map(
    ([key, member]) => [key, Object.hasOwn(changes, key) ? changes[key]!(member) : member] as const,
  );
  return plainObject(entries) as J;
}

/** Leaves out the keys whose value is the default. */
function without<J extends PlainJson>(value: J, defaults: PlainObject): J {
  if (!isObject(value)) return value;
  const entries = Object.entries(value).filter(
    ([key, member]) => !(Object.hasOwn(defaults, key) && sameJson(member, defaults[key]!)),
  );
  return plainObject(entries) as J;
}

/** Equal as JSON values: the order of keys does not matter. */
export function sameJson(a: PlainJson, b: PlainJson): boolean {
  if (isList(a)) {
    return isList(b) && a.length === b.length && a.every((item, index) => sameJson(item, b[index]!));
  }
  if (!isObject(a)) return a === b;
  if (!isObject(b)) return false;
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && sameJson(a[key]!, b[key]!))
  );
}

function isList(value: PlainJson): value is readonly PlainJson[] {
  return Array.isArray(value);
}

function isObject(value: PlainJson): value is PlainObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
