import fc from 'fast-check';
import { entrantGrams } from '../implements/entrant-implement.js';
import type { CategoryDefinition } from './category-definition.js';
import { definitionProblems } from './definition-problems.js';
import { eligibilityOf, type Entrant } from './eligibility.js';
import type { CompetitionCategory } from './competition-category.js';

const DAY = '2026-06-13';
const WA: CompetitionCategory = { rules: 'WA', scheme: null, sex: 'M', age: 'U18', onDate: DAY };
const WMA: CompetitionCategory = { rules: 'WMA', scheme: null, sex: 'M', age: '50', onDate: DAY };

function entrant(birthDate: string | null, more: Partial<Entrant> = {}): Entrant {
  return { birthDate, sex: 'M', guest: false, ...more };
}

function findings(
  who: Entrant,
  category: CompetitionCategory,
  own: readonly CategoryDefinition[] = [],
): string[] {
  return eligibilityOf(who, category, own).findings.map(
    ({ code, isNotice }) => `${code}${isNotice ? '?' : ''}`,
  );
}

/** Entering up and down: common practice, no published source. The limits: WA TR3 and WMA, as in the definitions. */
describe('somebody entered in a category', () => {
  it.each([
    // WA U18: 16 and 17 at the end of the year.
    ['2009-01-01', WA, []],
    ['2010-12-31', WA, []],
    ['2011-01-01', WA, ['OTHER_AGES?']],
    ['2008-12-31', WA, ['TOO_OLD']],
    ['2011-01-01', { ...WA, age: 'senior' }, ['OTHER_AGES?']],
    ['1960-01-01', { ...WA, age: 'senior' }, []],
    // WMA 50: 50 to 54 on the day.
    ['1976-06-13', WMA, []],
    ['1976-06-14', WMA, ['TOO_YOUNG']],
    ['1971-06-14', WMA, []],
    ['1971-06-13', WMA, ['OTHER_AGES?']],
    ['1960-01-01', { ...WMA, age: '50+' }, []],
    ['1976-06-14', { ...WMA, age: '50+' }, ['TOO_YOUNG']],
    ['1976-06-13', { ...WMA, age: 'M50' }, []],
    // Schools do not look at the age here.
    ['1960-01-01', { ...WA, rules: 'NFHS', age: 'high-school' }, []],
    ['1960-01-01', { ...WA, age: null }, []],
  ] as const)('born on %s, in %o, gets %j', (birth, category, expected) => {
    expect(findings(entrant(birth), category)).toEqual(expected);
  });

  it('is only looked at when the age or the category is not known, or as a guest', () => {
    expect(findings(entrant(null), WA)).toEqual(['AGE_UNKNOWN?']);
    expect(findings(entrant('2000-01-01'), { ...WA, age: 'B squad' })).toEqual(['CATEGORY_UNKNOWN?']);
    expect(findings(entrant('2000-01-01', { guest: true, sex: 'W' }), WA)).toEqual([
      'OTHER_SEX?',
      'TOO_OLD?',
    ]);
  });

  it.each([
    ['W', 'M', ['OTHER_SEX']],
    ['M', 'W', ['OTHER_SEX']],
    ['X', 'W', ['SEX_UNDECIDED?']],
    [null, 'W', []],
    ['W', 'X', []],
    ['W', null, []],
  ] as const)('of sex %s is in a competition for %s %j', (sex, wanted, expected) => {
    expect(findings(entrant('2009-05-05', { sex }), { ...WA, sex: wanted })).toEqual(expected);
  });

  it('is told by which rule and what to do', () => {
    const [one] = eligibilityOf(entrant('2008-12-31'), WA).findings;
    expect(one).toMatchObject({
      field: 'athleteId',
      rule: expect.stringMatching(/^WA TR3; .*no published source/),
    });
    expect(one?.remedy).toContain('guest');
  });

  it('is measured by the scheme that the competition names, and by a club’s own first', () => {
    const own: CategoryDefinition = {
      scheme: 'Harbour juniors',
      rules: null,
      valid: { from: '2026-01-01', until: null },
      ageOn: { kind: 'day of competition' },
      bands: [{ code: 'U18', minAge: null, maxAge: 17 }],
      cite: { rule: 'statutes of the club', basis: 'constructed' },
    };
    const born = entrant('2008-12-31');
    expect(findings(born, WA, [own])).toEqual(['TOO_OLD']);
    expect(findings(born, { ...WA, scheme: 'Harbour juniors' }, [own])).toEqual([]);
    expect(findings(born, { ...WA, scheme: 'Harbour juniors', onDate: '2025-12-30' }, [own])).toEqual([
      'CATEGORY_UNKNOWN?',
    ]);
    expect(findings(born, WA, [{ ...own, rules: 'WA' }])).toEqual([]);
    expect(findings(born, { ...WA, scheme: 'England clubs' })).toEqual(['TOO_OLD']);
  });

  it('may compete in a harder category exactly where nobody would be let into an easier one', () => {
    const birth = fc.date({ min: new Date('1920-01-01'), max: new Date('2015-12-31'), noInvalidDate: true });
    const bands = ['35', '40', '60', '95'];
    fc.assert(
      fc.property(birth, fc.constantFrom(...bands), (date, age) => {
        const who = entrant(date.toISOString().slice(0, 10));
        const [found = 'fits'] = findings(who, { ...WMA, age });
        const own = eligibilityOf(who, { ...WMA, age }).own;
        if (own === null) expect(found).toBe('TOO_YOUNG');
        else if (Number(own.code) === Number(age)) expect(found).toBe('fits');
        else expect(found).toBe(Number(own.code) > Number(age) ? 'OTHER_AGES?' : 'TOO_YOUNG');
      }),
    );
  });
});

