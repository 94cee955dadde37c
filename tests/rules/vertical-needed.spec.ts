import fc from 'fast-check';
import {
  countVertical,
  formatMark,
  verticalNeededFor,
  verticalNeededForAll,
  type HeightTrials,
  type VerticalCard,
  type VerticalTrial,
} from '#rules';
import { highJump, jumper, jumpOff } from './support/vertical-card.js';
import { anyVerticalCard } from './support/vertical-sheets.js';

describe('what is needed now', () => {
  const card = highJump('1.80 1.84 1.88 1.91', {
    A: 'O O XXO XX',
    B: 'O XO X- X',
    C: 'XO O X',
    D: '- XXX',
  });

  it('is which height to clear at which trial at the latest, for which place', () => {
    expect(verticalNeededFor(card, 'B')).toEqual({
      bib: 'B',
      place: 3,
      next: { height: '1.91', trial: 2 },
      barrier: null,
      // Two failures in a row: this is the last trial, and 1.91 is more than anybody has.
      places: [{ place: 1, height: '1.91', trial: 2, shared: false, rival: 'A' }],
      standard: null,
      fill: null,
    });
    expect(verticalNeededFor(card, 'C')).toMatchObject({
      place: 2,
      next: { height: '1.88', trial: 2 },
      // At the second trial C has fewer failures at 1.88 than A; at the third more up to it.
      places: [{ place: 1, height: '1.88', trial: 2, shared: false, rival: 'A' }],
    });
    expect(verticalNeededFor(card, 'A')!.places).toEqual([]);
  });

  it('says when the place would be shared', () => {
    const level = highJump('1.80 1.84', { A: 'O XO XXX', B: 'O X' }, { heights: [180, 184, 188] });
    expect(verticalNeededFor(level, 'B')!.places).toEqual([
      { place: 1, height: '1.84', trial: 2, shared: true, rival: 'A' },
    ]);
  });

  it('is a first height for somebody who has none', () => {
    const late = highJump('1.80 1.84', { A: 'O', B: 'XX' });
    expect(verticalNeededFor(late, 'B')!.places).toEqual([
      { place: 2, height: '1.80', trial: 3, shared: false, rival: null },
      { place: 1, height: '1.84', trial: 1, shared: false, rival: 'A' },
    ]);
  });

  it('is nothing for whom no clearance can bring a place, and why', () => {
    const { competitors, ...rest } = highJump('1.80 1.84', {
      A: 'XXX',
      B: 'O r',
      C: 'O O',
      F: 'O',
    });
    const others = [
      jumper('D', '', { status: 'DNS' }),
      jumper('E', 'O', { status: 'DQ' }),
      jumper('G', 'O', { guest: true }),
    ];
    const all: VerticalCard = { ...rest, competitors: [...competitors, ...others] };
    const barriers = verticalNeededForAll(all).map(({ bib, barrier }) => `${bib} ${barrier}`);
    expect(barriers).toEqual([
      'A THREE_FAILURES',
      'B RETIRED',
      'C NO_HEIGHT_LEFT',
      'F null',
      'D DID_NOT_START',
      'E DISQUALIFIED',
      'G GUEST',
    ]);
    const tied = highJump('1.80', { A: 'O', B: 'O' }, { jumpOff: jumpOff('1.82 AX BX') });
    expect(verticalNeededFor(tied, 'A')!.barrier).toBe('JUMP_OFF');
    expect(verticalNeededFor(tied, 'Z')).toBeNull();
  });

  it('is the standard of a qualification, or a place among those who fill it', () => {
    const qualification = highJump(
      '1.70 1.75 1.80',
      { A: 'O O', B: 'O XO', C: 'XO XX', D: 'O O O' },
      { stage: 'qualification', qualifying: { standard: 178, fill: 3 } },
    );
    expect(verticalNeededFor(qualification, 'C')).toMatchObject({
      standard: { height: '1.80', trial: 1 },
      fill: { height: '1.80', trial: 1 },
    });
    expect(verticalNeededFor(qualification, 'A')).toMatchObject({
      standard: { height: '1.80', trial: 3 },
      fill: null,
    });
    expect(verticalNeededFor(qualification, 'D')!.barrier).toBe('STANDARD_REACHED');
  });
});

/** The card with one more clearance: what lies between is passed, trials before it are failed. */
function withClearance(card: VerticalCard, bib: string, index: number, trial: number): VerticalCard {
  const competitors = card.competitors.map((one) => {
    if (one.bib !== bib) return one;
    const series = card.heights.slice(0, index + 1).map((_, at): HeightTrials => {
      const taken = one.series[at] ?? [];
      if (at < index) return taken.length > 0 && taken.at(-1) !== 'failed' ? taken : [...taken, 'passed'];
      const more = Array.from({ length: trial - taken.length - 1 }, (): VerticalTrial => 'failed');
      return [...taken, ...more, 'cleared'];
    });
    return { ...one, series };
  });
  return { ...card, competitors };
}

describe('what is needed for a better place', () => {
  it('is every better place there is to win, each with the least that brings it', () => {
    let places = 0;
    fc.assert(
      fc.property(anyVerticalCard, (drawn) => {
        const card = { ...drawn, jumpOff: [] };
        for (const needed of verticalNeededForAll(card)) {
          if (!needed.next) continue;
          places += needed.places.length;
          expect(needed.places.map(({ rival: _, ...one }) => one)).toEqual(placesToWin(card, needed.bib));
        }
      }),
      { numRuns: 20_000, seed: 3 },
    );
    expect(places).toBeGreaterThan(10_000);
  }, 120_000);
});

/** By trying every clearance that may still come on the whole card, the least demanding first. */
function placesToWin(card: VerticalCard, bib: string) {
  const rows = countVertical(card).results;
  const placed = rows.filter(({ place }) => place !== null).length;
  const { series } = card.competitors.find((one) => one.bib === bib)!;
  const failuresInARow = series
    .flatMap((trials) => trials ?? [])
    .reduce((run, trial) => (trial === 'cleared' ? 0 : trial === 'failed' ? run + 1 : run), 0);
  let best = rows.find((row) => row.bib === bib)!.place ?? placed + 2;
  const won: { place: number; height: string; trial: number; shared: boolean }[] = [];
  for (const [index, height] of card.heights.entries()) {
    const taken = series[index] ?? [];
    if (taken.length > 0 && taken.at(-1) !== 'failed') continue;
    for (let trial = taken.length + 3 - failuresInARow; trial > taken.length; trial--) {
      const after = countVertical(withClearance(card, bib, index, trial)).results;
      const { place, equal } = after.find((row) => row.bib === bib)!;
      if (place === null || place >= best) continue;
      won.push({ place, height: formatMark(height, card.unit), trial, shared: equal });
      best = place;
    }
  }
  return won;
}
