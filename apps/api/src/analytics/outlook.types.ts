import { Field, Float, ObjectType } from '@nestjs/graphql';
import { Answered } from './answers.types.js';

@ObjectType({
  description:
    'How likely the best of one competition is to reach a mark. For nobody but the athlete and the coaches; no basis of a selection.',
})
export class StandardOutlook extends Answered {
  @Field(() => Float, { nullable: true })
  chance: number | null;

  @Field(() => Float, { nullable: true, description: 'At the low end of where the level may be.' })
  low: number | null;

  @Field(() => Float, { nullable: true, description: 'At the high end of it.' })
  high: number | null;

  @Field(() => Float, { nullable: true })
  level: number | null;

  @Field(() => Float, { nullable: true, description: 'Chance of no mark at all.' })
  noMark: number | null;

  @Field(() => Float, { nullable: true })
  expectedBestCm: number | null;

  @Field({ description: 'With fewer than five competitions the level is their mean.' })
  followsTrend: boolean;
}
