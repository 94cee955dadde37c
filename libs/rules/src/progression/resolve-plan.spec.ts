import fc from 'fast-check';
import { RULE_SET_CODES, type Stage } from '../codes.js';
import type { Plan, PlanOverrides } from '../plan.js';
import { ruleSet } from '../rule-sets/index.js';
import { MAX_ROUNDS, resolvePlan } from './resolve-plan.js';

const WA = ruleSet('WA');

function planOf(overrides: PlanOverrides, stage: Stage = 'final'): Plan | null {
  const resolved = resolvePlan(WA, stage, overrides);
  return resolved.ok ? resolved.plan : null;
}

function problemsOf(overrides: PlanOverrides): string[] {
  const resolved = resolvePlan(WA, 'final', overrides);
  return resolved.ok ? [] : resolved.problems.map(({ path, code }) => `${path} ${code}`);
}

describe('a plan', () => {
  it('is the rule set’s when the meet sets nothing', () => {
    expect(resolvePlan(WA, 'final')).toEqual({ ok: true, plan: WA.plan.value });
    expect(resolvePlan(WA, 'qualification', {})).toEqual({ ok: true, plan: WA.qualificationPlan.value });
  });

  it('takes each key that the meet sets in place of the rule set’s', () => {
    expect(planOf({ cutTies: 'mark' })).toEqual({ ...WA.plan.value, cutTies: 'mark' });
    expect(planOf({ reorder: 'leaders-first', reorderAfter: [3, 5] })).toEqual({
      ...WA.plan.value,
      reorder: 'leaders-first',
      reorderAfter: [3, 5],
    });
    expect(planOf({ cuts: [] })).toEqual({ ...WA.plan.value, cuts: [] });
    expect(planOf({ rounds: 4, reorder: 'leaders-first' }, 'qualification')).toEqual({
      ...WA.qualificationPlan.value,
      rounds: 4,
      reorder: 'leaders-first',
    });
  });

  it('drops the rule set’s own cut and new order when they would not lie before the last round', () => {
    expect(planOf({ rounds: 3 })).toMatchObject({ rounds: 3, cuts: [], reorderAfter: [] });
    expect(planOf({ rounds: 4 })).toMatchObject({ rounds: 4, cuts: WA.plan.value.cuts, reorderAfter: [3] });
  });

  // The horizontal jumps and throws of the 2025 World Championships: 12, 10, 8, 6 for rounds 3 to 6, 60 trials.
  it('may reduce the field step by step', () => {
    const cuts = [
      { after: 3, through: 10 },
      { after: 4, through: 8 },
      { after: 5, through: 6 },
    ];
    expect(planOf({ cuts, reorderAfter: [3, 4, 5] })).toMatchObject({ cuts, reorderAfter: [3, 4, 5] });
    expect(3 * 12 + cuts.reduce((trials, cut) => trials + cut.through, 0)).toBe(60);
  });

  it('may keep the size of the field at a second cut', () => {
    const cuts = [
      { after: 2, through: 8 },
      { after: 3, through: 8 },
    ];
    expect(planOf({ cuts })?.cuts).toEqual(cuts);
  });
});

