import { Field, ObjectType } from '@nestjs/graphql';
import { UserError } from '../platform/errors/user-error.types.js';
import { CombinedEvent } from '../platform/objects/combined-event.type.js';
import { Competition } from '../platform/objects/competition.type.js';

@ObjectType({ description: 'One thing that is wrong with a sheet.', implements: () => [UserError] })
export class SheetProblem extends UserError {
  @Field({ description: 'Where in the sheet, as a JSON Pointer (RFC 6901); "" is the whole.' })
  pointer: string;
}

@ObjectType()
export class SheetImportPayload {
  @Field(() => Competition, { nullable: true, description: 'Of a `sectorline-sheet/1`.' })
  competition: Competition | null;

  @Field(() => CombinedEvent, { nullable: true, description: 'Of a `sectorline-combined/1`.' })
  combinedEvent: CombinedEvent | null;

  @Field(() => [Competition], {
    description: 'Of a `sectorline-meet/1`, all in its order; of a `sectorline-sheet/1` the one.',
  })
  competitions: Competition[];

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError], { description: 'All problems of the sheet at once. Nothing was stored.' })
  userErrors: UserError[];
}
