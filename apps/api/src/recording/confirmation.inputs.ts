import { Field, InputType } from '@nestjs/graphql';
import { Despite } from '../platform/inputs/entry-fields.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { EntryInput } from './entry.inputs.js';

@InputType({ description: 'The second person’s word on a signature or a reopening.' })
export class CompetitionConfirmInput extends EntryInput {
  @Field(() => Uuid, { description: 'What is confirmed: the id of the request.' })
  requestId: string;

  @Despite()
  despite?: string | null;
}
