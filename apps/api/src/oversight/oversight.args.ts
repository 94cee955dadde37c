import { ArgsType, Field, ID } from '@nestjs/graphql';
import { ArrayMaxSize, IsOptional, MaxLength } from 'class-validator';
import { PageArgs } from '../platform/connections/connection.js';
import { ObjectId } from '../platform/inputs/object-id.js';
import { Text } from '../platform/inputs/text.js';
import { Instant } from '../platform/scalars/instant.js';

@ArgsType()
export class AuditArgs extends PageArgs {
  @Field(() => ID, { nullable: true, description: 'Whom it is about.' })
  @IsOptional()
  @ObjectId('Competitor')
  competitorId?: string | null;

  @Field(() => String, { nullable: true, description: 'Who did it: the id of a holder, or part of a name.' })
  @IsOptional()
  @Text(1, 100)
  who?: string | null;

  @Field(() => [String], { nullable: true, description: 'As `kind` has it, such as "correction".' })
  @IsOptional()
  @ArrayMaxSize(50)
  @MaxLength(60, { each: true })
  kinds?: string[] | null;

  @Field(() => String, { nullable: true, description: 'Part of what the device is called.' })
  @IsOptional()
  @Text(1, 100)
  device?: string | null;

  @Field(() => Instant, { nullable: true, description: 'Not before.' })
  @IsOptional()
  from?: Date | null;

  @Field(() => Instant, { nullable: true, description: 'Not after.' })
  @IsOptional()
  until?: Date | null;

  @Field(() => String, { nullable: true, description: 'Anywhere in the reason or in what was entered.' })
  @IsOptional()
  @Text(1, 100)
  text?: string | null;
}

@ArgsType()
export class MeetAuditArgs extends AuditArgs {
  @Field(() => ID, { nullable: true, description: 'Of one competition.' })
  @IsOptional()
  @ObjectId('Competition')
  competitionId?: string | null;
}
