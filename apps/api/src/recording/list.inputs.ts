import { Field, ID, InputType } from '@nestjs/graphql';
import { Type } from 'class-transformer';
import { ArrayMaxSize, ArrayMinSize, IsOptional, ValidateNested } from 'class-validator';
import { Reason } from '../platform/inputs/entry-fields.js';
import { ObjectId } from '../platform/inputs/object-id.js';
import { Text } from '../platform/inputs/text.js';
import { EntryInput } from './entry.inputs.js';

@InputType({
  description:
    'Somebody who is on no list came to the circle. The entry id becomes the id of the competitor, so that a device can go on with trials before this one is sent.',
})
export class CompetitorAddInput extends EntryInput {
  @Field({ description: 'The name as it was given.' })
  @Text(1, 200)
  listedName: string;

  @Field(() => String, { nullable: true, description: 'The club as it was given.' })
  @IsOptional()
  @Text(1, 200)
  listedClub?: string | null;

  @Field({
    description: 'As it is worn. If somebody of the competition has it already, it gets an addition.',
  })
  @Text(1, 60)
  bib: string;

  @Field(() => String, {
    nullable: true,
    description: 'Where there are flights; absent, or one that there is not: the last.',
  })
  @IsOptional()
  @Text(1, 64)
  flight?: string | null;
}

@InputType({ description: 'Who the competitor is that was entered by name.' })
export class CompetitorMatchInput extends EntryInput {
  @Field(() => ID)
  @ObjectId('Competitor')
  competitorId: string;

  @Field(() => ID, {
    nullable: true,
    description: 'The athlete on record; absent: the name that was written down is accepted.',
  })
  @IsOptional()
  @ObjectId('Athlete')
  athleteId?: string | null;
}

@InputType()
export class BibLineInput {
  @Field(() => ID)
  @ObjectId('Competitor')
  competitorId: string;

  @Field()
  @Text(1, 64)
  bib: string;
}

@InputType({
  description: 'Who wears which bib: two that were swapped, or one that was written down wrongly.',
})
export class BibsSetInput extends EntryInput {
  @Field(() => [BibLineInput])
  @ValidateNested({ each: true })
  @Type(() => BibLineInput)
  @ArrayMinSize(1)
  @ArrayMaxSize(500)
  bibs: BibLineInput[];

  @Reason()
  reason: string;
}

@InputType({ description: 'A competitor goes last in another flight.' })
export class CompetitorFlightSetInput extends EntryInput {
  @Field(() => ID)
  @ObjectId('Competitor')
  competitorId: string;

  @Field({ description: 'A flight of the start list.' })
  @Text(1, 64)
  flight: string;

  @Reason()
  reason: string;
}
