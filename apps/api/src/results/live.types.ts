import type { CompetitionStatus } from '#persistence';
import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { CompetitionStatusEnum } from '../platform/objects/words.js';
import type { Shown } from './table-memory.js';

@ObjectType({
  description:
    'A competition at one version, as it is told to everybody who listens. Whatever depends on more than the version and on who may see whole names is read by a query.',
})
export class LiveCompetition {
  /** Not fields: what the others are read from. */
  shown: Shown;
  audience: 'public' | 'crew';

  @Field(() => ID, { description: 'Of the competition.' })
  id: string;

  @Field(() => Int, { description: 'Rises with every change and never falls.' })
  version: number;

  @Field(() => CompetitionStatusEnum)
  status: CompetitionStatus;
}
