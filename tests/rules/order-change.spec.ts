import { callsOf, ruleSet, type CompetitionSetup, type RuleSetCode } from '#rules';
import { Circle, discus } from './support/competition.js';

const CLASH = 'also in the long jump';

/** Three competitors, two rounds, the first of them taken. */
function inLastRound(rules: RuleSetCode, changes: Partial<CompetitionSetup> = {}): Circle {
  const { edition, plan } = ruleSet(rules);
  const twoRounds = { ...plan.value, rounds: 2, cuts: [], reorderAfter: [] };
  const circle = new Circle(discus(3, { rules, edition, plan: twoRounds, ...changes }));
  for (const competitor of ['a', 'b', 'c']) circle.trial(competitor, 1, '40.00');
  return circle;
}

const order = (circle: Circle, round: number, ...competitors: string[]): string =>
  circle.enter({ kind: 'order', round, competitors, reason: CLASH });

const calls = ({ state }: Circle): string[] => [...callsOf(state)].map(({ competitor }) => competitor);

describe('a change of order', () => {
  // WA TR4.3 (read in part): one round at a time, and not in the last one.
  it('is refused for the last round under WA, by whomever, with the rule and what to do', () => {
    const circle = inLastRound('WA');
    for (const by of ['official', 'referee', 'director'] as const) {
      circle.enter({ kind: 'order', round: 2, competitors: ['c'], reason: CLASH }, { by });
      expect(circle.verdict).toEqual({
        standing: 'refused',
        refusal: {
          code: 'LAST_ROUND_ORDER',
          field: 'round',
          message: 'In the last round nobody is called at another place of the order.',
          rule: 'WA TR4.3',
          remedy:
            'Call in the order of the rules; for who is absent when called, record a pass when the time is over.',
        },
      });
    }
    expect(calls(circle)).toEqual(['a', 'b', 'c']);
  });

  it('is taken for every round before it', () => {
    const circle = new Circle(discus(3));
    for (const round of [1, 2, 3, 4, 5]) {
      order(circle, round, 'c');
      expect([round, circle.verdict?.standing]).toEqual([round, 'accepted']);
    }
    order(circle, 6, 'c');
    expect(circle.verdict?.standing).toBe('refused');
  });

  it.each(['USATF', 'WMA', 'NCAA'] as const)('is refused for the last round under %s as well', (rules) => {
    const circle = inLastRound(rules);
    order(circle, 2, 'c');
    expect(circle.verdict).toMatchObject({ refusal: { code: 'LAST_ROUND_ORDER' } });
  });

  // NFHS 6-2-3 (read in part): in the preliminary rounds and in the final.
  it('is taken for the last round under NFHS, and in a combined event', () => {
    for (const circle of [inLastRound('NFHS'), inLastRound('WA', { combined: true })]) {
      order(circle, 2, 'c');
      expect(circle.verdict?.standing).toBe('accepted');
      expect(calls(circle)).toEqual(['c', 'a', 'b']);
    }
  });
});

describe('a change of order in the last round that has happened', () => {
  it('is held for the referee when all who are named have thrown, and changes no trial', () => {
    const circle = inLastRound('WA');
    circle.trial('c', 2, '41.00');
    order(circle, 2, 'c', 'a');
    expect(circle.verdict?.standing).toBe('refused');
    const { card } = circle.state;
    const late = order(circle, 2, 'c');
    expect(circle.verdict).toMatchObject({
      standing: 'held',
      hold: { code: 'LAST_ROUND_REORDERED', rule: 'WA TR4.3' },
    });
    expect(circle.state.card).toEqual(card);
    expect([...circle.state.orderChanges]).toEqual([]);
    expect(circle.state.questions.map(({ entry }) => entry)).toEqual([late]);

    circle.referee({ kind: 'ruling', entry: late, decision: 'count', reason: 'I had allowed it' });
    expect(circle.verdict?.standing).toBe('accepted');
    expect(circle.state.questions).toEqual([]);
    expect(circle.state.orderChanges.get(2)?.competitors).toEqual(['c']);
  });
});
