import fc from 'fast-check';
import { parsePlacePoints } from './scoring.js';
import { clubTable, rankClubs } from './club-table.js';
import { clubTieWords } from './club-tie-words.js';
import type { ScoredRow } from './shared-points.js';

function row(club: string | null, place: number | null, points: string): ScoredRow {
  const given = parsePlacePoints(points);
  if (!given) throw new Error(`${points} are no points.`);
  return { bib: '1', club, place, points: given };
}

function table(...events: ScoredRow[][]): string[] {
  return clubTable(events).map(({ club, points, place }) => `${place} ${club} ${points}`);
}

// Common practice of team matches, from memory; no published source.
describe('the table of the clubs', () => {
  it('adds the points of all events and lists every club, also without points', () => {
    expect(
      table(
        [row('B', 1, '5'), row('A', 2, '3.5'), row(null, 3, '0')],
        [row('A', 1, '5'), row('C', null, '0')],
      ),
    ).toEqual(['1 A 8.5', '2 B 5', '3 C 0']);
  });

  it('breaks a tie by more first places, then more second places', () => {
    expect(table([row('B', 1, '4'), row('A', 2, '2'), row('A', 2, '2')])).toEqual(['1 B 4', '2 A 4']);
    expect(table([row('B', 1, '4'), row('A', 1, '4'), row('A', 3, '0')])).toEqual(['1 A 4', '2 B 4']);
    expect(table([row('A', 1, '4'), row('B', 1, '4'), row('A', 3, '0'), row('B', 2, '0')])).toEqual([
      '1 B 4',
      '2 A 4',
    ]);
  });

  it('counts places as in the results, also where they give no points', () => {
    expect(table([row('B', 4, '0'), row('A', 5, '0'), row('C', null, '0')])).toEqual([
      '1 B 0',
      '2 A 0',
      '3 C 0',
    ]);
  });

  it('shares the place of clubs that are still level', () => {
    expect(table([row('D', 3, '0'), row('C', 1, '4'), row('B', 1, '4'), row('A', null, '0')])).toEqual([
      '1 B 4',
      '1 C 4',
      '3 D 0',
      '4 A 0',
    ]);
  });

  it('says what decided between clubs that are level on points', () => {
    const events = [
      [row('A', 1, '5'), row('B', 2, '3'), row('C', 3, '1'), row('D', 4, '0'), row('E', 4, '0')],
      [row('B', 2, '2'), row('C', 2, '4'), row('A', 4, '0'), row('F', 5, '0'), row('G', null, '0')],
    ];
    const shown = (ties: 'places' | 'shared'): string[] =>
      rankClubs(events, ties).map(
        ({ place, club, points, tie }) => `${place} ${club} ${points} ${tie && clubTieWords(tie)}`,
      );
    expect(shown('places')).toEqual([
      '1 A 5 tied; more first places',
      '2 B 5 tied; fewer first places; more second places',
      '3 C 5 tied; fewer second places',
      '4 D 0 tied; more 4th places; place shared',
      '4 E 0 tied; more 4th places; place shared',
      '6 F 0 tied; fewer 4th places; more 5th places',
      '7 G 0 tied; fewer 5th places',
    ]);
    expect(shown('shared')).toEqual([
      '1 A 5 tied; place shared',
      '1 B 5 tied; place shared',
      '1 C 5 tied; place shared',
      '4 D 0 tied; place shared',
      '4 E 0 tied; place shared',
      '4 F 0 tied; place shared',
      '4 G 0 tied; place shared',
    ]);
    expect(rankClubs([[row('A', 1, '5'), row('B', 2, '3')]], 'places').map(({ tie }) => tie)).toEqual([
      null,
      null,
    ]);
  });

  it('names the first three places in words', () => {
    const words = [1, 2, 3, 4].map((moreOf) => clubTieWords({ moreOf, fewerOf: null, isShared: false }));
    expect(words).toEqual(['first', 'second', 'third', '4th'].map((place) => `tied; more ${place} places`));
  });

  it('lists equals by code point, where UTF-16 would not', () => {
    const names = ['\u{1F3C3}', '\uFF21', 'a', 'Z', 'Ä', 'Za'];
    const sorted = ['Z', 'Za', 'a', 'Ä', '\uFF21', '\u{1F3C3}'];
    for (const all of [names, sorted, sorted.toReversed()]) {
      expect(clubTable([all.map((name) => row(name, null, '0'))]).map(({ club }) => club)).toEqual(sorted);
    }
  });

  it('does not depend on the order of events or rows', () => {
    const anyRow = fc
      .tuple(fc.constantFrom('A', 'B', 'C', 'D', null), fc.option(fc.integer({ min: 1, max: 4 })), fc.nat(3))
      .map(([club, place, points]) => row(club, place, `${points}`));
    const events = fc.array(fc.array(anyRow, { maxLength: 6 }), { maxLength: 3 });
    const turned = events.chain((all) =>
      fc.tuple(fc.constant(all), fc.shuffledSubarray(all.flat(), { minLength: all.flat().length })),
    );
    fc.assert(
      fc.property(turned, ([all, rows]) => {
        expect(clubTable([rows])).toEqual(clubTable(all));
      }),
      { numRuns: 20_000 },
    );
  });
});
