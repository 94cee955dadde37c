import type { EnteredLine as StoredLine, Sex } from '#persistence';
import { Field, Int, ObjectType } from '@nestjs/graphql';
import { UserError } from '../platform/errors/user-error.types.js';
import { enumOf } from '../platform/inputs/enums.js';
import { SexEnum } from '../platform/objects/words.js';
import { Instant } from '../platform/scalars/instant.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { WindText } from '../platform/scalars/wind-reading.js';
import { RaceTimeText } from '../platform/scalars/race-time.js';

export const RaceStatusEnum = enumOf<NonNullable<StoredLine['status']>>(
  'RaceStatus',
  ['DNS', 'DNF', 'DQ'],
  'Why somebody has no place: did not start, did not finish, disqualified.',
);

@ObjectType()
export class EnteredLine {
  @Field({ description: 'Of the athlete, or what the relay team is called.' })
  bib: string;

  @Field(() => String, { nullable: true, description: 'Null: ran for no club.' })
  club: string | null;

  @Field(() => Int, { nullable: true })
  place: number | null;

  @Field(() => RaceStatusEnum, { nullable: true })
  status: StoredLine['status'];

  @Field(() => RaceTimeText, { nullable: true })
  time: string | null;

  @Field(() => WindText, { nullable: true })
  wind: string | null;
}

@ObjectType({
  description:
    'The result of a running event or a relay as somebody entered it. Nothing here was counted from a journal.',
})
export class EnteredResult {
  @Field(() => Uuid)
  id: string;

  @Field()
  title: string;

  @Field()
  isRelay: boolean;

  @Field(() => SexEnum, { nullable: true })
  categorySex: Sex | null;

  @Field(() => String, { nullable: true })
  categoryAge: string | null;

  @Field(() => [EnteredLine], { description: 'Best first. Empty: the result was taken back.' })
  lines: readonly EnteredLine[];

  @Field(() => Uuid, { nullable: true, description: 'The result that this one replaces.' })
  replacesId: string | null;

  @Field(() => Instant)
  enteredAt: Date;
}

@ObjectType()
export class EnteredResultSetPayload {
  @Field(() => EnteredResult, { nullable: true })
  result: EnteredResult | null;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class EnteredResultsImportPayload {
  @Field(() => [EnteredResult], { description: 'What was entered, or would be, in the order of the table.' })
  results: EnteredResult[];

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError], {
    description: 'Every problem of the table, by line and column. Nothing was entered.',
  })
  userErrors: UserError[];
}
