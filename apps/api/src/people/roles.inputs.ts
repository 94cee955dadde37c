import { Field, ID, InputType } from '@nestjs/graphql';
import { IsOptional } from 'class-validator';
import type { Role } from '../platform/identity/grant.js';
import { RoleEnum } from '../platform/identity/identity.types.js';
import { ObjectId } from '../platform/inputs/object-id.js';
import { OwnId } from '../platform/inputs/own-id.js';
import { Text } from '../platform/inputs/text.js';
import { Instant } from '../platform/scalars/instant.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { Why } from './people.inputs.js';

@InputType()
export class RoleGrantInput {
  @OwnId()
  id?: string | null;

  @Field(() => ID)
  @ObjectId('Person')
  personId: string;

  @Field(() => RoleEnum)
  role: Role;

  @Field(() => ID, {
    nullable: true,
    description:
      'The meet (director, referee), the competition or calling group (official) or the athlete (coach, athlete, guardian); absent for an administrator.',
  })
  @IsOptional()
  @ObjectId(['Meet', 'Competition', 'CallingGroup', 'Athlete'])
  on?: string | null;

  @Field(() => Instant, { nullable: true, description: 'Not before; absent: at once.' })
  from?: Date | null;

  @Field(() => Instant, {
    nullable: true,
    description: 'Not after; absent: as long as your own right, without end for an administrator’s.',
  })
  until?: Date | null;

  @Field(() => String, { nullable: true, description: 'Why, for the record.' })
  @IsOptional()
  @Text(1, 500)
  reason?: string | null;
}

@InputType()
export class RoleRevokeInput {
  @Field(() => Uuid)
  grantId: string;

  @Why()
  reason: string;
}
