import type { VerticalTerms as StoredTerms, Unit } from '#persistence';
import { formatMark } from '#rules';
import { Field, ObjectType } from '@nestjs/graphql';
import { MarkText } from '../scalars/mark.js';
import { PassGivesUpEnum, TieForFirstEnum } from './words.js';

@ObjectType({ description: 'How a high jump or pole vault is held.' })
export class VerticalTerms {
  @Field(() => [MarkText], { description: 'As announced before the start, rising.' })
  heights: string[];

  @Field({ description: 'Part of a combined event: uniform steps, and nobody chooses the height.' })
  isCombined: boolean;

  @Field(() => PassGivesUpEnum)
  passGivesUp: StoredTerms['passGivesUp'];

  @Field(() => TieForFirstEnum)
  tieForFirst: StoredTerms['tieForFirst'];
}

export function verticalTermsObject(
  { heights, combined, passGivesUp, tieForFirst }: StoredTerms,
  unit: Unit,
): VerticalTerms {
  return {
    heights: heights.map((height) => formatMark(height, unit)),
    isCombined: combined,
    passGivesUp,
    tieForFirst,
  };
}
