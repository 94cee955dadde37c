import {
  listedAges,
  performancesOfState,
  performancesOfVerticalState,
  type AgeContext,
  type Identified,
} from '#rules';
import { Bar, highJumpOf } from './support/bar.js';
import { Circle, correction, discus } from './support/competition.js';

const OCCASION = { competition: 'c1', onDate: '2026-05-02', meet: 'Spring Meet' };
const identify = (key: string): Identified => ({ athlete: key, club: 'Harbour', sex: 'W', ages: ['senior'] });

describe('the performances of a journal', () => {
  it('stand under their attempts, with what was thrown in each', () => {
    const setup = discus(2);
    const [first, second] = setup.competitors;
    const circle = new Circle({
      ...setup,
      competitors: [
        { ...first!, implementGrams: 1000 },
        { ...second!, implementGrams: null },
      ],
    });
    const ids = [
      circle.trial('a', 1, '50.00'),
      circle.trial('b', 1, '40.00'),
      circle.trial('a', 2, '51.00', { implementGrams: 750 }),
      circle.trial('b', 2, 'X'),
    ];
    circle.referee(correction(ids[3]!, '41.00'));
    circle.referee({ kind: 'ruling', entry: ids[2]!, decision: 'count', reason: 'given out by the crew' });
    const shown = (): string[] =>
      performancesOfState(circle.state, OCCASION, identify).map(({ id, athlete, mark, implementGrams }) =>
        [id, athlete, mark, implementGrams].join(' '),
      );
    expect(shown()).toEqual([
      `${ids[0]} a 5000 1000`,
      `${ids[2]} a 5100 750`,
      `${ids[1]} b 4000 `,
      `${ids[3]} b 4100 `,
    ]);
    circle.referee({ kind: 'disqualification', competitor: 'a', rule: 'TR7', reason: 'conduct' });
    expect(shown()).toEqual([`${ids[1]} b 4000 `, `${ids[3]} b 4100 `]);
  });

  it('wait for their wind until the result is signed off', () => {
    const circle = new Circle(discus(2, { event: 'long-jump' }));
    circle.trial('a', 1, '6.10');
    circle.trial('b', 1, '6.20', { wind: -3 });
    circle.trial('a', 2, '6.30', { wind: 'NWI' });
    const winds = (): unknown[] =>
      performancesOfState(circle.state, OCCASION, identify).map(({ wind }) => wind);
    expect(winds()).toEqual(['pending', 'NWI', -3]);
    circle.referee({ kind: 'sign-off', incomplete: 'darkness' });
    expect(circle.state.signedOff).toBe(true);
    expect(winds()).toEqual(['NWI', 'NWI', -3]);
  });

  it('at a bar are those that cleared it, in the jump-off too', () => {
    const bar = new Bar(highJumpOf('1.80 1.85', 2));
    const first = [
      bar.jump('a', '1.80', 1, 'X'),
      bar.jump('b', '1.80', 1, 'O'),
      bar.jump('a', '1.80', 2, 'O'),
    ];
    bar.enter(
      { kind: 'reversal', entry: bar.jump('a', '1.85', 1, 'X'), reason: 'wrong line' },
      { by: 'referee', actor: 'rolf' },
    );
    const shown = (): string[] =>
      performancesOfVerticalState(bar.state, OCCASION, identify).map(({ id, athlete, mark }) =>
        [id, athlete, mark].join(' '),
      );
    expect(shown()).toEqual([`${first[2]} a 180`, `${first[1]} b 180`]);
  });

  it('of a jump-off are named by their jumps', () => {
    const bar = new Bar(highJumpOf('1.80 1.85', 2));
    bar.height('1.80', 'O', 'O');
    bar.height('1.85', 'XXX', 'XXX');
    bar.jumpOff(1, '1.85', 'aX bX');
    bar.jumpOff(2, '1.83', 'aX bO');
    const jumps = [...bar.state.attempts.values()];
    const won = jumps.find((one) => one.kind === 'jump-off' && one.judgement.outcome === 'cleared')!;
    expect(performancesOfVerticalState(bar.state, OCCASION, identify).at(-1)).toMatchObject({
      id: won.id,
      athlete: 'b',
      mark: 183,
    });
  });
});

describe('the ages in whose lists a mark stands', () => {
  const listed = (parts: Partial<AgeContext>): string[] =>
    listedAges({
      rules: 'WA',
      event: 'discus',
      sex: 'M',
      age: null,
      implementGrams: 1750,
      onDate: '2026-05-02',
      ...parts,
    });

  it.each<[string, Partial<AgeContext>, string[]]>([
    ['the open one', {}, ['senior']],
    ['their own, with a lighter implement', { age: 'U20' }, ['U20']],
    ['both, with the open implement', { age: 'U20', implementGrams: 2000 }, ['U20', 'senior']],
    ['both, where nothing is thrown', { age: 'U16', event: 'long-jump' }, ['U16', 'senior']],
    ['their own, where sexes are together', { age: 'U14', sex: 'X' }, ['U14']],
    ['their own, where no table names an open implement', { age: '50', event: 'weight' }, ['50']],
  ])('are %s', (_which, parts, ages) => {
    expect(listed(parts)).toEqual(ages);
  });
});
