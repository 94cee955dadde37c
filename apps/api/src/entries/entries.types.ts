import { Field, ObjectType } from '@nestjs/graphql';
import { UserError } from '../platform/errors/user-error.types.js';
import { Competition } from '../platform/objects/competition.type.js';
import { Competitor } from '../platform/objects/competitor.type.js';
import { MarkText } from '../platform/scalars/mark.js';

@ObjectType({ description: 'A line of the start list as those at the circle need it: with the whole name.' })
export class CallLine {
  @Field(() => Competitor)
  competitor: Competitor;

  @Field(() => String, { nullable: true })
  name: string | null;

  @Field(() => MarkText, { nullable: true, description: 'With which mark the competitor was entered.' })
  seedMark: string | null;
}

@ObjectType()
export class CompetitorEnterPayload {
  @Field(() => Competitor, { nullable: true })
  competitor: Competitor | null;

  @Field(() => Competition, { nullable: true })
  competition: Competition | null;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

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
