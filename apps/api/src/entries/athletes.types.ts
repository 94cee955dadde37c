import type { AthleteRow, Handedness, NameDisplay, Sex } from '#persistence';
import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { connectionType } from '../platform/connections/connection.js';
import { UserError } from '../platform/errors/user-error.types.js';
import { globalId } from '../platform/inputs/global-id.js';
import { Club } from '../platform/objects/club.type.js';
import { HandednessEnum, NameDisplayEnum, SexEnum } from '../platform/objects/words.js';
import { CalendarDate } from '../platform/scalars/calendar-date.js';

@ObjectType({
  description:
    'An athlete on record, for directors and administrators. Start lists show competitors instead.',
})
export class Athlete {
  /** Not a field. */
  row: AthleteRow;

  @Field(() => ID)
  id: string;

  @Field()
  givenName: string;

  @Field()
  familyName: string;

  @Field(() => SexEnum)
  sex: Sex;

  @Field(() => CalendarDate, { nullable: true })
  birthDate: string | null;

  @Field(() => NameDisplayEnum, { nullable: true })
  display: NameDisplay | null;

  @Field(() => HandednessEnum, { nullable: true })
  handedness: Handedness | null;

  @Field({ description: 'The names are a pseudonym: who it was is no longer known.' })
  isErased: boolean;
}

@ObjectType({ description: 'The age category of somebody on one day. As private as the date of birth.' })
export class AthleteCategory {
  @Field({ description: 'By which age categories.' })
  scheme: string;

  @Field({ description: 'Such as U18, or 45 among veterans.' })
  code: string;

  @Field(() => Int, { nullable: true, description: 'Completed years on the day that counts.' })
  age: number | null;

  @Field(() => CalendarDate, { nullable: true, description: 'The day on which the age counts.' })
  ageOn: string | null;
}

@ObjectType()
export class AthleteConnection extends connectionType(Athlete, 'Athlete') {}

@ObjectType()
export class ClubConnection extends connectionType(Club, 'Club') {}

@ObjectType()
export class ClubCreatePayload {
  @Field(() => Club, { nullable: true })
  club: Club | null;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class AthleteCreatePayload {
  @Field(() => Athlete, { nullable: true })
  athlete: Athlete | null;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class AthleteUpdatePayload {
  @Field(() => Athlete, { nullable: true })
  athlete: Athlete | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class AthleteErasePayload {
  @Field(() => Athlete, { nullable: true })
  athlete: Athlete | null;

  @Field(() => Int, { description: 'Lines of lists from which a name that was written by hand was taken.' })
  listedLines: number;

  @Field({ description: 'The athlete had been erased before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}

export function athleteObject(row: AthleteRow): Athlete {
  return {
    row,
    id: globalId('Athlete', row.id),
    givenName: row.givenName,
    familyName: row.familyName,
    sex: row.sex,
    birthDate: row.birthDate,
    display: row.display,
    handedness: row.handedness,
    isErased: row.erasedAt !== null,
  };
}
