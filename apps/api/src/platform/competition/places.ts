import type { Brief, BriefLine, CompetitionRow } from '#persistence';
import {
  countedOf,
  countedVerticalOf,
  placesOn,
  verticalPlacesOn,
  type JournalItem,
  type PlacedRow,
  type VerticalEntry,
} from '#rules';
import type { LoadedCompetition } from './loaded.js';
import { distanceSetupOf, verticalSetupOf, type SetupLine } from './setup-of.js';

/** The places of a competition as it stands, with the clubs; nothing else of it. */
export interface StandingPlaces {
  /** In the order of the result. */
  readonly rows: readonly PlacedRow[];
  readonly signedOff: boolean;
}

/** Of a competition that was read for its places alone. */
export function placesOfBrief(row: CompetitionRow, { startList, journal }: Brief): StandingPlaces {
  const lines = startList.map(setupLine);
  if (row.vertical) {
    const setup = verticalSetupOf(row, row.vertical, lines);
    const { card, signedOff } = countedVerticalOf(setup, journal as readonly JournalItem<VerticalEntry>[]);
    return { rows: verticalPlacesOn(card), signedOff };
  }
  const { card, signedOff } = countedOf(distanceSetupOf(row, lines), journal as readonly JournalItem[]);
  return { rows: placesOn(card), signedOff };
}

/** Of a competition that is at hand. */
export function placesOfLoaded(loaded: LoadedCompetition): StandingPlaces {
  const { signedOff } = loaded.state;
  return loaded.kind === 'vertical'
    ? { rows: verticalPlacesOn(loaded.state.card), signedOff }
    : { rows: placesOn(loaded.state.card), signedOff };
}

/** Flights, implements and who is not matched yet decide no place. */
function setupLine({ id, bib, club, guest }: BriefLine): SetupLine {
  return { competitor: { id, bib, guest, flight: null, implementGrams: null, isUnmatched: false }, club };
}
