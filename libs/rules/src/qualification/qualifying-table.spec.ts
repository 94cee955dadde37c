import type { Card, CardCompetitor } from '../card.js';
import type { Trial } from '../trial.js';
import { parseVerticalCell } from '../vertical/vertical-cell.js';
import type { VerticalCard } from '../vertical/vertical-card.js';
import {
  drawFinal,
  qualifyingTable,
  verticalQualifyingTable,
  type QualifyingOutcome,
  type QualifyingTable,
} from './qualifying-table.js';

const STANDARD = 6200;

/** A group of a discus qualification: `{ A: '60.10 X 61.00' }`. */
function group(competitors: Readonly<Record<string, string>>, parts: Partial<Card> = {}): Card {
  return {
    rules: 'WA',
    edition: '2024-01',
    event: 'discus',
    indoor: false,
    stage: 'qualification',
    qualifying: { standard: STANDARD, fill: 0 },
    plan: { rounds: 3, cuts: [], cutTies: 'next-best', reorderAfter: [], reorder: 'reverse' },
    unit: 'cm',
    competitors: Object.entries(competitors).map(([bib, cells]) => competitor(bib, cells)),
    admitted: [],
    ...parts,
  };
}

function competitor(bib: string, cells: string): CardCompetitor {
  const series = cells.split(' ').map((cell): Trial => {
    if (cell === 'X') return { outcome: 'foul', mark: null, wind: null };
    return { outcome: 'valid', mark: Math.round(Number(cell) * 100), wind: null };
  });
  return { bib, name: null, club: null, flight: null, status: null, guest: false, series };
}

/** A group with so many competitors at each of these marks. */
function groupOf(letter: string, marks: readonly string[]): Card {
  return group(Object.fromEntries(marks.map((mark, at) => [`${letter}${at + 1}`, `${mark} X X`])));
}

function tableOf(outcome: QualifyingOutcome): QualifyingTable {
  if (!outcome.ok) throw new Error(outcome.problems.map(({ message }) => message).join(' '));
  return outcome.table;
}

const lineOf = ({ finalists }: QualifyingTable): string =>
  finalists.map(({ group: at, row }) => `${'AB'[at]}.${row.bib}.${row.qualified}`).join(' ');

function descending(from: number, count: number): string[] {
  return Array.from({ length: count }, (_, at) => (from - at / 100).toFixed(2));
}

// World Athletics TR25.9 to 25.16 from memory; the fields are constructed.
describe('a qualification in two groups', () => {
  it('takes on all with the standard, when twelve or more have it', () => {
    const groups = [groupOf('a', descending(62.5, 8)), groupOf('b', descending(62.3, 9))];
    const table = tableOf(qualifyingTable(groups, 12));
    expect([table.byStandard, table.byPerformance, table.levelForLast]).toEqual([17, 0, []]);
    expect(table.finalists.every(({ row }) => row.qualified === 'Q')).toBe(true);
  });

  it('fills up to twelve with the best of both groups', () => {
    const groups = [
      groupOf('a', ['62.10', ...descending(61.9, 9)]),
      groupOf('b', ['63.00', '60.00', '61.95']),
    ];
    const table = tableOf(qualifyingTable(groups, 12));
    expect(table.finalists).toHaveLength(12);
    expect(lineOf(table)).toBe(
      'B.b1.Q A.a1.Q B.b3.q A.a2.q A.a3.q A.a4.q A.a5.q A.a6.q A.a7.q A.a8.q A.a9.q A.a10.q',
    );
    expect(table.rows.at(-1)).toMatchObject({ group: 1, row: { bib: 'b2', place: 13, qualified: null } });
  });

  it('takes thirteen when two are level for the last place after all their marks', () => {
    const groups = [
      groupOf('a', [...descending(61.9, 11), '60.00']),
      group({ b1: '60.00 X X', b2: '59.00 X X' }),
    ];
    const table = tableOf(qualifyingTable(groups, 12));
    expect(table.finalists).toHaveLength(13);
    expect(table.levelForLast.map(({ row }) => row.bib)).toEqual(['a12', 'b1']);
  });

  it('breaks a tie for the last place by the second best mark, across the groups', () => {
    const groups = [group({ a1: '60.00 58.00 X', a2: '61.00 X X' }), group({ b1: '58.01 60.00 X' })];
    const table = tableOf(qualifyingTable(groups, 2));
    expect(lineOf(table)).toBe('A.a2.q B.b1.q');
    expect(table.rows[2]?.row).toMatchObject({ bib: 'a1', place: 3, decidedBy: '2nd best', qualified: null });
    expect(table.levelForLast).toEqual([]);
  });

  it('keeps apart two competitors with one bib, and whom the referee let through', () => {
    const admitted = [{ bib: '7', after: null, by: 'R' as const }];
    const groups = [group({ 7: '50.00 X X' }), group({ 7: '40.00 X X', 8: '62.00 X X' }, { admitted })];
    const table = tableOf(qualifyingTable(groups, 1));
    expect(lineOf(table)).toBe('B.8.Q B.7.qR');
  });

  it('has its final drawn anew from a seed', () => {
    const table = tableOf(
      qualifyingTable([groupOf('a', descending(63, 3)), groupOf('b', ['61.00', '62.00'])], 4),
    );
    const outcome = drawFinal(table, 'final');
    expect(outcome).toMatchObject({ ok: true, draw: { terms: { flights: 1, method: 'lot' } } });
    const order = outcome.ok ? outcome.draw.flights[0]! : [];
    expect(order.toSorted()).toEqual(['a1', 'a2', 'a3', 'b2']);
    expect(drawFinal(table, 'final')).toEqual(outcome);
  });

  it('tells a bib that two finalists have', () => {
    const table = tableOf(qualifyingTable([group({ 7: '62.00' }), group({ 7: '63.00' })], 2));
    expect(drawFinal(table, 'final')).toMatchObject({ ok: false, problems: [{ code: 'DUPLICATE' }] });
  });
});

