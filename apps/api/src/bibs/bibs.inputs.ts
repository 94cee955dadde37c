import { Field, ID, InputType, Int } from '@nestjs/graphql';
import { IsBoolean, IsInt, IsOptional, Max, Min } from 'class-validator';
import { enumOf } from '../platform/inputs/enums.js';
import { ObjectId } from '../platform/inputs/object-id.js';
import type { BibTerms } from './assignment.js';

const HIGHEST = 99_000;
const LARGEST_STEP = 1000;

export const BibOrderEnum = enumOf<BibTerms['order']>(
  'BibOrder',
  ['club', 'name', 'competition'],
  'Who comes after whom: by club, by family name, or by the first of the own competitions; then by name.',
);

@InputType()
export class BibsAssignInput {
  @Field(() => ID)
  @ObjectId('Meet')
  meetId: string;

  @Field(() => BibOrderEnum)
  order: BibTerms['order'];

  @Field(() => Int, { defaultValue: 1, description: 'The first number.' })
  @IsInt()
  @Min(1)
  @Max(HIGHEST)
  from: number;

  @Field(() => Int, {
    nullable: true,
    description: 'Each club, or competition, begins whole steps of so many after the first; absent: no gaps.',
  })
  @IsOptional()
  @IsInt()
  @Min(1)
  @Max(LARGEST_STEP)
  blockStep?: number | null;

  @Field({ defaultValue: true, description: 'Whoever wears one bib that nobody else wears keeps it.' })
  @IsBoolean()
  isKeeping: boolean;

  @Field({ defaultValue: false, description: 'Only shows what it would come to.' })
  @IsBoolean()
  isPreview: boolean;
}
