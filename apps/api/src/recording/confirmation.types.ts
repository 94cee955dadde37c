import type { DecisionState } from '#persistence';
import { Field, Int, ObjectType } from '@nestjs/graphql';
import { enumOf } from '../platform/inputs/enums.js';
import { Instant } from '../platform/scalars/instant.js';
import { Uuid } from '../platform/scalars/uuid.js';

export const RequestedDecisionEnum = enumOf<DecisionState['kind']>(
  'RequestedDecision',
  ['sign-off', 'reopening'],
  'What waits for a second person.',
);

@ObjectType({
  description:
    'A signature or a reopening, where the meet demands two persons: who asked, and who confirmed.',
})
export class DecisionRequest {
  @Field(() => Uuid)
  id: string;

  @Field(() => RequestedDecisionEnum)
  kind: DecisionState['kind'];

  @Field(() => String, {
    nullable: true,
    description: 'Why it is opened again; of a signature: why trials are outstanding.',
  })
  reason: string | null;

  @Field(() => Int, { description: 'The version of the competition that was looked at.' })
  version: number;

  @Field(() => String, { description: 'official, referee or director.' })
  authority: DecisionState['authority'];

  @Field({ description: 'The id of the person or token that asked.' })
  askedBy: string;

  @Field(() => Instant)
  askedAt: Date;

  @Field(() => String, { nullable: true, description: 'The id of the second person; null while it waits.' })
  confirmedBy: string | null;

  @Field(() => String, { nullable: true, description: 'referee or director.' })
  confirmingAuthority: DecisionState['confirmingAuthority'];

  @Field(() => Instant, { nullable: true })
  confirmedAt: Date | null;

  @Field(() => Uuid, { nullable: true, description: 'The entry of the journal that came of it.' })
  entryId: string | null;
}

export function decisionRequestObject(state: DecisionState): DecisionRequest {
  const { id, kind, reason, version, authority, askedBy, confirmedBy, confirmingAuthority, entryId } = state;
  return {
    ...{ id, kind, reason, version, authority, askedBy, confirmedBy, confirmingAuthority, entryId },
    askedAt: new Date(state.askedAt),
    confirmedAt: state.confirmedAt === null ? null : new Date(state.confirmedAt),
  };
}
