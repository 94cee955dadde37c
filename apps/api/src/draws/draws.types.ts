import { Field, ObjectType } from '@nestjs/graphql';
import { UserError } from '../platform/errors/user-error.types.js';
import { Competition } from '../platform/objects/competition.type.js';
import { Draw, DrawnFlight } from '../platform/objects/draw.type.js';

@ObjectType()
export class StartListDrawPayload {
  @Field(() => [DrawnFlight], {
    complexity: 4,
    description: 'What was drawn, or would be. Empty when it was refused.',
  })
  flights: readonly DrawnFlight[];

  @Field(() => Draw, { nullable: true, description: 'Null: a preview, or refused.' })
  draw: Draw | null;

  @Field(() => Competition, { nullable: true })
  competition: Competition | null;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}
