import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import type { CrewPost } from '#persistence';
import { UserError } from '../platform/errors/user-error.types.js';
import { Competition } from '../platform/objects/competition.type.js';
import { Instant } from '../platform/scalars/instant.js';
import { CrewPostEnum } from './timetable.inputs.js';

@ObjectType({ description: 'A circle, runway, pit or pair of uprights.' })
export class Facility {
  @Field({ description: 'How the timetable names it.' })
  key: string;

  @Field()
  name: string;
}

@ObjectType({ description: 'Two facilities that cannot be in use at once.' })
export class SharedGround {
  @Field(() => [String])
  facilities: readonly string[];

  @Field()
  reason: string;
}

@ObjectType({ description: 'When and where competitions that are called together take place.' })
export class TimetableSlot {
  @Field(() => [Competition])
  competitions: readonly Competition[];

  @Field(() => Facility)
  facility: Facility;

  @Field(() => Instant, { description: 'When the competitors report.' })
  reportAt: Date;

  @Field(() => Instant)
  startsAt: Date;

  @Field(() => Instant, { description: 'When it is expected to end.' })
  endsAt: Date;
}

@ObjectType({ description: 'Two slots that cannot both be as they are planned.' })
export class TimetableClash {
  @Field(() => [Int], { description: 'Their places in the list of slots, from 0.' })
  slots: readonly number[];

  @Field({
    description:
      '"ground": one place, or two that cannot be in use at once. "competitors": somebody is entered in both; order changes within a round may help.',
  })
  kind: string;

  @Field(() => String, { nullable: true, description: 'Why the ground is shared.' })
  reason: string | null;

  @Field(() => Int, { description: 'How many are entered in both.' })
  competitors: number;
}

@ObjectType({ description: 'When and where the competitions of a meet take place.' })
export class Timetable {
  @Field(() => Int, { description: 'Rises with every change.' })
  revision: number;

  @Field(() => [Facility])
  facilities: readonly Facility[];

  @Field(() => [SharedGround])
  sharedGrounds: readonly SharedGround[];

  @Field(() => [TimetableSlot], { description: 'As they were entered.' })
  slots: readonly TimetableSlot[];

  @Field(() => [TimetableClash], { description: 'What does not fit as planned.' })
  clashes: readonly TimetableClash[];

  @Field(() => String, { nullable: true, description: 'Why it was changed last, when it was told.' })
  reason: string | null;

  @Field(() => Instant)
  changedAt: Date;
}

@ObjectType({ description: 'Somebody who works at a competition.' })
export class CrewMember {
  @Field(() => CrewPostEnum)
  post: CrewPost;

  @Field()
  name: string;
}

@ObjectType()
export class TimetableSetPayload {
  @Field(() => Timetable, { nullable: true })
  timetable: Timetable | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class TimetableDelayPayload extends TimetableSetPayload {
  @Field(() => [ID], { description: 'The competitions that start later than before.' })
  movedCompetitions: readonly string[];
}

@ObjectType()
export class CrewSetPayload {
  @Field(() => [CrewMember], { nullable: true })
  crew: readonly CrewMember[] | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}
