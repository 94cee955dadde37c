import fc from 'fast-check';
import { ageOn, formatDate, parseDate } from './calendar-date.js';
import type { CategoryDefinition } from './category-definition.js';
import { CATEGORY_DEFINITIONS } from './category-definitions.js';
import { categoryDefinitions, categoryOf, type CategoryOutcome } from './category-of.js';
import { isValidOn } from './validity.js';

function definition(scheme: string, onDate: string): CategoryDefinition {
  return categoryDefinitions({ scheme }, onDate)[0]!;
}

function codeOf(outcome: CategoryOutcome): string {
  return outcome.ok ? outcome.category.code : outcome.problem.code;
}

describe('the category of a competitor', () => {
  // WA: 16 and 17 on 31 December (regulations of an U18 championship, 2016), 18 and 19 from memory.
  it.each([
    ['2009-01-01', 'U18'],
    ['2010-12-31', 'U18'],
    ['2008-12-31', 'U20'],
    ['2007-01-01', 'U20'],
    ['2006-12-31', 'senior'],
    ['2011-01-01', 'NO_CATEGORY'],
  ])('born on %s, under World Athletics in May 2026, is %s', (birth, code) => {
    expect(codeOf(categoryOf(birth, '2026-05-02', definition('WA', '2026-05-02')))).toBe(code);
  });

  // Masters by the day, in bands of five years from the 35th birthday (from memory).
  it.each([
    ['1991-05-03', '2026-05-02', 'NO_CATEGORY'],
    ['1991-05-02', '2026-05-02', '35'],
    ['1986-05-03', '2026-05-02', '35'],
    ['1986-05-02', '2026-05-02', '40'],
    ['1921-01-01', '2026-05-02', '100'],
    ['1912-01-01', '2026-05-02', '100'],
    ['1992-02-29', '2027-02-28', 'NO_CATEGORY'],
    ['1992-02-29', '2027-03-01', '35'],
  ])('born on %s, among masters on %s, is %s', (birth, day, code) => {
    expect(codeOf(categoryOf(birth, day, definition('WMA', day)))).toBe(code);
  });

  // English clubs until 31 March 2026: the age on the next 31 August, U20 until 31 December (from memory).
  it.each([
    ['2011-08-31', '2025-06-01', 'U15'],
    ['2010-08-31', '2025-06-01', 'U17'],
    ['2010-08-31', '2025-09-01', 'U17'],
    ['2009-09-01', '2025-09-01', 'U17'],
    ['2009-08-31', '2025-09-01', 'U20'],
    ['2006-01-01', '2025-06-01', 'U20'],
    ['2005-12-31', '2025-06-01', 'senior'],
    ['2010-08-31', '2026-04-01', 'U18'],
  ])('born on %s, in an English club on %s, is %s', (birth, day, code) => {
    expect(codeOf(categoryOf(birth, day, definition('England clubs', day)))).toBe(code);
  });

  it('says on which day which age counted', () => {
    expect(categoryOf('2008-06-30', '2026-05-02', definition('WA', '2026-05-02'))).toEqual({
      ok: true,
      category: { scheme: 'WA', code: 'U20', age: 18, ageOn: '2026-12-31' },
    });
    expect(categoryOf('2008-06-30', '2026-05-02', definition('NFHS', '2026-05-02'))).toEqual({
      ok: true,
      category: { scheme: 'NFHS', code: 'high-school', age: null, ageOn: null },
    });
  });

  it('is none for what is no day, not born, or not in force', () => {
    const wa = definition('WA', '2026-05-02');
    expect(categoryOf('2007-02-29', '2026-05-02', wa)).toMatchObject({
      problem: { field: 'birthDate', code: 'DATE' },
    });
    expect(categoryOf('2007-02-28', '2 May', wa)).toMatchObject({
      problem: { field: 'onDate', code: 'DATE' },
    });
    expect(codeOf(categoryOf('2026-05-03', '2026-05-02', wa))).toBe('NOT_BORN');
    expect(codeOf(categoryOf('2008-01-01', '2026-04-01', definition('England clubs', '2026-03-31')))).toBe(
      'NOT_IN_FORCE',
    );
  });

  it('may be a club’s own, which comes first', () => {
    const own: CategoryDefinition = {
      scheme: 'Harbour Club autumn series',
      rules: 'WA',
      valid: { from: '2026-09-01', until: '2026-10-31' },
      ageOn: { kind: 'day of competition' },
      bands: [{ code: 'beginners', minAge: null, maxAge: 120 }],
      cite: { rule: 'regulations of the series', basis: 'constructed' },
    };
    const [first, second] = categoryDefinitions({ rules: 'WA' }, '2026-09-12', [own]);
    expect([first?.scheme, second?.scheme]).toEqual(['Harbour Club autumn series', 'WA']);
    expect(codeOf(categoryOf('1990-01-01', '2026-09-12', first!))).toBe('beginners');
    expect(categoryDefinitions({ rules: 'WA' }, '2026-11-01', [own])).toHaveLength(1);
  });
});

const day = fc
  .record({
    year: fc.integer({ min: 1900, max: 2040 }),
    month: fc.integer({ min: 1, max: 12 }),
    day: fc.integer({ min: 1, max: 28 }),
  })
  .map(formatDate);

describe('any definition', () => {
  it('has no two in force at once, and bands that do not overlap on one day', () => {
    for (const one of CATEGORY_DEFINITIONS) {
      for (const date of ['2011-06-01', '2026-03-31', '2026-04-01', '2030-01-01']) {
        const same = CATEGORY_DEFINITIONS.filter(
          (other) => other.scheme === one.scheme && isValidOn(other.valid, date),
        );
        expect(same.length).toBeLessThanOrEqual(1);
      }
    }
  });

  it('never makes anybody younger as time goes on', () => {
    fc.assert(
      fc.property(fc.constantFrom(...CATEGORY_DEFINITIONS), day, day, day, (definitionOf, ...days) => {
        const [birth, earlier, later] = days.sort();
        const always = { ...definitionOf, valid: { from: null, until: null } };
        const at = (on: string): number => {
          const outcome = categoryOf(birth, on, always);
          return outcome.ok ? always.bands.findIndex(({ code }) => code === outcome.category.code) : -1;
        };
        const [before, after] = [at(earlier), at(later)];
        // Too young before the first category, too old after the last one.
        return before < 0 || after < 0 || before <= after;
      }),
      { numRuns: 20_000 },
    );
  });
});

describe('days', () => {
  it('are read as the calendar has them, against the host’s', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 9999 }),
        fc.integer({ min: 0, max: 13 }),
        fc.integer({ min: 0, max: 32 }),
        (year, month, date) => {
          const text = [
            String(year).padStart(4, '0'),
            ...[month, date].map((n) => String(n).padStart(2, '0')),
          ].join('-');
          const host = new Date(`${text}T00:00:00Z`);
          const isDay = !Number.isNaN(host.getTime()) && host.toISOString().startsWith(text);
          const parsed = parseDate(text);
          return isDay ? parsed !== null && formatDate(parsed) === text : parsed === null;
        },
      ),
      { numRuns: 20_000 },
    );
  });

  it('count completed years', () => {
    const age = (birth: string, on: string) => ageOn(parseDate(birth)!, parseDate(on)!);
    expect([age('2000-02-29', '2001-02-28'), age('2000-02-29', '2001-03-01')]).toEqual([0, 1]);
    expect([age('2000-05-02', '2026-05-01'), age('2000-05-02', '2026-05-02')]).toEqual([25, 26]);
  });
});
