import { Field, Int, ObjectType } from '@nestjs/graphql';
import { Athlete, athleteObject } from '../entries/athletes.types.js';
import { Club, clubObject } from '../platform/objects/club.type.js';
import { CalendarDate } from '../platform/scalars/calendar-date.js';
import type { Likeness } from './person-match.js';
import type { ClubQuestion as AskedClub } from './table-clubs.js';
import type { PersonQuestion } from './table-persons.js';
import { LikenessEnum } from './table-words.js';

@ObjectType({ description: 'Somebody who may be meant: on record, or further up in the table.' })
export class AthleteCandidate {
  @Field(() => Athlete, { nullable: true })
  athlete: Athlete | null;

  @Field(() => Int, { nullable: true, description: 'Of the table, where the person stands first.' })
  line: number | null;

  @Field(() => LikenessEnum)
  why: Likeness;
}

@ObjectType({ description: 'Is this a new athlete, or one of these?' })
export class AthleteQuestion {
  @Field(() => Int, { description: 'Where the person stands first.' })
  line: number;

  @Field()
  name: string;

  @Field(() => CalendarDate, { nullable: true })
  birthDate: string | null;

  @Field(() => String, { nullable: true })
  club: string | null;

  @Field(() => [AthleteCandidate], { complexity: 3 })
  candidates: AthleteCandidate[];

  @Field()
  isDecided: boolean;
}

@ObjectType({ description: 'Which club is this? None on record has the name.' })
export class ClubQuestion {
  @Field(() => Int, { description: 'Where it stands first.' })
  line: number;

  @Field()
  name: string;

  @Field(() => [Club], { complexity: 3, description: 'Clubs with nearly this name.' })
  candidates: Club[];

  @Field()
  isDecided: boolean;
}

export function athleteQuestion({ candidates, ...question }: PersonQuestion): AthleteQuestion {
  return {
    ...question,
    candidates: candidates.map(({ athlete, line, why }) => ({
      ...{ athlete: athlete && athleteObject(athlete), line, why },
    })),
  };
}

export function clubQuestion({ candidates, ...question }: AskedClub): ClubQuestion {
  return { ...question, candidates: candidates.map(clubObject) };
}
