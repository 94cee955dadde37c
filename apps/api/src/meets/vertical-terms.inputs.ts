import type { VerticalTerms } from '#persistence';
import { Field, InputType } from '@nestjs/graphql';
import { ArrayMaxSize, ArrayMinSize, IsBoolean } from 'class-validator';
import { PassGivesUpEnum, TieForFirstEnum } from '../platform/objects/words.js';
import { MarkText } from '../platform/scalars/mark.js';

@InputType({
  description: 'The announced heights of a high jump or pole vault, and the terms it is held on.',
})
export class VerticalTermsInput {
  @Field(() => [MarkText], {
    description: 'Rising, in the unit of the competition, by steps that the rule set allows.',
  })
  @ArrayMinSize(1)
  @ArrayMaxSize(200)
  heights: string[];

  @Field({
    defaultValue: false,
    description:
      'The regulations of the meet set the steps otherwise than the rule set: they need only rise.',
  })
  @IsBoolean()
  hasOwnSteps: boolean;

  @Field({ defaultValue: false, description: 'Part of a combined event.' })
  @IsBoolean()
  isCombined: boolean;

  @Field(() => PassGivesUpEnum, { defaultValue: 'height' })
  passGivesUp: VerticalTerms['passGivesUp'];

  @Field(() => TieForFirstEnum, { defaultValue: 'jump-off' })
  tieForFirst: VerticalTerms['tieForFirst'];
}
