import { Field, ID, InputType } from '@nestjs/graphql';
import { IsOptional } from 'class-validator';
import { NOTE_SUBJECTS, type NoteSubject } from '#rules';
import { enumOf } from '../platform/inputs/enums.js';
import { ObjectId } from '../platform/inputs/object-id.js';
import { Text } from '../platform/inputs/text.js';
import { Instant } from '../platform/scalars/instant.js';
import { EntryInput } from './entry.inputs.js';

export const NoteSubjectEnum = enumOf<NoteSubject>(
  'NoteSubject',
  NOTE_SUBJECTS,
  'What a note in the journal is about.',
);

@InputType({ description: 'Something that happened at the circle and may matter later.' })
export class NoteRecordInput extends EntryInput {
  @Field(() => NoteSubjectEnum)
  about: NoteSubject;

  @Field({
    description:
      'In a few words. Of an injury what was seen and done, such as "fell, helped off, first aid called": no diagnosis, and no name.',
  })
  @Text(1, 1000)
  text: string;

  @Field(() => ID, { nullable: true, description: 'Whom it is about, if anybody of the competition.' })
  @IsOptional()
  @ObjectId('Competitor')
  competitorId?: string | null;

  @Field(() => Instant, { description: 'When it was seen.' })
  seenAt: Date;
}

@InputType({ description: 'A competitor is away at another event, with the referee’s leave, or is back.' })
export class CompetitorExcuseInput extends EntryInput {
  @Field(() => ID)
  @ObjectId('Competitor')
  competitorId: string;

  @Field(() => String, {
    nullable: true,
    description: 'Where to, such as "Long jump"; absent: is back.',
  })
  @IsOptional()
  @Text(1, 200)
  to?: string | null;

  @Field(() => Instant, { nullable: true, description: 'When the competitor is expected back.' })
  @IsOptional()
  until?: Date | null;
}

@InputType({ description: 'The chief judge has compared the card with what was seen.' })
export class CardSignInput extends EntryInput {
  @Field(() => String, { nullable: true, description: 'What the referee should know.' })
  @IsOptional()
  @Text(1, 1000)
  remark?: string | null;
}
