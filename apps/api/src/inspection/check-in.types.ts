import { Field, Int, ObjectType } from '@nestjs/graphql';
import { UserError } from '../platform/errors/user-error.types.js';
import { Competitor } from '../platform/objects/competitor.type.js';
import { Instant } from '../platform/scalars/instant.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { Implement } from './implements.types.js';

@ObjectType({
  description: 'That a competitor reported, or was not there. Nothing in it is ever changed or removed.',
})
export class CheckIn {
  @Field(() => Uuid)
  id: string;

  @Field(() => Int, { description: 'From 1, for the competitor.' })
  sequence: number;

  @Field()
  isPresent: boolean;

  @Field({ description: 'Reported after the first trial of the competition.' })
  isLate: boolean;

  @Field(() => String, { nullable: true })
  note: string | null;

  @Field({ description: 'With which right: official, referee or director.' })
  authority: string;

  @Field({ description: 'Whose token.' })
  enteredBy: string;

  @Field(() => String, { nullable: true })
  device: string | null;

  @Field(() => Instant, { nullable: true, description: 'By the clock of the device, believed by nobody.' })
  deviceAt: Date | null;

  @Field(() => Instant)
  recordedAt: Date;
}

@ObjectType({ description: 'A line of the list at check-in.' })
export class CheckInLine {
  @Field(() => Competitor)
  competitor: Competitor;

  @Field({ description: 'In whole, for those who work at the competition.' })
  name: string;

  @Field(() => CheckIn, { nullable: true, description: 'What counts; null: has not been seen.' })
  current: CheckIn | null;

  @Field(() => [CheckIn], { complexity: 3, description: 'Everything that was entered, in that order.' })
  history: CheckIn[];

  @Field({ description: 'Marked as not started, by competitorStartSet.' })
  didNotStart: boolean;

  @Field(() => [Implement], {
    complexity: 4,
    description: 'Of the event: the competitor’s own and those of the club, as they stand at the meet.',
  })
  implements: Implement[];
}

@ObjectType()
export class CompetitorCheckInPayload {
  @Field(() => CheckInLine, { nullable: true })
  line: CheckInLine | null;

  @Field(() => [String], {
    description:
      'LATE: the competition has begun. MARKED_DNS: still marked as not started, which competitorStartSet takes back. HAS_TRIALS: has trials that count. Accept codes that you do not know.',
  })
  notices: string[];

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}
