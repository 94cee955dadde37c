import type { Segment, Stage, Style, Variant, View } from '#technique';
import { Field, Int, ObjectType } from '@nestjs/graphql';
import { UserError } from '../platform/errors/user-error.types.js';
import { SegmentEnum, StageEnum, StyleEnum, VariantEnum, ViewEnum } from './words.js';

@ObjectType({
  description:
    'Something that a throw can show. Texts are in English, with {throw} and {block} for the side of the throwing arm and the other one.',
})
export class FaultDefinitionView {
  @Field()
  code: string;

  @Field()
  name: string;

  @Field()
  looksLike: string;

  @Field({ description: 'What coaches see with it; nothing that was shown to follow from it.' })
  mayGoWith: string;

  @Field({ description: 'For children: what to try.' })
  point: string;

  @Field()
  phase: string;

  @Field(() => SegmentEnum)
  segment: Segment;

  @Field(() => ViewEnum)
  view: View;

  @Field(() => [VariantEnum], { nullable: true })
  variants: readonly Variant[] | null;

  @Field(() => String, { nullable: true, description: 'Cannot be present in the same throw.' })
  opposite: string | null;

  @Field(() => StageEnum)
  relevantFrom: Stage;

  @Field()
  nearFouls: boolean;

  @Field(() => String, { nullable: true, description: 'To be shown wherever the fault is.' })
  caution: string | null;

  @Field({ description: 'Of the throwing arm or the shoulders: never pushed for a growing athlete.' })
  isArmOrShoulder: boolean;

  @Field()
  isOwn: boolean;

  @Field({ description: 'New notes may use it.' })
  isActive: boolean;

  @Field()
  isHidden: boolean;

  @Field({ description: 'Its own code, or the one that it was merged into.' })
  readAs: string;
}

@ObjectType()
export class ThrowPhase {
  @Field()
  code: string;

  @Field()
  name: string;
}

@ObjectType({ description: 'What a coach may note of an event.' })
export class FaultVocabulary {
  @Field({ description: 'Of the built-in faults.' })
  edition: string;

  @Field(() => Int, { description: 'How often the organisation’s own words changed.' })
  version: number;

  @Field(() => [VariantEnum])
  variants: readonly Variant[];

  @Field(() => [StyleEnum])
  styles: readonly Style[];

  @Field(() => [ThrowPhase], { complexity: 8 })
  phases: readonly ThrowPhase[];

  @Field(() => [FaultDefinitionView], {
    complexity: 40,
    description: 'In the order of the throw; retired and hidden ones too.',
  })
  faults: readonly FaultDefinitionView[];
}

@ObjectType()
export class FaultPayload {
  @Field(() => [String], { description: 'The faults that it was about, new ones among them.' })
  codes: readonly string[];

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}
