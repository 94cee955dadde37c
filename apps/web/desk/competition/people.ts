import { keyOf } from '../../offline/object-ids.js';
import type { CompetitionHead } from './head.js';

/** Somebody on the start list, as those at the circle need it. */
export interface Person {
  readonly key: string;
  readonly bib: string;
  readonly name: string;
  readonly club: string | null;
  readonly flight: string | null;
}

/** In the order of competition. */
export function peopleOf({ callList }: CompetitionHead): readonly Person[] {
  return callList.map(({ name, competitor: { id, bib, displayName, club, flight } }) => ({
    key: keyOf(id),
    bib,
    name: name ?? displayName,
    club,
    flight,
  }));
}
