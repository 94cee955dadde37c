import { ruleSet } from '../rule-sets/index.js';
import { isOpenProtest, nextSteps, standingOfProtest, type ProtestStep } from './protest.js';
import { resultStateOf, signingObstacle, type Proceedings, type ResultFacts } from './result-state.js';
import { appealTimeliness, timelinessOf, windowUntil } from './timeliness.js';

const MINUTE = 60_000;
const wa = ruleSet('WA').protests;
const nfhs = ruleSet('NFHS').protests;
const POSTED = Date.UTC(2026, 5, 13, 14, 0);

describe('the time for a protest', () => {
  // Thirty minutes from the announcement: common to both books (WA TR8 from memory; NFHS 3-5-3 as quoted on a public slide).
  it.each([
    ['its first moment', 0, 'in time'],
    ['its last moment', 30 * MINUTE, 'in time'],
    ['the moment after', 30 * MINUTE + 1, 'late'],
  ] as const)('takes in %s', (_, after, expected) => {
    for (const rules of [wa, nfhs])
      expect(timelinessOf(rules, 'rules', POSTED, POSTED + after)).toBe(expected);
  });

  // NFHS 3-5-3 as quoted on a public slide: clerical and scoring errors 48 h, ineligible participant any time,
  // judgement calls never.
  it('depends on the ground where a rule set says so', () => {
    const at = (hours: number) => POSTED + hours * 60 * MINUTE;
    expect(timelinessOf(nfhs, 'clerical', POSTED, at(48))).toBe('in time');
    expect(timelinessOf(nfhs, 'clerical', POSTED, at(48) + 1)).toBe('late');
    expect(timelinessOf(nfhs, 'eligibility', POSTED, at(10_000))).toBe('in time');
    expect(timelinessOf(nfhs, 'judgement', POSTED, POSTED)).toBe('not taken');
    expect(timelinessOf(wa, 'judgement', POSTED, POSTED)).toBe('in time');
  });

  it('does not run before the result is announced', () => {
    expect(windowUntil(wa, 'rules', null)).toBeNull();
    expect(timelinessOf(wa, 'rules', null, POSTED)).toBe('in time');
  });

  it('of an appeal runs from the decision, where the book names one', () => {
    expect(appealTimeliness(wa, POSTED, POSTED + 31 * MINUTE)).toBe('late');
    expect(appealTimeliness(nfhs, POSTED, POSTED + 31 * MINUTE)).toBe('in time');
  });
});

const step = (kind: ProtestStep['kind'], outcome: ProtestStep['outcome'] = null): ProtestStep => ({
  ...{ kind, outcome },
  at: POSTED,
});

describe('a protest', () => {
  it.each([
    [[], 'lodged', ['decision', 'withdrawal']],
    [[step('withdrawal')], 'withdrawn', []],
    [[step('decision', 'dismissed')], 'dismissed', ['decision', 'appeal']],
    [[step('decision', 'dismissed'), step('appeal')], 'appealed', ['appeal-decision', 'withdrawal']],
    [[step('decision', 'dismissed'), step('appeal'), step('withdrawal')], 'dismissed', []],
    [[step('decision', 'dismissed'), step('appeal'), step('appeal-decision', 'upheld')], 'upheld', []],
  ] as const)('after %j is %s', (steps, standing, next) => {
    expect(standingOfProtest({ steps })).toBe(standing);
    expect(nextSteps({ steps })).toEqual(next);
    expect(isOpenProtest({ steps })).toBe(standing === 'lodged' || standing === 'appealed');
  });
});

describe('a result', () => {
  const attempt = { kind: 'attempt', isHeld: false } as const;
  const complete: ResultFacts = {
    journal: [attempt, attempt],
    isComplete: true,
    signedOff: false,
    hasTrialUnderProtest: false,
    changedAt: POSTED - MINUTE,
  };
  const nothing: Proceedings = { signatures: [], postings: [], protests: [] };
  const posted = { ...nothing, postings: [{ sequence: 2, postedAt: POSTED }] };
  const protest = { ground: 'rules', lodgedAt: POSTED + MINUTE, steps: [] } as const;
  const signOff = { kind: 'sign-off', isHeld: false } as const;
  const state = (facts: Partial<ResultFacts>, proceedings: Proceedings) =>
    resultStateOf({ ...complete, ...facts }, proceedings, wa);

  it('goes from the field to the archive and back', () => {
    const signed = { signatures: [{ signedAt: POSTED + 40 * MINUTE }] };
    const journal = [...complete.journal, signOff];
    expect(state({ isComplete: false }, nothing).state).toBe('running');
    expect(state({}, nothing)).toMatchObject({
      state: 'unofficial',
      since: POSTED - MINUTE,
      protestsUntil: null,
    });
    expect(state({}, posted)).toMatchObject({
      ...{ state: 'posted', since: POSTED, postedAt: POSTED },
      protestsUntil: POSTED + 30 * MINUTE,
    });
    expect(state({}, { ...posted, protests: [protest] })).toMatchObject({
      ...{ state: 'under protest', since: POSTED + MINUTE, isUnderProtest: true },
    });
    expect(state({ journal, signedOff: true }, { ...posted, ...signed })).toMatchObject({
      ...{ state: 'official', since: POSTED + 40 * MINUTE, postedAt: POSTED },
    });
    const reopened = [...journal, { kind: 'reopening', isHeld: false } as const];
    expect(state({ journal: reopened }, { ...posted, ...signed })).toMatchObject({
      ...{ state: 'unofficial', isReopened: true, postedAt: null, protestsUntil: null },
    });
    const twice = [...signed.signatures, { signedAt: POSTED + 90 * MINUTE }];
    expect(
      state({ journal: [...reopened, signOff], signedOff: true }, { ...posted, signatures: twice }),
    ).toMatchObject({ state: 'amended', revision: 2, announcedAt: POSTED + 90 * MINUTE });
  });

  it('that was posted is to be posted anew when something came in that counts', () => {
    expect(
      state({ journal: [...complete.journal, { kind: 'ruling', isHeld: false }] }, posted),
    ).toMatchObject({
      ...{ state: 'unofficial', postedAt: null },
    });
    expect(state({ journal: [...complete.journal, { ...attempt, isHeld: true }] }, posted).state).toBe(
      'posted',
    );
  });

  it('is not signed while a protest is open or its time runs', () => {
    const obstacle = (proceedings: Proceedings, now: number) =>
      signingObstacle(state({}, proceedings), proceedings, now);
    expect(obstacle(nothing, POSTED)).toBeNull();
    expect(obstacle(posted, POSTED + 30 * MINUTE)).toBe('PROTEST_TIME_RUNS');
    expect(obstacle(posted, POSTED + 30 * MINUTE + 1)).toBeNull();
    expect(obstacle({ ...posted, protests: [protest] }, POSTED + 31 * MINUTE)).toBe('PROTEST_OPEN');
    const decided = { ...protest, steps: [step('decision', 'upheld')] };
    expect(obstacle({ ...posted, protests: [decided] }, POSTED + 31 * MINUTE)).toBeNull();
  });
});
