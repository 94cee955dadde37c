import { Field, ID, InputType } from '@nestjs/graphql';
import { Type } from 'class-transformer';
import { IsOptional, ValidateNested } from 'class-validator';
import { CsvInput } from '../platform/csv/csv.inputs.js';
import { ObjectId } from '../platform/inputs/object-id.js';
import { OwnId } from '../platform/inputs/own-id.js';
import { Text } from '../platform/inputs/text.js';
import { TableDecisionsInput } from './decisions.inputs.js';

@InputType({
  description:
    'Columns: competition (its title or id); the athlete as athlete (the id) or as family_name, given_name, sex and born, or listed_name for somebody who is on no record; club, bib, seed_mark, flight, guest (yes or no) and implement_g where they say something. In whatever order.',
})
export class EntriesImportInput extends TableDecisionsInput {
  @OwnId()
  id?: string | null;

  @Field(() => ID)
  @ObjectId('Meet')
  meetId: string;

  @Field(() => CsvInput)
  @ValidateNested()
  @Type(() => CsvInput)
  csv: CsvInput;

  @Field(() => String, { nullable: true, description: 'Why so late: once the entries are closed.' })
  @IsOptional()
  @Text(1, 500)
  reason?: string | null;
}
