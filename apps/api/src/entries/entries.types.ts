import type { Handedness } from '#persistence';
import { Field, ID, ObjectType } from '@nestjs/graphql';
import { UserError } from '../platform/errors/user-error.types.js';
import { Competition } from '../platform/objects/competition.type.js';
import { Competitor } from '../platform/objects/competitor.type.js';
import { HandednessEnum } from '../platform/objects/words.js';
import { Instant } from '../platform/scalars/instant.js';
import { MarkText } from '../platform/scalars/mark.js';

@ObjectType({ description: 'Another competition of the meet in which the same athlete is entered.' })
export class AlsoEntered {
  @Field(() => ID)
  competitionId: string;

  @Field()
  title: string;

  @Field(() => Instant, { nullable: true })
  startsAt: Date | null;
}

@ObjectType({ description: 'A line of the start list as those at the circle need it: with the whole name.' })
export class CallLine {
  @Field(() => Competitor)
  competitor: Competitor;

  @Field(() => String, { nullable: true })
  name: string | null;

  @Field(() => MarkText, { nullable: true, description: 'With which mark the competitor was entered.' })
  seedMark: string | null;

  @Field(() => String, {
    nullable: true,
    description:
      'The own age category on the day of the competition, such as U18; nothing where the age is not known.',
  })
  category: string | null;

  @Field(() => HandednessEnum, {
    nullable: true,
    description: 'For those at the circle: the gates of a cage are set by it.',
  })
  handedness: Handedness | null;

  @Field({
    description: 'Was entered at the circle, and nobody has said yet who it is: see competitorMatch.',
  })
  isUnmatched: boolean;

  @Field(() => [AlsoEntered], {
    complexity: 3,
    description: 'Where else at the meet the athlete is entered, the earliest first.',
  })
  alsoEntered: AlsoEntered[];
}

@ObjectType({ description: 'What somebody should look at, though the entry was taken.' })
export class EntryNotice {
  @Field({
    description:
      'AGE_UNKNOWN, CATEGORY_UNKNOWN, OTHER_AGES (enters a harder category), SEX_UNDECIDED; of a guest also what would keep others out. Accept codes that you do not know.',
  })
  code: string;

  @Field()
  message: string;

  @Field()
  rule: string;

  @Field()
  remedy: string;
}

@ObjectType()
export class CompetitorEnterPayload {
  @Field(() => Competitor, { nullable: true })
  competitor: Competitor | null;

  @Field(() => Competition, { nullable: true })
  competition: Competition | null;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [EntryNotice], { complexity: 3 })
  notices: EntryNotice[];

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class CompetitorWithdrawPayload {
  @Field(() => Competition, { nullable: true })
  competition: Competition | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class StartOrderSetPayload {
  @Field(() => Competition, { nullable: true })
  competition: Competition | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}
