import { parseCombinedMark } from './combined-mark.js';
import { COMBINED_TABLES, THROWS_PENTATHLON, type CombinedTable } from './combined-tables.js';
import { combinedPoints, countCombinedField, type CombinedField } from './count-combined.js';
import { runningTotals } from './running-totals.js';

function field(
  table: CombinedTable,
  lines: readonly string[],
  parts: Partial<CombinedField> = {},
): CombinedField {
  const rows = lines.map((line, at) => {
    const marks = line.split(' ').map((word, index) => {
      const timing = parts.timedByHand?.includes(table.events[index]!) ? 'hand' : 'electronic';
      return word === '.'
        ? null
        : word === 'DNS'
          ? 'DNS'
          : parseCombinedMark(word, table.events[index]!, timing);
    });
    return { bib: `${at + 1}`, name: null, club: null, marks };
  });
  return { table, timing: 'electronic', rows, ...parts };
}

// Olympic heptathlon of 1988, the first two: Hand and others, A Handbook of Small Data Sets (1994).
const BEST = '12.69 1.86 15.80 22.56 7.27 45.66 2:08.51';
const SECOND = '12.85 1.80 16.23 23.65 6.71 42.56 2:06.12';

describe('totals as a heptathlon goes on', () => {
  it('end with the published ones', () => {
    const stages = runningTotals(field(COMBINED_TABLES.heptathlon, [SECOND, BEST]));
    expect(stages.map(({ event }) => event)).toEqual([...COMBINED_TABLES.heptathlon.events]);
    expect(stages.at(-1)?.rows.map(({ bib, total, place }) => [bib, total, place])).toEqual([
      ['2', 7291, 1],
      ['1', 6897, 2],
    ]);
    for (const [at, { rows }] of stages.entries()) {
      for (const row of rows) {
        const before = stages[at - 1]?.rows.find(({ bib }) => bib === row.bib)?.total ?? 0;
        expect(row.total).toBe(before + (row.points ?? 0));
      }
    }
  });

  it('say which event is complete and what is to come', () => {
    const stages = runningTotals(field(COMBINED_TABLES.heptathlon, ['12.69 1.86 15.80', '12.85 1.80']));
    expect(stages.map(({ event, complete }) => [event, complete])).toEqual([
      ['100mh', true],
      ['high-jump', true],
      ['shot', false],
    ]);
    expect(stages[2]?.rows[1]).toMatchObject({ bib: '2', points: null, place: 2 });
  });

  it('put out who did not start, from that event on, and keep in who has no mark', () => {
    const stages = runningTotals(
      field(COMBINED_TABLES.heptathlon, ['12.69 DNS', '14.00 1.70 .', '18.00 1.30 9.00']),
    );
    expect(stages[0]?.rows.map(({ bib, place }) => [bib, place])).toEqual([
      ['1', 1],
      ['2', 2],
      ['3', 3],
    ]);
    expect(stages[2]?.rows.map(({ bib, place, points }) => [bib, place, points])).toEqual([
      ['2', 1, 0],
      ['3', 2, combinedPoints('W', 'shot', 900)],
      ['1', null, null],
    ]);
    expect(stages[2]?.complete).toBe(true);
  });

  it('are none before it begins', () => {
    expect(runningTotals(field(COMBINED_TABLES.heptathlon, []))).toEqual([]);
  });
});

describe('a competition of combined events', () => {
  it('may be timed by hand in one event only', () => {
    const [byHand] = countCombinedField(
      field(COMBINED_TABLES.heptathlon, ['12.6 1.86 15.80 22.56 7.27 45.66 2:08.51'], {
        timedByHand: ['100mh'],
      }),
    );
    expect(byHand?.row.eventPoints['100mh']).toBe(combinedPoints('W', '100mh', 1284));
    expect(byHand?.row.eventPoints['200m']).toBe(combinedPoints('W', '200m', 2256));
  });

  it('says what parts equal totals', () => {
    const pentathlon = THROWS_PENTATHLON.M;
    const rows = countCombinedField(field(pentathlon, ['40.00 . . . .', '40.00 . . . .', '45.00 . . . .']));
    expect(rows.map(({ row, decidedBy }) => [row.bib, row.place, decidedBy])).toEqual([
      ['3', 1, 'first'],
      ['1', 2, 'points'],
      ['2', 2, 'equal'],
    ]);
  });
});

describe('a throws pentathlon', () => {
  // The formulas are held to published tables beside them; here each event is scored by its own.
  it.each(['M', 'W'] as const)('of %s adds up the points of five throws', (sex) => {
    const marks = { hammer: 4512, shot: 1234, discus: 4021, javelin: 4417, weight: 1350 };
    const line = '45.12 12.34 40.21 44.17 13.50';
    const [counted] = countCombinedField(field(THROWS_PENTATHLON[sex], [line]));
    const events = Object.entries(marks) as [keyof typeof marks, number][];
    const expected = Object.fromEntries(events.map(([event, cm]) => [event, combinedPoints(sex, event, cm)]));
    expect(counted?.row.eventPoints).toEqual(expected);
    expect(counted?.row.points).toBe(
      Object.values(expected).reduce((sum: number, one) => sum + (one ?? 0), 0),
    );
  });
});
