import fc from 'fast-check';
import { countCard, countVertical, placesOn, verticalPlacesOn, type PlacedRow, type ResultRow } from '#rules';
import { PROPERTY_RUNS } from '../support/property-runs.js';
import { anyCard } from './support/any-card.js';
import { anyVerticalCard } from './support/vertical-sheets.js';

interface Member {
  readonly bib: string;
  readonly guest: boolean;
}

/** What scoring is to look at, taken from the rows of the result document. */
function expected(results: readonly ResultRow[], members: readonly Member[]): PlacedRow[] {
  const guests = new Set(members.filter(({ guest }) => guest).map(({ bib }) => bib));
  return results.map(({ bib, place }) => ({ bib, place, club: guests.has(bib) ? null : `club of ${bib}` }));
}

const withClubs = <M extends Member>(members: readonly M[]): M[] =>
  members.map((member) => ({ ...member, club: `club of ${member.bib}` }));

describe('the places that scoring looks at', () => {
  it('are those of the result document, in its order', () => {
    let unplaced = 0;
    fc.assert(
      fc.property(anyCard, (drawn) => {
        const card = { ...drawn, competitors: withClubs(drawn.competitors) };
        const rows = placesOn(card);
        expect(rows).toEqual(expected(countCard(card).results, card.competitors));
        unplaced += rows.filter(({ place }) => place === null).length;
      }),
      { numRuns: PROPERTY_RUNS },
    );
    expect(unplaced).toBeGreaterThan(PROPERTY_RUNS / 10);
  });

  it('are so at a bar too', () => {
    let unplaced = 0;
    fc.assert(
      fc.property(anyVerticalCard, (drawn) => {
        const card = { ...drawn, competitors: withClubs(drawn.competitors) };
        const rows = verticalPlacesOn(card);
        expect(rows).toEqual(expected(countVertical(card).results, card.competitors));
        unplaced += rows.filter(({ place }) => place === null).length;
      }),
      { numRuns: PROPERTY_RUNS },
    );
    expect(unplaced).toBeGreaterThan(PROPERTY_RUNS / 10);
  });
});
