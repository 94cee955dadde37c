import { keyOf } from '../../offline/object-ids.js';
import type { CallLine, CompetitionHead } from './head.js';

/** Somebody on the start list, as those at the circle need it. */
export interface Person {
  readonly key: string;
  readonly bib: string;
  readonly name: string;
  readonly club: string | null;
  readonly flight: string | null;
  readonly isLeftHanded: boolean;
  /** Was entered at the circle, and nobody has said yet who it is. */
  readonly isUnmatched: boolean;
  readonly implementGrams: number | null;
  readonly alsoEntered: NonNullable<CallLine['alsoEntered']>;
}

/** In the order of competition. */
export function peopleOf({ callList, implementGrams }: CompetitionHead): readonly Person[] {
  return callList.map(({ name, handedness, isUnmatched, alsoEntered, competitor }) => ({
    key: keyOf(competitor.id),
    bib: competitor.bib,
    name: name ?? competitor.displayName,
    club: competitor.club,
    flight: competitor.flight,
    isLeftHanded: handedness === 'LEFT',
    isUnmatched: isUnmatched ?? false,
    implementGrams: competitor.implementGrams ?? implementGrams,
    alsoEntered: alsoEntered ?? [],
  }));
}

/** Who is not on the list (any more). */
export function nobody(key: string): Person {
  return {
    ...{ key, bib: '?', name: '', club: null, flight: null, isLeftHanded: false, isUnmatched: false },
    ...{ implementGrams: null, alsoEntered: [] },
  };
}
