import type { EventCode, RuleSetCode } from '#rules';
import { ArgsType, Field } from '@nestjs/graphql';
import { EventEnum, RuleSetEnum } from '../platform/objects/words.js';

@ArgsType()
export class EventArgs {
  @Field(() => EventEnum, { nullable: true, description: 'Absent: every event.' })
  event?: EventCode | null;
}

@ArgsType()
export class ListsArgs extends EventArgs {
  @Field(() => RuleSetEnum, {
    defaultValue: 'WA',
    description: 'By whose newest edition the lists are kept: it says whether indoor marks have their own.',
  })
  rules: RuleSetCode;
}
