import type { CompetitionRow } from '#persistence';
import { parseMark } from '#rules';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import { isGiven } from '../platform/inputs/given.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import type { CompetitorEnterInput } from './entries.inputs.js';
import type { NewLine } from './meet-lists.js';

/** What can be said of an entry without looking anything up. */
export function shapeProblem(
  { athleteId, listedName, clubId, listedClub, seedMark }: CompetitorEnterInput,
  { unit }: CompetitionRow,
): Refusal | null {
  if (isGiven(athleteId) === isGiven(listedName)) {
    return refusal({
      code: 'ATHLETE_OR_NAME',
      path: ['athleteId'],
      message: 'An entry names an athlete on record or a name, one of the two.',
      remedy: 'Send `athleteId` or `listedName`.',
    });
  }
  if (isGiven(clubId) && isGiven(listedClub)) {
    return refusal({
      code: 'ONE_CLUB',
      path: ['listedClub'],
      message: 'An entry is for one club.',
      remedy: 'Send `clubId` or `listedClub`, or neither.',
    });
  }
  return isGiven(seedMark) && parseMark(seedMark)?.unit !== unit ? WRONG_UNIT : null;
}

const WRONG_UNIT = refusal({
  code: 'WRONG_UNIT',
  path: ['seedMark'],
  message: 'The mark is not in the unit of the competition.',
  remedy: 'Send it as it was measured, in that unit; or leave it out.',
});

const OF_DIRECTORS = ['listedName', 'clubId', 'listedClub', 'bib', 'flight'] as const;

/** A coach says who competes and with which mark; for which club and under which bib the records and the meet say. */
export function coachProblem(input: CompetitorEnterInput): Refusal | null {
  const field = input.isGuest ? 'isGuest' : OF_DIRECTORS.find((one) => isGiven(input[one]));
  if (field === undefined) return null;
  return refusal({
    code: 'FOR_DIRECTORS',
    path: [field],
    message: 'Only a director of the meet may say this.',
    remedy: 'Leave the field out.',
  });
}

/** The line as it was asked for; the club of an athlete who names none is looked up by whoever stores it. */
export function newCompetitor(input: CompetitorEnterInput, organisationId: string): NewLine {
  return {
    organisationId,
    id: input.id ?? uuidV7(),
    competitionId: input.competitionId,
    athleteId: input.athleteId ?? null,
    listedName: input.listedName ?? null,
    listedClub: input.listedClub ?? null,
    clubId: input.clubId ?? null,
    bib: input.bib ?? null,
    flight: input.flight ?? null,
    guest: input.isGuest,
    implementGrams: input.implementGrams ?? null,
    seedMark: isGiven(input.seedMark) ? (parseMark(input.seedMark)?.value ?? null) : null,
    written: null,
    isUnmatched: false,
  };
}
