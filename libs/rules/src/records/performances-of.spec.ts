import type { Card, CardCompetitor } from '../card.js';
import type { Trial } from '../trial.js';
import type { VerticalCard } from '../vertical/vertical-card.js';
import { parseVerticalCell } from '../vertical/vertical-cell.js';
import { compareInTime } from './performance.js';
import { performancesOfCard, performancesOfVerticalCard, type Performer } from './performances-of.js';

const OCCASION = { competition: 'c1', onDate: '2026-05-02', meet: 'Spring Meet' };
const IN = { name: null, club: null, flight: null, status: null, guest: false } as const;

function performer(bib: string): Performer {
  return { athlete: `athlete ${bib}`, club: 'Harbour', sex: 'W', ages: ['senior'], implementGrams: 1000 };
}

function competitor(bib: string, cells: string, parts: Partial<CardCompetitor> = {}): CardCompetitor {
  const series = cells.split(' ').map((cell): Trial => {
    if (cell === 'X') return { outcome: 'foul', mark: null, wind: null };
    if (cell === 'O') return { outcome: 'unmeasured', mark: null, wind: null };
    return { outcome: 'valid', mark: Number(cell), wind: null };
  });
  return { ...IN, bib, series, ...parts };
}

const CARD: Card = {
  rules: 'WA',
  edition: '2024-01',
  event: 'discus',
  indoor: false,
  stage: 'final',
  qualifying: null,
  plan: { rounds: 4, cuts: [], cutTies: 'next-best', reorderAfter: [3], reorder: 'reverse' },
  unit: 'cm',
  competitors: [
    competitor('1', '5000 X O 5100'),
    competitor('2', '4000 X X 4100'),
    competitor('3', '4500 X X X', { guest: true }),
    competitor('4', '6000 X X X', { status: 'DQ' }),
  ],
  admitted: [],
};

describe('the performances on a card', () => {
  const performances = performancesOfCard(CARD, OCCASION, performer);

  it('are the valid, measured marks; those of a disqualified competitor fall', () => {
    expect(performances.map(({ id, mark }) => [id, mark])).toEqual([
      ['c1/1/1', 5000],
      ['c1/1/4', 5100],
      ['c1/2/1', 4000],
      ['c1/2/4', 4100],
      ['c1/3/1', 4500],
    ]);
  });

  it('follow each other as they were called, in a new order after round three', () => {
    expect(performances.toSorted(compareInTime).map(({ id }) => id)).toEqual([
      'c1/1/1',
      'c1/2/1',
      'c1/3/1',
      'c1/2/4',
      'c1/1/4',
    ]);
  });

  it('of a guest stand in no list of the meet', () => {
    expect(performances.map(({ meet }) => meet)).toEqual([...new Array<string>(4).fill('Spring Meet'), null]);
  });
});

describe('the performances over a bar', () => {
  const card: VerticalCard = {
    rules: 'WA',
    edition: '2024-01',
    event: 'high-jump',
    indoor: true,
    stage: 'final',
    qualifying: null,
    unit: 'cm',
    heights: [175, 180, 185],
    competitors: ['O XO XXX', '- XO XXX', 'XXX'].map((cells, at) => ({
      ...IN,
      bib: `${at + 1}`,
      series: cells.split(' ').map(parseVerticalCell),
    })),
    admitted: [],
    jumpOff: [
      {
        height: 185,
        tries: [
          { bib: '1', trial: 'failed' },
          { bib: '2', trial: 'failed' },
        ],
      },
      {
        height: 183,
        tries: [
          { bib: '1', trial: 'failed' },
          { bib: '2', trial: 'cleared' },
        ],
      },
    ],
  };

  it('are the heights cleared, in the jump-off too', () => {
    const performances = performancesOfVerticalCard(card, OCCASION, performer);
    expect(performances.map(({ id, mark }) => [id, mark])).toEqual([
      ['c1/1/175', 175],
      ['c1/1/180', 180],
      ['c1/2/180', 180],
      ['c1/2/jump-off-2', 183],
    ]);
    expect(performances.toSorted(compareInTime).at(-1)?.id).toBe('c1/2/jump-off-2');
    expect(performances[0]).toMatchObject({ indoor: true, wind: null, athlete: 'athlete 1' });
  });
});
