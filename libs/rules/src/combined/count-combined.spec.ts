import type { CombinedCard, CombinedMark } from './combined-card.js';
import { parseCombinedMark, type Timing } from './combined-mark.js';
import { COMBINED_TABLES, type CombinedTableCode } from './combined-tables.js';
import { countCombined } from './count-combined.js';

/** One competitor a line, the marks in the order of the events; `.` for no valid mark. */
function card(
  table: CombinedTableCode,
  lines: readonly string[],
  timing: Timing = 'electronic',
): CombinedCard {
  const { events } = COMBINED_TABLES[table];
  const rows = lines.map((line, index) => {
    const words = line.split(' ');
    const marks = events.map((event, at): CombinedMark => {
      const word = words[at] ?? '.';
      return word === '.' ? null : word === 'DNS' ? 'DNS' : parseCombinedMark(word, event, timing);
    });
    return { bib: `${index + 1}`, name: null, club: null, marks };
  });
  return { table, timing, rows };
}

function totals(table: CombinedTableCode, ...lines: string[]): number[] {
  return countCombined(card(table, lines)).map(({ points }) => points);
}

describe('totals that were published', () => {
  // The men's world records of 2015 and 2018; marks and totals from memory, the totals as in the record lists.
  it.each([
    [9045, '10.23 7.88 14.52 2.01 45.00 13.69 43.34 5.20 63.63 4:17.52'],
    [9126, '10.55 7.80 16.00 2.05 48.42 13.75 50.54 5.45 71.90 4:36.11'],
  ])('decathlon %i', (total, line) => {
    expect(totals('decathlon', line)).toEqual([total]);
  });

  // Olympic heptathlon of 1988: Hand and others, A Handbook of Small Data Sets (1994).
  it('heptathlon 7291 and 6897', () => {
    expect(
      totals(
        'heptathlon',
        '12.69 1.86 15.80 22.56 7.27 45.66 2:08.51',
        '12.85 1.80 16.23 23.65 6.71 42.56 2:06.12',
      ),
    ).toEqual([7291, 6897]);
  });

  // The indoor world records of 2012; marks and totals from memory, the totals as in the record lists.
  it('indoor 6645 and 5013', () => {
    expect(totals('heptathlon-indoor', '6.79 8.16 14.56 2.03 7.68 5.20 2:32.77')).toEqual([6645]);
    expect(totals('pentathlon-indoor', '8.38 1.84 16.51 6.57 2:11.15')).toEqual([5013]);
  });

  // The women's world record of 2005; marks and total from memory, the total as in the record lists.
  it('decathlon of women 8358', () => {
    expect(totals('decathlon-women', '12.49 46.19 3.10 48.78 57.19 14.22 6.12 16.42 1.78 5:15.86')).toEqual([
      8358,
    ]);
  });
});

describe('a result of combined events', () => {
  const LINE = '14.00 1.74 12.00 25.00 5.80 40.00 2:20.00';
  const WEAKER = '14.00 1.74 12.00 25.00 5.80 40.00 .';
  const ABSENT = '14.00 1.74 12.00 25.00 5.80 40.00 DNS';

  it('shares the place between equal totals, in the original order', () => {
    const rows = countCombined(card('heptathlon', [WEAKER, LINE, WEAKER, LINE, '. . . . . . .']));
    expect(rows.map(({ bib, place, equal }) => [bib, place, equal])).toEqual([
      ['2', 1, true],
      ['4', 1, true],
      ['1', 3, true],
      ['3', 3, true],
      ['5', 5, false],
    ]);
    expect(rows.at(-1)?.points).toBe(0);
  });

  it('places nobody who did not start an event, and keeps the points so far', () => {
    const rows = countCombined(card('heptathlon', [ABSENT, WEAKER, 'DNS . . . . . .', LINE]));
    expect(rows.map(({ bib, place, status }) => [bib, place, status])).toEqual([
      ['4', 1, null],
      ['2', 2, null],
      ['1', null, 'DNF'],
      ['3', null, 'DNF'],
    ]);
    expect(rows[2]?.points).toBe(rows[1]?.points);
    expect(rows[3]).toMatchObject({ equal: false, points: 0 });
  });

  it('gives the points of every event in the order of the table', () => {
    const [row] = countCombined(card('heptathlon', [ABSENT]));
    expect(Object.keys(row?.eventPoints ?? {})).toEqual([...COMBINED_TABLES.heptathlon.events]);
    expect(Object.values(row?.eventPoints ?? {}).reduce((sum, points) => sum + points, 0)).toBe(row?.points);
    expect(row?.eventPoints['800m']).toBe(0);
  });

  it('counts times by hand as slower', () => {
    const [byHand] = countCombined(card('heptathlon', ['13.8 1.74 12.00 24.8 5.80 40.00 2:20.0'], 'hand'));
    const [electronic] = countCombined(card('heptathlon', ['14.04 1.74 12.00 25.04 5.80 40.00 2:20.00']));
    expect(byHand).toEqual(electronic);
  });
});
