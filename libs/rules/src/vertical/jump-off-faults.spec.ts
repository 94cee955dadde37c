import { jumpOffFaults } from './jump-off-faults.js';
import type { VerticalCard, VerticalCompetitor } from './vertical-card.js';
import { parseJumpOffTry, parseVerticalCell } from './vertical-cell.js';

/** A, B and C are level for first, D is behind; E is what is said. */
function faults(rounds: readonly string[], parts: Partial<VerticalCompetitor> = {}): string[] {
  const competitor = (bib: string, cell: string): VerticalCompetitor => ({
    bib,
    name: null,
    club: null,
    flight: null,
    status: null,
    guest: false,
    series: [parseVerticalCell(cell)],
  });
  const card: VerticalCard = {
    rules: 'WA',
    edition: '2024-01',
    event: 'high-jump',
    indoor: false,
    stage: 'final',
    qualifying: null,
    unit: 'cm',
    heights: [180],
    competitors: [
      ...[...'ABC'].map((bib) => competitor(bib, 'O')),
      competitor('D', 'XO'),
      { ...competitor('E', 'O'), ...parts },
    ],
    admitted: [],
    jumpOff: rounds.map((words) => ({
      height: 182,
      tries: words.split(' ').flatMap((entry) => {
        const trial = parseJumpOffTry(entry.slice(1));
        return trial ? [{ bib: entry.slice(0, 1), trial }] : [];
      }),
    })),
  };
  return jumpOffFaults(card).map(({ round, bib, kind }) => `${round} ${bib ?? '*'} ${kind}`);
}

const OUT_OF_IT = { series: [parseVerticalCell('XXX')] };
const DISQUALIFIED = { status: 'DQ' } as const;

describe('what cannot be in a jump-off', () => {
  it.each([
    [['AX BX CX DX'], ['0 D not level for first']],
    [['DX AX EO BX CX'], ['0 D not level for first', '0 E not level for first']],
    [['AO BX CX', 'AO'], ['1 * already decided']],
    [['AO BX CX', 'AO DO'], ['1 D not level for first']],
    [
      ['AO BX CX', '', ''],
      ['1 * already decided', '2 * already decided'],
    ],
    [['AO BO CX', 'AO BX CX'], ['1 C already out']],
    [['AO BX'], ['0 C no entry']],
    [['CX'], ['0 A no entry', '0 B no entry']],
    [['A- Br Cr', 'AO'], ['1 * already decided']],
  ])('%j: %j', (rounds, expected) => {
    expect(faults(rounds, OUT_OF_IT)).toEqual(expected);
  });

  it.each([
    [['AX BX CX', 'AO BO CX', 'AX BO']],
    [['Ar', 'BX CX', 'BO CX']],
    [['A- B-']],
    [['AX BX CX']],
    [[]],
  ])('%j may be', (rounds) => {
    expect(faults(rounds, OUT_OF_IT)).toEqual([]);
  });

  it('is an entry of a guest', () => {
    expect(faults(['AX BX CX EX'], { guest: true })).toEqual(['0 E not level for first']);
  });

  it('is not what somebody did who was disqualified, during it or after', () => {
    expect(faults(['AX BX CX EX', 'AO BX CX'], DISQUALIFIED)).toEqual([]);
    expect(faults(['AO BX CX EO', 'AX EO'], DISQUALIFIED)).toEqual([]);
    expect(faults(['AX BX EX'], DISQUALIFIED)).toEqual(['0 C no entry']);
    expect(faults(['AO BX CX EX', 'AO'], DISQUALIFIED)).toEqual(['1 * already decided']);
  });
});
