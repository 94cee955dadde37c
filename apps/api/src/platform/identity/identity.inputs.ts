import { Field, ID, InputType } from '@nestjs/graphql';
import { IsOptional } from 'class-validator';
import { ObjectId } from '../inputs/object-id.js';
import { Text } from '../inputs/text.js';
import { Instant } from '../scalars/instant.js';
import { Uuid } from '../scalars/uuid.js';
import type { Role } from './grant.js';
import { RoleEnum } from './identity.types.js';

@InputType()
export class TokenIssueInput {
  @Field(() => RoleEnum)
  role: Role;

  @Field(() => ID, {
    nullable: true,
    description:
      'The meet (director, referee), the competition or the calling group (official); absent for an administrator.',
  })
  @IsOptional()
  @ObjectId(['Meet', 'Competition', 'CallingGroup'])
  on?: string | null;

  @Field({
    description: 'What the token is called: the post or the device, such as "Circle 2 tablet", not a person.',
  })
  @Text(1, 80)
  label: string;

  @Field(() => Instant, { nullable: true, description: 'Not before; absent: at once.' })
  from?: Date | null;

  @Field(() => Instant, {
    nullable: true,
    description: 'Not after; absent: 30 days for an official, a year for the others.',
  })
  until?: Date | null;
}

@InputType()
export class TokenRevokeInput {
  @Field(() => Uuid, { description: 'As tokenIssue gave it, or as the journal names who entered something.' })
  tokenId: string;

  @Field({ description: 'Why, for the record.' })
  @Text(1, 500)
  reason: string;
}
