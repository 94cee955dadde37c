import fc from 'fast-check';
import {
  qualifyingTable,
  readSheetSource,
  verticalQualifyingTable,
  type Card,
  type QualifyingOutcome,
  type VerticalCard,
} from '#rules';
import { countGroups, type Counted, type GroupLine, type GroupSheet } from '../reference/qualification.js';
import { PROPERTY_RUNS } from '../support/property-runs.js';

/*
 * Groups of generated qualifications counted by the program and by a reference that only knows the text of the format.
 * Marks are few, so that ties are many.
 */

const STANDARD = '0.06';
const CELL = fc.constantFrom('0.01', '0.02', '0.03', '0.04', '0.05', '0.06', '0.07', 'X', 'X', '-', 'O', 'r');

/** As it can have happened: nothing after retiring, nothing after the standard. */
function possible(cells: readonly string[]): string[] {
  const end = cells.findIndex((cell) => cell === 'r' || (/^\d/.test(cell) && cell >= STANDARD));
  return end < 0 ? [...cells] : cells.slice(0, end + 1);
}

const status = fc.option(fc.constantFrom('DNS', 'DQ'), { nil: undefined, freq: 8 });
const guest = fc.boolean().chain((one) => (one ? fc.constantFrom(true, false, false) : fc.constant(false)));
const admittedBy = fc.option(fc.constantFrom('R', 'J', 'D'), { nil: undefined, freq: 6 });

type Made = Omit<GroupLine, 'bib'> & { readonly admittedBy?: string | undefined };

/** A sheet of these competitors; a bib is worn once in every group. */
function sheetOf(made: readonly Made[], head: Omit<GroupSheet, 'competitors' | 'admitted'>): GroupSheet {
  const competitors = made.map(({ status: own, guest: isGuest, series = [] }, at): GroupLine => {
    const line = { bib: String(at + 1), ...(isGuest && { guest: true }), ...(own && { status: own }) };
    return own === 'DNS' ? line : { ...line, series };
  });
  const admitted = made.flatMap(({ admittedBy: by }, at) => (by ? [{ bib: String(at + 1), by }] : []));
  return { ...head, competitors, admitted };
}

const HEAD = { format: 'sectorline-sheet/1', rules: 'WA', stage: 'qualification' };

const anyThrows: fc.Arbitrary<GroupSheet[]> = fc.array(
  fc
    .array(
      fc.record({
        status,
        guest,
        admittedBy,
        series: fc.array(CELL, { maxLength: 3 }).map(possible),
      }),
      { maxLength: 6 },
    )
    .map((made) => sheetOf(made, { ...HEAD, event: 'hammer', qualifying: { standard: STANDARD } })),
  { minLength: 1, maxLength: 4 },
);

const LADDER = ['1.50', '1.55', '1.60', '1.65', '1.70'];
const TOP = '1.65';

/** What each trial is, used up from the front: a competitor jumps height by height until it is over. */
function jumped(heights: readonly string[], letters: readonly string[]): string[] {
  const left = [...letters];
  const series: string[] = [];
  let inARow = 0;
  for (const height of heights) {
    let cell = '';
    while (!cell.endsWith('O') && !cell.endsWith('-') && cell.length < 3 && inARow < 3) {
      const letter = left.shift() ?? 'r';
      if (letter === 'r') return cell === '' ? [...series, 'r'] : [...series, `${cell}r`];
      cell += letter;
      inARow = letter === 'X' ? inARow + 1 : letter === 'O' ? 0 : inARow;
    }
    series.push(cell);
    if (inARow >= 3 || (cell.endsWith('O') && height >= TOP)) return series;
  }
  return series;
}

const anyJumps: fc.Arbitrary<GroupSheet[]> = fc.array(
  fc
    .tuple(
      fc.subarray(LADDER, { minLength: 1 }),
      fc.array(
        fc.record({
          ...{ status, guest, admittedBy },
          letters: fc.array(fc.constantFrom('O', 'O', 'X', 'X', '-', 'r'), { maxLength: 12 }),
        }),
        { maxLength: 6 },
      ),
    )
    .map(([heights, made]) => {
      const lines = made.map(({ letters, ...line }) => ({ ...line, series: jumped(heights, letters) }));
      return sheetOf(lines, { ...HEAD, event: 'high-jump', heights, qualifying: { standard: TOP } });
    }),
  { minLength: 1, maxLength: 4 },
);

function cardOf(sheet: GroupSheet): Card | VerticalCard {
  const reading = readSheetSource(JSON.stringify(sheet));
  if (!('content' in reading) || !('card' in reading.content))
    throw new Error(JSON.stringify({ sheet, reading }));
  return reading.content.card as Card | VerticalCard;
}

/** Everybody as the program counts, in the form and the order of the reference. */
function countedBy(outcome: QualifyingOutcome, like: readonly Counted[]): Counted[] {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  const { rows, finalists, levelForLast, byStandard, byPerformance } = outcome.table;
  expect(finalists).toEqual(rows.filter(({ row }) => row.qualified !== null));
  const lettered = (letter: string): number => rows.filter(({ row }) => row.qualified === letter).length;
  expect([byStandard, byPerformance]).toEqual([lettered('Q'), lettered('q')]);
  return like.map(({ group, bib }) => {
    const one = rows.find((candidate) => candidate.group === group && candidate.row.bib === bib)!;
    const { place, qualified } = one.row;
    return { group, bib, place, qualified, isLevelForLast: levelForLast.includes(one) };
  });
}

const fills = fc.nat({ max: 9 });

describe('a qualification in groups, against a count by hand', () => {
  it('in throws: places over all groups, who goes on how, and who is level for the last place', () => {
    fc.assert(
      fc.property(anyThrows, fills, (sheets, fill) => {
        const counted = countGroups(sheets, fill);
        expect(
          countedBy(
            qualifyingTable(
              sheets.map((one) => cardOf(one) as Card),
              fill,
            ),
            counted,
          ),
        ).toEqual(counted);
      }),
      { numRuns: PROPERTY_RUNS },
    );
  });

  it('over a bar, also where groups have different heights', () => {
    fc.assert(
      fc.property(anyJumps, fills, (sheets, fill) => {
        const counted = countGroups(sheets, fill);
        const cards = sheets.map((one) => cardOf(one) as VerticalCard);
        expect(countedBy(verticalQualifyingTable(cards, fill), counted)).toEqual(counted);
      }),
      { numRuns: PROPERTY_RUNS },
    );
  });

  it('meets every way of going on, ties for the last place and ties that nothing breaks', () => {
    const ways = ['Q', 'level for last', 'no place', 'out', 'q', 'qD', 'qJ', 'qR'];
    const seen = new Set<string>();
    // Ties that nothing breaks are rare: as many as it takes, and no more than the properties try at full length.
    for (let tried = 0; seen.size < ways.length && tried < 20_000; tried += 1_000) {
      for (const [sheets, fill] of fc.sample(fc.tuple(fc.oneof(anyThrows, anyJumps), fills), 1_000)) {
        for (const { qualified, place, isLevelForLast } of countGroups(sheets, fill)) {
          seen.add(qualified ?? (place === null ? 'no place' : 'out'));
          if (isLevelForLast) seen.add('level for last');
        }
      }
    }
    expect([...seen].sort()).toEqual(ways);
  });
});
