import { ObjectType, Field } from '@nestjs/graphql';
import { connectionType } from '../platform/connections/connection.js';
import { UserError } from '../platform/errors/user-error.types.js';
import { Competition } from '../platform/objects/competition.type.js';
import { Meet } from '../platform/objects/meet.type.js';

@ObjectType()
export class MeetConnection extends connectionType(Meet, 'Meet') {}

@ObjectType()
export class MeetCreatePayload {
  @Field(() => Meet, { nullable: true })
  meet: Meet | null;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class MeetCopyPayload extends MeetCreatePayload {}

@ObjectType()
export class MeetPublishPayload {
  @Field(() => Meet, { nullable: true })
  meet: Meet | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class MeetSecondPersonSetPayload {
  @Field(() => Meet, { nullable: true })
  meet: Meet | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class CompetitionWithholdPayload {
  @Field(() => Competition, { nullable: true })
  competition: Competition | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class CompetitionCreatePayload {
  @Field(() => Competition, { nullable: true })
  competition: Competition | null;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}
