import fc from 'fast-check';
import { CATEGORY_DEFINITIONS } from '../categories/category-definitions.js';
import type { RuleSetCode } from '../codes.js';
import { comparable, comparisonClass, incomparable, type MarkContext } from './comparable.js';
import { implementFor } from './implement-for.js';
import { IMPLEMENT_RULES } from './implement-rules.js';
import { ENGLAND_CLUB_IMPLEMENTS, ENGLISH_SCHOOLS_IMPLEMENTS } from './national-implements.js';
import { SPECIFICATIONS } from './specifications.js';
import { THROW_EVENT_CODES, type ThrowEventCode } from './throw-event.js';

const TODAY = '2026-06-13';

type Row = [RuleSetCode, 'M' | 'W', string, Partial<Record<ThrowEventCode, number>>];

describe('the implement of a category', () => {
  it.each<Row>([
    // Regulations of the U18 championships of 2016 and a list of trial standards of 2013 (docslib.org).
    ['WA', 'M', 'senior', { shot: 7260, discus: 2000, hammer: 7260, javelin: 800 }],
    ['WA', 'M', 'U18', { shot: 5000, discus: 1500, hammer: 5000, javelin: 700 }],
    ['WA', 'W', 'senior', { shot: 4000, discus: 1000, hammer: 4000, javelin: 600 }],
    ['WA', 'W', 'U18', { shot: 3000, discus: 1000, hammer: 3000, javelin: 500 }],
    // A table of 2011 (throwerspage.uphero.com).
    ['WA', 'M', 'U20', { shot: 6000, discus: 1750, hammer: 6000, javelin: 800 }],
    ['NFHS', 'W', 'high-school', { shot: 4000, discus: 1000, javelin: 600, weight: 9080 }],
    ['NFHS', 'M', 'high-school', { shot: 5443, discus: 1600, javelin: 800, weight: 11_340 }],
    ['NCAA', 'M', 'college', { shot: 7260, discus: 2000, hammer: 7260, javelin: 800, weight: 15_880 }],
    ['USATF', 'M', '13-14', { shot: 4000, discus: 1000, javelin: 600 }],
    ['USATF', 'W', '9-10', { shot: 2721 }],
    // Senior games of 2015 and 2025 (abcdocz.com, online.flippingbook.com).
    ['WMA', 'M', '50', { shot: 6000, discus: 1500, hammer: 6000, javelin: 700 }],
    ['WMA', 'M', '65', { shot: 5000, discus: 1000, hammer: 5000, javelin: 600 }],
    ['WMA', 'M', '85', { shot: 3000, discus: 1000, hammer: 3000, javelin: 400 }],
    ['WMA', 'W', '60', { shot: 3000, discus: 1000, hammer: 3000, javelin: 500 }],
    ['USATF', 'W', '75', { shot: 2000, discus: 750, hammer: 2000, javelin: 400 }],
  ])('under %s, %s %s', (rules, sex, age, masses) => {
    for (const [event, grams] of Object.entries(masses)) {
      expect([event, implementFor(rules, event as ThrowEventCode, sex, age, TODAY)?.grams]).toEqual([
        event,
        grams,
      ]);
    }
  });

  it('changes on a day', () => {
    const javelin = (day: string) => implementFor('WMA', 'javelin', 'W', '60', day)?.grams;
    // masterstrack.com, 2013: 400 g until the end of that year.
    expect([javelin('2013-12-31'), javelin('2014-01-01')]).toEqual([400, 500]);
    const girls = (day: string) => implementFor('WA', 'shot', 'W', 'U18', day)?.grams;
    expect([girls('2009-06-01'), girls('2016-06-01')]).toEqual([4000, 3000]);
  });

  it('is the meet’s own where it has one, else none where no table says', () => {
    expect(implementFor('WA', 'discus', 'M', 'U15', '2026-03-31')).toBeNull();
    expect(implementFor('WA', 'discus', 'M', 'U15', '2026-03-31', ENGLAND_CLUB_IMPLEMENTS)?.grams).toBe(1250);
    expect(implementFor('WA', 'discus', 'M', 'U15', '2026-04-01', ENGLAND_CLUB_IMPLEMENTS)).toBeNull();
    // The schools’ seniors throw another shot than the seniors of World Athletics.
    expect(implementFor('WA', 'shot', 'M', 'senior', '2026-03-31', ENGLISH_SCHOOLS_IMPLEMENTS)?.grams).toBe(
      6000,
    );
  });

  it('is one at a time, in categories that there are', () => {
    const codes = new Set(CATEGORY_DEFINITIONS.flatMap(({ bands }) => bands.map(({ code }) => code)));
    for (const tables of [IMPLEMENT_RULES, ENGLAND_CLUB_IMPLEMENTS, ENGLISH_SCHOOLS_IMPLEMENTS]) {
      for (const date of [
        '1990-01-01',
        '2011-12-31',
        '2012-01-01',
        '2013-12-31',
        '2014-01-01',
        '2026-03-31',
      ]) {
        const inForce = tables.filter(
          ({ valid }) =>
            (valid.from === null || valid.from <= date) && (valid.until === null || date <= valid.until),
        );
        const lines = inForce.flatMap(({ rules, event, sex, ages }) =>
          ages.map((age) => `${rules} ${event} ${sex} ${age}`),
        );
        expect(new Set(lines).size).toBe(lines.length);
      }
      expect(tables.flatMap(({ ages }) => ages).filter((age) => !codes.has(age))).toEqual([]);
    }
  });

  it('has known dimensions wherever its mass has a specification', () => {
    expect(implementFor('WA', 'javelin', 'W', 'senior', TODAY)?.limits?.value).toEqual([
      { what: 'shaft', minMm: 20, maxMm: 25 },
      { what: 'length', minMm: 2200, maxMm: 2300 },
    ]);
    expect(implementFor('NFHS', 'discus', 'M', 'high-school', TODAY)?.limits).toBeNull();
    for (const { limits } of SPECIFICATIONS) {
      expect(
        limits.value.every(({ minMm, maxMm }) => minMm === null || maxMm === null || minMm < maxMm),
      ).toBe(true);
    }
  });
});

