import { Field, InputType } from '@nestjs/graphql';
import { Type } from 'class-transformer';
import { IsString, ValidateNested } from 'class-validator';
import { CsvInput } from '../platform/csv/csv.inputs.js';
import { OwnId } from '../platform/inputs/own-id.js';
import { Text } from '../platform/inputs/text.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { TableDecisionsInput } from './decisions.inputs.js';

@InputType({
  description:
    'Columns: date, meet, event and mark; the athlete as athlete (the id) or as family_name, given_name, sex and born; club, wind, indoor (yes or no), implement_g and place where they say something. In whatever order.',
})
export class PastResultsImportInput extends TableDecisionsInput {
  @OwnId()
  id?: string | null;

  @Field({ description: 'Who says so, such as the results lists of a club. Shown with every mark.' })
  @Text(1, 200)
  source: string;

  @Field(() => CsvInput)
  @ValidateNested()
  @Type(() => CsvInput)
  csv: CsvInput;
}

@InputType()
export class PastResultWithdrawInput {
  @OwnId()
  id?: string | null;

  @Field(() => Uuid, { description: 'The past result that is taken back.' })
  @IsString()
  replacesId: string;

  @Field()
  @Text(1, 500)
  reason: string;
}
