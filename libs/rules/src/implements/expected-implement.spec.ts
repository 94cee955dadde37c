import { expectedImplement, registeredImplement, type Thrower } from './expected-implement.js';
import { dimensionsOf } from './dimensions.js';
import { SPECIFICATIONS } from './specifications.js';

const U18_DISCUS: Thrower = {
  rules: 'WA',
  event: 'discus',
  sex: 'M',
  age: 'U18',
  onDate: '2026-06-13',
  grams: null,
};

function shown(changes: Partial<Thrower>): unknown {
  const expected = expectedImplement({ ...U18_DISCUS, ...changes });
  return expected && [expected.implement.grams, expected.implement.cite.rule, expected.tableGrams];
}

describe('the implement that is expected', () => {
  it('has its mass and its dimensions from the table in force', () => {
    // 1.5 kg: regulations of the U18 championships of 2016 (docslib.org); 200 to 202 mm and the plate of 50 to 57 mm:
    // requirements of a masters championship (perth2016.com).
    expect(expectedImplement(U18_DISCUS)?.implement).toMatchObject({
      grams: 1500,
      cite: { rule: 'WA TR32, table of implements' },
      limits: {
        value: [
          { what: 'diameter', minMm: 200, maxMm: 202 },
          { what: 'centre plate', minMm: 50, maxMm: 57 },
        ],
        cite: { rule: 'WA TR34' },
      },
    });
  });

  it.each<[string, Partial<Thrower>, unknown]>([
    ['of everybody where no age is given', { age: null }, [2000, 'WA TR32, table of implements', null]],
    // Senior games of 2015 and 2025 (abcdocz.com, online.flippingbook.com): 1.5 kg from 50, 1 kg from 60.
    [
      'of masters as programmes write them',
      { rules: 'WMA', age: 'M50' },
      [1500, 'WMA, implements of masters', null],
    ],
    ['of masters with a plus', { rules: 'WMA', age: '60+' }, [1000, 'WMA, implements of masters', null]],
    ['as the meet lays it down', { grams: 1750 }, [1750, 'regulations of the meet', 1500]],
    ['as the meet and the table say', { grams: 1500 }, [1500, 'WA TR32, table of implements', null]],
    ['by the meet where no table says', { age: 'U13', grams: 750 }, [750, 'regulations of the meet', null]],
    ['by nobody', { age: 'U13' }, null],
    ['by no table for both sexes together', { sex: 'X' }, null],
    ['of no jump', { event: 'long-jump', grams: 1500 }, null],
    ['of masters without an age', { rules: 'WMA', age: null }, null],
  ])('%s', (_what, changes, expected) => {
    expect(shown(changes)).toEqual(expected);
  });
});

describe('a registered implement', () => {
  it('is held against the table that has its mass, else against its description', () => {
    expect(registeredImplement('WA', 'discus', 1500, '2026-06-13').cite.rule).toBe(
      'WA TR32, table of implements',
    );
    expect(registeredImplement('WA', 'discus', 1250, '2026-06-13')).toMatchObject({
      grams: 1250,
      cite: { rule: 'WA TR34' },
      limits: null,
    });
    // 400 g for women from 60 on until the end of 2013 (masterstrack.com, 2013), 500 g since; 400 g from 75 on.
    expect(registeredImplement('WMA', 'javelin', 400, '2026-06-13').cite.rule).toBe(
      'WMA, implements of masters',
    );
  });

  it('has no limit of anything that is not measured of its event', () => {
    const limited = SPECIFICATIONS.flatMap(({ event, limits }) =>
      limits.value.filter(({ what }) => !dimensionsOf(event).includes(what)),
    );
    expect(limited).toEqual([]);
  });
});