describe('the implement of an entrant', () => {
  const grams = (who: Entrant, category: CompetitionCategory, event: 'discus' | 'long-jump' = 'discus') =>
    entrantGrams(event, category, eligibilityOf(who, category), who.sex);

  // Discus, men: U18 1.5 kg, U20 1.75 kg (WA); 50 1.5 kg, 60 and more 1 kg (WMA), as in the tables.
  it.each([
    ['2010-05-05', WA, 1500],
    ['2010-05-05', { ...WA, age: 'U20' }, 1750],
    ['1975-05-05', WMA, 1500],
    ['1964-05-05', { ...WMA, age: '50+' }, 1000],
    [null, { ...WMA, age: '50+' }, null],
    ['2010-05-05', { ...WA, age: null }, null],
  ] as const)('born on %s, in %o, has %s grams', (birth, category, expected) => {
    expect(grams(entrant(birth), category)).toBe(expected);
  });

  it('follows the sex of the competition, else that of the entrant', () => {
    const either = { ...WA, sex: null };
    expect([
      grams(entrant('2010-05-05', { sex: 'W' }), either),
      grams(entrant('2010-05-05'), either),
    ]).toEqual([1000, 1500]);
    expect(grams(entrant('2010-05-05', { sex: 'X' }), either)).toBeNull();
    expect(grams(entrant('2010-05-05'), WA, 'long-jump')).toBeNull();
  });
});

describe('categories of a club', () => {
  const sound = {
    valid: { from: '2026-01-01', until: '2026-12-31' },
    ageOn: { kind: 'next', month: 8, day: 31 },
    bands: [{ code: 'U14', minAge: null, maxAge: 13 }],
  } as const;

  it.each([
    ['sound', {}, []],
    [
      'over before they begin',
      { valid: { from: '2026-01-02', until: '2026-01-01' } },
      ['VALIDITY validUntil'],
    ],
    ['on a day that not every year has', { ageOn: { kind: 'next', month: 2, day: 29 } }, ['DAY ageOn.day']],
    ['on no day', { ageOn: { kind: 'next', month: 13, day: 1 } }, ['DAY ageOn.day']],
    ['empty', { bands: [] }, ['BANDS_MISSING bands']],
    [
      'twice the same and of nobody',
      {
        bands: [
          { code: 'A', minAge: 10, maxAge: 12 },
          { code: 'A', minAge: 13, maxAge: null },
          { code: 'B', minAge: 14, maxAge: 13 },
          { code: 'C', minAge: -1, maxAge: null },
        ],
      },
      ['BAND_TWICE bands.1.code', 'AGES bands.2.maxAge', 'AGES bands.3.maxAge'],
    ],
  ] as const)('that are %s', (_, change, expected) => {
    const problems = definitionProblems({ ...sound, ...change });
    expect(problems.map(({ code, path }) => `${code} ${path.join('.')}`)).toEqual(expected);
  });
});