const anyMark: fc.Arbitrary<MarkContext> = fc.record({
  event: fc.constantFrom(...THROW_EVENT_CODES, 'long-jump', 'high-jump'),
  unit: fc.constantFrom('cm', 'qin'),
  implementGrams: fc.option(fc.constantFrom(600, 800, 1750, 2000)),
  onDate: fc.constantFrom('1985-06-01', '1998-06-01', '2026-06-01'),
});

describe('marks', () => {
  const discus = { event: 'discus', unit: 'cm', onDate: TODAY } as const;

  it('with different implements never compare', () => {
    const [junior, senior] = [1750, 2000].map((implementGrams) => ({ ...discus, implementGrams }));
    expect(incomparable(junior!, senior!)).toBe('implement');
    expect(incomparable(senior!, { ...discus, implementGrams: null })).toBe('implement not known');
    expect(comparable(senior!, { ...senior!, onDate: '1970-01-01' })).toBe(true);
  });

  it('with the javelins before and after the change do not compare', () => {
    const javelin = { event: 'javelin', unit: 'cm', implementGrams: 800 } as const;
    const [old, now] = ['1986-03-31', '1986-04-01'].map((onDate) => ({ ...javelin, onDate }));
    expect(incomparable(old!, now!)).toBe('model of implement');
  });

  it('compare when, and only when, they have one class', () => {
    fc.assert(
      fc.property(anyMark, anyMark, (a, b) => {
        const isOne = comparisonClass(a) !== null && comparisonClass(a) === comparisonClass(b);
        return comparable(a, b) === isOne && comparable(b, a) === isOne;
      }),
      { numRuns: 20_000 },
    );
  });
});
