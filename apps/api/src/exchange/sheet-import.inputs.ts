import { Field, ID, InputType } from '@nestjs/graphql';
import { IsDefined, IsOptional } from 'class-validator';
import type { Unit } from '#rules';
import { ObjectId } from '../platform/inputs/object-id.js';
import { RawJson } from '../platform/inputs/raw-json.js';
import { Text } from '../platform/inputs/text.js';
import { UnitEnum } from '../platform/objects/words.js';
import { Json } from '../platform/scalars/json.js';
import { Uuid } from '../platform/scalars/uuid.js';

@InputType({
  description:
    'A field card as a sheet: becomes a competition with its journal. A sheet of a whole meet fills a meet that is empty.',
})
export class SheetImportInput {
  @Field(() => ID)
  @ObjectId('Meet')
  meetId: string;

  @Field(() => Uuid, {
    nullable: true,
    description:
      'Of the competition or combined event that is made. Send the same again if no answer came: nothing is made twice. Not looked at for a whole meet, which is not filled twice either.',
  })
  @IsOptional()
  id?: string | null;

  @Field({
    description:
      'Of the competition, e.g. "Discus, women, final". With a whole meet number and event follow it.',
  })
  @Text(1, 200)
  title: string;

  @Field(() => UnitEnum, {
    nullable: true,
    description:
      'For a sheet without a single mark, which cannot say in which unit it is. Left out: centimetres.',
  })
  @IsOptional()
  unit?: Unit | null;

  @Field(() => Json, {
    description:
      'A `sectorline-sheet/1`, `sectorline-combined/1` or `sectorline-meet/1` as JSON, or its text.',
  })
  @RawJson()
  @IsDefined()
  sheet: unknown;
}
