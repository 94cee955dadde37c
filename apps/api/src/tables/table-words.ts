import { enumOf } from '../platform/inputs/enums.js';
import type { Likeness } from './person-match.js';
import type { ClubDecision } from './table-clubs.js';
import type { PersonDecision } from './table-persons.js';

export const AthleteChoiceEnum = enumOf<PersonDecision['choice']>(
  'AthleteChoice',
  ['same', 'new'],
  'SAME: one of the candidates; NEW: a new athlete on record.',
);

export const ClubChoiceEnum = enumOf<ClubDecision['choice']>(
  'ClubChoice',
  ['same', 'new', 'as written'],
  'SAME: a club on record; NEW: a new one; AS_WRITTEN: kept as text with the entry alone.',
);

export const LikenessEnum = enumOf<Likeness>(
  'AthleteLikeness',
  ['same name', 'names exchanged', 'similar name', 'initial', 'same birth date'],
  'Why somebody may be the same person.',
);
