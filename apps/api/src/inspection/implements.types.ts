import type { ImplementRow } from '#persistence';
import { IMPLEMENT_STATUSES, type EventCode, type ImplementStatus } from '#rules';
import { Field, Int, ObjectType } from '@nestjs/graphql';
import { connectionType } from '../platform/connections/connection.js';
import { UserError } from '../platform/errors/user-error.types.js';
import { enumOf } from '../platform/inputs/enums.js';
import { EventEnum } from '../platform/objects/words.js';
import { Instant } from '../platform/scalars/instant.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { Inspection } from './inspection.types.js';

export const ImplementStatusEnum = enumOf<ImplementStatus>(
  'ImplementStatus',
  IMPLEMENT_STATUSES,
  'How an implement stands at a meet by everything that was found of it there. PASSED and RECHECKED, which is passed once more after it was used, may be used; INCOMPLETE was not weighed; KEPT_BACK is in the officials’ hands.',
);

export type OwnerKind = 'club' | 'athlete' | 'pool';

export const OwnerKindEnum = enumOf<OwnerKind>(
  'ImplementOwnerKind',
  ['club', 'athlete', 'pool'],
  'Whose an implement is: a club’s, an athlete’s, or of the pool of the meet, for everybody.',
);

@ObjectType()
export class ImplementOwner {
  @Field(() => OwnerKindEnum)
  kind: OwnerKind;

  @Field(() => String, {
    nullable: true,
    description: 'The club, or the athlete as the reader may see the name; null for the pool.',
  })
  name: string | null;
}

@ObjectType({
  description:
    'An implement on the register, as it stands at one meet. It comes back to other meets and is inspected at each.',
})
export class Implement {
  /** Not a field. */
  row: ImplementRow;

  @Field(() => Uuid)
  id: string;

  @Field(() => EventEnum)
  event: EventCode;

  @Field(() => Int, { description: 'As what it is registered; not what it weighs.' })
  grams: number;

  @Field({ description: 'As it is written on it.' })
  label: string;

  @Field(() => ImplementOwner)
  owner: ImplementOwner;

  @Field(() => Instant)
  registeredAt: Date;

  @Field(() => ImplementStatusEnum)
  status: ImplementStatus;

  @Field(() => Inspection, {
    nullable: true,
    description: 'What was found last, as far as it was not corrected.',
  })
  lastInspection: Inspection | null;

  @Field(() => [Inspection], {
    complexity: 4,
    description:
      'Everything that was found of it at this meet, in that order; corrections name what they replace.',
  })
  log: Inspection[];
}

@ObjectType()
export class ImplementConnection extends connectionType(Implement, 'Implement') {}

@ObjectType()
export class ImplementRegisterPayload {
  @Field(() => Implement, { nullable: true })
  implement: Implement | null;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType({ isAbstract: true })
abstract class InspectionPayload {
  @Field(() => Inspection, { nullable: true })
  inspection: Inspection | null;

  @Field(() => Implement, { nullable: true, description: 'As it stands with this.' })
  implement: Implement | null;

  @Field(() => [Uuid], {
    description:
      'Trials made with it that have become questions to the referee, since it did not pass. They count as before until he rules.',
  })
  questioned: string[];

  @Field(() => [String], {
    description:
      'OTHER_IMPLEMENT: the attempt names another one. FAILED: keep it apart and tell the referee. Accept codes that you do not know.',
  })
  notices: string[];

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class ImplementInspectPayload extends InspectionPayload {}

@ObjectType()
export class ImplementRecheckPayload extends InspectionPayload {}
