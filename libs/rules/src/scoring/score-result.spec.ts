import type { ResultDocument, ResultRow } from '../result/result-document.js';
import { scoreMeet, scoreResult } from './score-result.js';
import { parsePlacePoints, type Scoring } from './scoring.js';

const FIVE_THREE_ONE: Scoring = {
  places: ['5', '3', '1'].flatMap((text) => parsePlacePoints(text) ?? []),
  scorersPerClub: null,
  nonScorers: 'out',
};

function rowOf(bib: string, place: number | null): ResultRow {
  return {
    bib,
    place,
    equal: false,
    mark: null,
    wind: null,
    windLegal: null,
    windLegalMark: null,
    status: place === null ? 'DNS' : null,
    decidedBy: null,
    qualified: null,
  };
}

const COMPETITORS = [
  { bib: '1', club: 'North' },
  { bib: '2', club: null },
  { bib: '3', club: 'South' },
  { bib: '4', club: 'East' },
];

describe('a result with a scoring', () => {
  const results = [rowOf('3', 1), rowOf('2', 2), rowOf('1', 3), rowOf('4', null)];

  it('has the points of everybody and the clubs', () => {
    const scored = scoreResult(results, COMPETITORS, FIVE_THREE_ONE);
    expect(scored.results).toEqual([
      { ...rowOf('3', 1), points: '5' },
      { ...rowOf('2', 2), points: '0' },
      { ...rowOf('1', 3), points: '3' },
      { ...rowOf('4', null), points: '0' },
    ]);
    expect(scored.clubs).toEqual([
      { club: 'South', points: '5', place: 1 },
      { club: 'North', points: '3', place: 2 },
      { club: 'East', points: '0', place: 3 },
    ]);
  });

  it('of a meet adds up over the competitions', () => {
    const document: ResultDocument = { format: 'sectorline-result/1', results, problems: [] };
    const second = { ...document, results: [rowOf('1', 1), rowOf('3', 2)] };
    const meet = scoreMeet(
      [
        { document, competitors: COMPETITORS },
        { document: second, competitors: COMPETITORS },
      ],
      FIVE_THREE_ONE,
    );
    expect(meet.format).toBe('sectorline-meet-result/1');
    expect(meet.results?.map((one) => one.results?.map(({ points }) => points))).toEqual([
      ['5', '0', '3', '0'],
      ['5', '3'],
    ]);
    // Level on 8 points with one first place each; South’s other place is second, North’s is third.
    expect(meet.clubs).toEqual([
      { club: 'South', points: '8', place: 1 },
      { club: 'North', points: '8', place: 2 },
      { club: 'East', points: '0', place: 3 },
    ]);
    expect(meet.results?.some((one) => 'clubs' in one)).toBe(false);
    expect(meet.problems).toEqual([]);
  });

  it('of a meet has no rows and no clubs of a competition that has no result', () => {
    const document: ResultDocument = { format: 'sectorline-result/1', problems: [] };
    const meet = scoreMeet([{ document, competitors: COMPETITORS }], FIVE_THREE_ONE);
    expect(meet.results).toEqual([{ ...document, results: [] }]);
    expect(meet.clubs).toEqual([]);
  });
});
