import { readSheetSource } from './read-sheet.js';

function problemsIn(plan: unknown, changes: Record<string, unknown> = {}): string[] {
  const sheet = {
    format: 'sectorline-sheet/1',
    rules: 'WA',
    event: 'shot',
    ...changes,
    plan,
    competitors: [],
  };
  const reading = readSheetSource(JSON.stringify(sheet));
  return reading.ok ? [] : reading.problems.map(({ path, code }) => `${path.replace('/plan', '')} ${code}`);
}

const cut = (after: unknown, through: unknown): unknown => ({ after, through });

describe('the plan of a sheet', () => {
  it.each([
    [{}],
    [{ rounds: 1 }],
    [{ rounds: 12, cuts: [cut(11, 1)], reorderAfter: [11], cutTies: 'mark', reorder: 'leaders-first' }],
    [{ cuts: [cut(3, 10), cut(4, 8), cut(5, 6)], reorderAfter: [3, 4, 5] }],
    [{ cuts: [cut(1, 8), cut(2, 8)] }],
    [{ cuts: [], reorderAfter: [] }],
  ])('may be %j', (plan) => {
    expect(problemsIn(plan)).toEqual([]);
  });

  it.each([
    [{ rounds: 0 }, ['/rounds PLAN']],
    [{ rounds: 13 }, ['/rounds PLAN']],
    [{ rounds: 2.5 }, ['/rounds WRONG_TYPE']],
    [{ rounds: '6' }, ['/rounds WRONG_TYPE']],
    [{ round: 6 }, ['/round UNKNOWN_KEY']],
    [{ cuts: {} }, ['/cuts WRONG_TYPE']],
    [{ cuts: [3] }, ['/cuts/0 WRONG_TYPE']],
    [{ cuts: [{}] }, ['/cuts/0/after MISSING', '/cuts/0/through MISSING']],
    [{ cuts: [cut(6, 8)] }, ['/cuts/0/after PLAN']],
    [{ cuts: [cut(0, 0)] }, ['/cuts/0/after PLAN', '/cuts/0/through PLAN']],
    [{ cuts: [cut(3, 8), cut(3, 8)] }, ['/cuts/1/after NOT_RISING']],
    [{ cuts: [cut(3, 8), cut(2, 7)] }, ['/cuts/1/after NOT_RISING']],
    [{ cuts: [cut(3, 8), cut(4, 9)] }, ['/cuts/1/through NOT_RISING']],
    [
      { cuts: [cut(3, 8), cut('4', 8), cut(2, 9)] },
      ['/cuts/1/after WRONG_TYPE', '/cuts/2/after NOT_RISING', '/cuts/2/through NOT_RISING'],
    ],
    [{ cutTies: 'both', reorder: 'random' }, ['/cutTies UNKNOWN_VALUE', '/reorder UNKNOWN_VALUE']],
    [{ cutTies: 1, reorder: null }, ['/cutTies WRONG_TYPE', '/reorder WRONG_TYPE']],
    [{ reorderAfter: 3 }, ['/reorderAfter WRONG_TYPE']],
    [
      { reorderAfter: ['3', 6, 0] },
      ['/reorderAfter/0 WRONG_TYPE', '/reorderAfter/1 PLAN', '/reorderAfter/2 PLAN'],
    ],
    [{ rounds: 3, cuts: [cut(3, 8)], reorderAfter: [3] }, ['/cuts/0/after PLAN', '/reorderAfter/0 PLAN']],
  ])('%j has problems', (plan, problems) => {
    expect(problemsIn(plan)).toEqual(problems);
  });

  it('lets nothing lie too late when the number of rounds cannot be read', () => {
    expect(problemsIn({ rounds: 'six', cuts: [cut(50, 8)], reorderAfter: [50] })).toEqual([
      '/rounds WRONG_TYPE',
    ]);
    expect(problemsIn({ rounds: 99, cuts: [cut(50, 8)] })).toEqual(['/rounds PLAN']);
  });

  it('is looked at as far as it can be when the rule set is not known', () => {
    expect(problemsIn({ rounds: 0, cuts: [cut(12, 8), cut(7, 9)] }, { rules: 'XY' })).toEqual([
      '/rules UNKNOWN_VALUE',
      '/rounds PLAN',
      '/cuts/1/after NOT_RISING',
      '/cuts/1/through NOT_RISING',
    ]);
    expect(problemsIn({ cuts: [cut(7, 8), cut(12, 8)] }, { edition: '1912' })).toEqual([
      '/edition UNKNOWN_VALUE',
      '/cuts/1/after PLAN',
    ]);
  });

  it('may be shorter than where the rule set cuts', () => {
    expect(problemsIn({ rounds: 3 })).toEqual([]);
    expect(
      problemsIn({ cuts: [cut(2, 8)] }, { stage: 'qualification', qualifying: { standard: '20.00' } }),
    ).toEqual([]);
  });
});