describe('groups that are not one qualification', () => {
  it('are told apart field by field', () => {
    const first = group({ a: '50.00' });
    const plan = { ...first.plan, rounds: 4 };
    const other = group({ b: '50.00' }, { event: 'shot', qualifying: { standard: 6100, fill: 0 }, plan });
    const outcome = qualifyingTable([first, other, group({}, { stage: 'final', qualifying: null })], -1);
    const problems = outcome.ok ? [] : outcome.problems;
    expect(problems.map(({ group: at, code, field }) => [at, code, field])).toEqual([
      [0, 'FILL', 'fill'],
      [1, 'DIFFERS', 'event'],
      [1, 'DIFFERS', 'standard'],
      [1, 'DIFFERS', 'rounds'],
      [2, 'NOT_A_QUALIFICATION', 'stage'],
      [2, 'DIFFERS', 'standard'],
    ]);
    expect(problems[1]?.message).toBe(
      'event: group 2 has shot, the first group discus. Correct one of them.',
    );
  });

  it('are at least one', () => {
    expect(qualifyingTable([], 12)).toMatchObject({ ok: false, problems: [{ code: 'NO_GROUP' }] });
    expect(verticalQualifyingTable([], 12)).toMatchObject({ ok: false, problems: [{ code: 'NO_GROUP' }] });
  });
});

describe('a qualification over a bar', () => {
  function bar(heights: readonly number[], jumpers: Readonly<Record<string, string>>): VerticalCard {
    return {
      rules: 'WA',
      edition: '2024-01',
      event: 'high-jump',
      indoor: false,
      stage: 'qualification',
      qualifying: { standard: 190, fill: 0 },
      unit: 'cm',
      heights,
      competitors: Object.entries(jumpers).map(([bib, cells]) => ({
        bib,
        name: null,
        club: null,
        flight: null,
        status: null,
        guest: false,
        series: cells.split(' ').map(parseVerticalCell),
      })),
      admitted: [],
      jumpOff: [],
    };
  }

  it('merges groups whose heights are not the same', () => {
    const groups = [
      bar([175, 180, 185, 190], { a1: 'O O XO O', a2: 'O XO XXX', a3: 'XXX' }),
      bar([170, 180, 188], { b1: 'O O XO', b2: 'XO O XXX', b3: 'O XXO XXX' }),
    ];
    const table = tableOf(verticalQualifyingTable(groups, 3));
    expect(lineOf(table)).toBe('A.a1.Q B.b1.q B.b2.q');
    expect(table.rows.map(({ row }) => `${row.bib} ${row.place} ${row.decidedBy}`)).toEqual([
      'a1 1 first',
      'b1 2 height',
      'b2 3 height',
      'a2 4 failures at height',
      'b3 5 failures at height',
      'a3 null null',
    ]);
  });
});
