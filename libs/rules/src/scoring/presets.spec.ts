import { formatPoints } from '../quantities/fraction.js';
import { placesOf, SCORING_PRESET_CODES, SCORING_PRESETS, type ScoringPresetCode } from './presets.js';
import { scoreRows, type PlacedRow } from './shared-points.js';

function written(code: ScoringPresetCode, kind: 'individual' | 'relay', teams = 0): string {
  return placesOf(SCORING_PRESETS[code][kind], teams).map(formatPoints).join('-');
}

function points(code: ScoringPresetCode, places: readonly (number | null)[], teams = 0): string {
  const rows: PlacedRow[] = places.map((place, at) => ({ bib: `${at}`, club: `club ${at}`, place }));
  const table = placesOf(SCORING_PRESETS[code].individual, teams);
  return scoreRows(rows, { places: table, scorersPerClub: null, nonScorers: 'out' })
    .map((row) => formatPoints(row.points))
    .join(' ');
}

describe('a scoring preset', () => {
  it.each([
    // sites.google.com/view/srhstrack/track-101; track.isport.com, how to keep score.
    ['dual', '5-3-1', '5-0'],
    // track.isport.com for the individual points; those of relays from memory, no text read.
    ['triangular', '5-3-1', '5-3'],
    // From memory, no text read.
    ['quadrangular', '6-4-3-2-1', '6-4-2'],
    // track.isport.com; govineyardrunning.com/scoring-1.
    ['six-places', '10-8-6-4-2-1', '10-8-6-4-2-1'],
    // The same, and sites.google.com/view/srhstrack/track-101.
    ['eight-places', '10-8-6-5-4-3-2-1', '10-8-6-5-4-3-2-1'],
  ] as const)('%s gives %s, to relays %s', (code, individual, relay) => {
    expect([written(code, 'individual'), written(code, 'relay')]).toEqual([individual, relay]);
  });

  // Guide to the European team championships of 2025, birmingham26.com: sixteen teams.
  it('by teams gives as many points as there are teams in the match', () => {
    expect(written('by-teams', 'individual', 16)).toBe('16-15-14-13-12-11-10-9-8-7-6-5-4-3-2-1');
    expect(written('by-teams', 'relay', 3)).toBe('3-2-1');
    expect(written('by-teams', 'individual', 0)).toBe('');
    expect(points('by-teams', [1, 2, 3, 3, 5, null], 16)).toBe('16 15 13.5 13.5 12 0');
  });

  it('shares what the covered places are worth', () => {
    // Common practice, no published source.
    expect(points('six-places', [1, 2, 3, 4, 5, 6, 6])).toBe('10 8 6 4 2 0.5 0.5');
    expect(points('dual', [1, 2, 2, 2])).toBe('5 4/3 4/3 4/3');
  });

  it('never gives more for a worse place, and says where its points come from', () => {
    for (const code of SCORING_PRESET_CODES) {
      for (const kind of ['individual', 'relay'] as const) {
        const { cite } = SCORING_PRESETS[code][kind];
        const worth = placesOf(SCORING_PRESETS[code][kind], 8).map(({ numerator }) => numerator);
        expect(worth).toEqual([...worth].sort((a, b) => Number(b - a)));
        expect(cite.rule).not.toBe('');
        if (cite.basis === 'memory') expect(cite.note).toBeDefined();
      }
    }
  });
});