describe('what makes no plan', () => {
  it.each([0, -1, 13, 2.5, Number.NaN])('%d rounds', (rounds) => {
    expect(problemsOf({ rounds })).toEqual(['/rounds PLAN']);
  });

  it.each([1, 12])('is not %d rounds', (rounds) => {
    expect(problemsOf({ rounds, cuts: [], reorderAfter: [] })).toEqual([]);
  });

  it('a cut or a new order that the meet names at or after the last round', () => {
    expect(problemsOf({ rounds: 3, cuts: [{ after: 3, through: 8 }] })).toEqual(['/cuts/0/after PLAN']);
    expect(problemsOf({ reorderAfter: [3, 6] })).toEqual(['/reorderAfter/1 PLAN']);
  });

  it('a cut after no round or that lets nobody through', () => {
    expect(problemsOf({ cuts: [{ after: 0, through: 0 }] })).toEqual([
      '/cuts/0/after PLAN',
      '/cuts/0/through PLAN',
    ]);
  });

  it('cuts that do not come one after the other, or let more through than the one before', () => {
    const cuts = [
      { after: 3, through: 8 },
      { after: 3, through: 9 },
    ];
    expect(problemsOf({ cuts })).toEqual(['/cuts/1/after NOT_RISING', '/cuts/1/through NOT_RISING']);
  });

  it('is not one whose new orders are named in another order, or twice', () => {
    expect(problemsOf({ reorderAfter: [4, 3] })).toEqual([]);
    expect(problemsOf({ reorderAfter: [3, 3] })).toEqual([]);
    expect(problemsOf({ reorderAfter: [5, 0, 6] })).toEqual(['/reorderAfter/1 PLAN', '/reorderAfter/2 PLAN']);
  });

  it('is told in full, in a sentence each', () => {
    const resolved = resolvePlan(WA, 'final', {
      rounds: 20,
      cuts: [{ after: 0, through: 8 }],
      reorderAfter: [0],
    });
    expect(resolved).toMatchObject({
      ok: false,
      problems: [{ path: '/rounds' }, { path: '/cuts/0/after' }, { path: '/reorderAfter/0' }],
    });
    if (!resolved.ok) for (const { message } of resolved.problems) expect(message).toMatch(/^[A-Z].+\.$/);
  });

  it.each<[PlanOverrides, number]>([
    [{ rounds: 3, cuts: [{ after: 3, through: 0 }] }, 2],
    [
      {
        cuts: [
          { after: 3, through: 8 },
          { after: 3, through: 9 },
        ],
      },
      2,
    ],
  ])('is told in a sentence each: %j', (given, problems) => {
    const resolved = resolvePlan(WA, 'final', given);
    const messages = resolved.ok ? [] : resolved.problems.map(({ message }) => message);
    expect(messages.filter((message) => /^[A-Z].+\.$/.test(message))).toHaveLength(problems);
  });

  it('does not lie too late against a number of rounds that is none', () => {
    expect(problemsOf({ rounds: 0, cuts: [{ after: 3, through: 8 }] })).toEqual(['/rounds PLAN']);
  });
});

describe('any plan that is resolved', () => {
  const round = fc.integer({ min: -1, max: 13 });
  const overrides: fc.Arbitrary<PlanOverrides> = fc.record(
    {
      rounds: round,
      cuts: fc.array(fc.record({ after: round, through: fc.integer({ min: 0, max: 12 }) }), { maxLength: 3 }),
      reorderAfter: fc.array(round, { maxLength: 3 }),
    },
    { requiredKeys: [] },
  );

  it('can be competed: rounds in range, cuts narrowing before the last round', () => {
    let resolvedPlans = 0;
    const competed = fc.property(
      fc.constantFrom(...RULE_SET_CODES),
      fc.constantFrom<Stage>('final', 'qualification'),
      overrides,
      (code, stage, given) => {
        const resolved = resolvePlan(ruleSet(code), stage, given);
        if (!resolved.ok) return;
        resolvedPlans += 1;
        const { rounds, cuts, reorderAfter } = resolved.plan;
        expect(rounds >= 1 && rounds <= MAX_ROUNDS).toBe(true);
        for (const after of [...cuts.map((cut) => cut.after), ...reorderAfter]) {
          expect(after >= 1 && after < rounds).toBe(true);
        }
        cuts.slice(1).forEach((cut, i) => {
          expect(cut.after).toBeGreaterThan(cuts[i]?.after ?? Infinity);
          expect(cut.through).toBeLessThanOrEqual(cuts[i]?.through ?? 0);
        });
      },
    );
    fc.assert(competed, { numRuns: 20_000 });
    expect(resolvedPlans).toBeGreaterThan(1000);
  });
});
