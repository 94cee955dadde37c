import { DISTANCE_EVENT_CODES, type EventCode, RULE_SET_CODES, VERTICAL_EVENT_CODES } from '../codes.js';
import { eventOf } from '../events/event.js';
import { editionsOf, RULE_SETS, ruleSet } from './index.js';
import type { Citation, RuleSet } from './rule-set.js';

const ALL = RULE_SET_CODES.flatMap((code) => [...RULE_SETS[code]]);
const EVENTS: readonly EventCode[] = [...DISTANCE_EVENT_CODES, ...VERTICAL_EVENT_CODES];

/** Every citation anywhere in a rule set. */
function citationsIn(value: unknown): Citation[] {
  if (typeof value !== 'object' || value === null) return [];
  if ('rule' in value && 'basis' in value) return [value as Citation];
  return Object.values(value).flatMap(citationsIn);
}

function codesIn(rules: RuleSet, event: EventCode): string[] {
  return rules.fouls[event].map((foul) => foul.value);
}

describe('the rule sets', () => {
  it.each(RULE_SET_CODES)('%s gives its newest edition when none is named', (code) => {
    expect(ruleSet(code).edition).toBe(editionsOf(code).at(-1));
    for (const edition of editionsOf(code)) expect(ruleSet(code, edition)).toMatchObject({ code, edition });
  });

  it('have no edition that is not listed', () => {
    expect(() => ruleSet('WA', '1896')).toThrow(/WA has no edition "1896", only 2024-01/);
  });

  it.each(ALL)('$code $edition names the rule of every value, in its own name', (rules) => {
    const citations = citationsIn(rules);
    // One for each plan, limit, time and tie, and one for each event's precision and fouls at least.
    expect(citations.length).toBeGreaterThan(9 + EVENTS.length * 2);
    for (const { rule } of citations) expect(rule.startsWith(rules.code)).toBe(true);
  });

  it.each(ALL)('$code $edition claims to have been read only where World Athletics was', (rules) => {
    const read = citationsIn(rules).filter(({ basis }) => basis === 'read');
    for (const { rule } of read) expect(rule).toMatch(/^WA TR28\.2\./);
  });
});

describe('the plans', () => {
  // The plans that a sheet takes for granted (format sectorline-sheet/1); World Athletics TR25.6, NFHS 6-2-17,
  // NCAA 6-2-5.
  it.each([
    ['WA', 8, 'next-best'],
    ['WMA', 8, 'next-best'],
    ['USATF', 8, 'next-best'],
    ['NFHS', 9, 'mark'],
    ['NCAA', 9, 'mark'],
  ] as const)('of %s let %d through after round 3, ties by %s', (code, through, cutTies) => {
    expect(ruleSet(code).plan.value).toEqual({
      rounds: 6,
      cuts: [{ after: 3, through }],
      cutTies,
      reorderAfter: [3],
      reorder: 'reverse',
    });
  });

  it.each(RULE_SET_CODES)('of a qualification under %s are three trials without a cut', (code) => {
    expect(ruleSet(code).qualificationPlan.value).toEqual({
      rounds: 3,
      cuts: [],
      cutTies: 'next-best',
      reorderAfter: [],
      reorder: 'reverse',
    });
  });
});

describe('the differences', () => {
  // NFHS: discus, javelin and hammer to the lesser inch, the others to the lesser quarter inch; a quarter inch is
  // the finest that anybody writes.
  it('of measuring: long throws to the inch in high schools only', () => {
    const toTheInch = ALL.flatMap((rules) =>
      EVENTS.filter((event) => rules.precision[event].value.qin === 4).map(
        (event) => `${rules.code} ${event}`,
      ),
    );
    expect(toTheInch).toEqual(['NFHS discus', 'NFHS hammer', 'NFHS javelin']);
    for (const rules of ALL) for (const event of EVENTS) expect(rules.precision[event].value.cm).toBe(1);
  });

  // NFHS 6-6-9(e): a discus that touched the cage is a foul; NCAA 6-9-2(i): it is not.
  it('of the cage: a foul in high schools, none in college', () => {
    expect(ruleSet('NFHS').fouls.discus.find((foul) => foul.value === 'CAGE')?.cite).toEqual({
      rule: 'NFHS 6-6-9(e)',
      basis: 'read in part',
    });
    expect(codesIn(ruleSet('NCAA'), 'discus')).not.toContain('CAGE');
    expect(codesIn(ruleSet('WA'), 'discus')).toContain('CAGE');
  });

  it('leave every other foul of an event standing', () => {
    for (const rules of ALL) {
      for (const event of EVENTS) {
        const known = eventOf(event).fouls.filter((code) => code !== 'CAGE');
        expect(codesIn(rules, event).filter((code) => code !== 'CAGE')).toEqual(known);
      }
    }
  });

  it('of flights: only the high schools name a size', () => {
    expect(ALL.filter((rules) => rules.flightSize.value !== null).map((rules) => rules.code)).toEqual([
      'NFHS',
    ]);
    expect(ruleSet('NFHS').flightSize.value).toEqual({ min: 4, max: 12 });
  });

  // CR31: at most 2.0 m/s, whoever keeps the list.
  it('leave the wind limit and the minute for a trial alone', () => {
    for (const rules of ALL) {
      expect(rules.windLimit.value).toBe(20);
      expect(rules.timeAllowed.value.trialS).toBe(60);
    }
  });
});
