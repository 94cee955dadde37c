import type { EventCode } from '#rules';
import { ArgsType, Field, Int } from '@nestjs/graphql';
import { IsInt, IsOptional, Max, Min } from 'class-validator';
import { PageArgs } from '../platform/connections/connection.js';
import { EventEnum } from '../platform/objects/words.js';
import { CalendarDate } from '../platform/scalars/calendar-date.js';
import { MarkText } from '../platform/scalars/mark.js';
import type { KnownThrow } from './findings/task.js';
import { ThrownInEnum } from './history.types.js';

@ArgsType()
export class AnalysisArgs {
  @Field(() => EventEnum)
  event: EventCode;

  @Field(() => Int, { nullable: true, description: 'Only throws with this implement.' })
  @IsOptional()
  @IsInt()
  @Min(1)
  @Max(100_000)
  implementGrams?: number | null;

  @Field(() => CalendarDate, { nullable: true, description: 'The first day.' })
  from?: string | null;

  @Field(() => CalendarDate, { nullable: true, description: 'The last day.' })
  to?: string | null;

  @Field(() => ThrownInEnum, { nullable: true })
  thrownIn?: KnownThrow['thrownIn'] | null;
}

@ArgsType()
export class HistoryArgs extends PageArgs {
  @Field(() => EventEnum, { nullable: true })
  event?: EventCode | null;

  @Field(() => Int, { nullable: true })
  @IsOptional()
  @IsInt()
  @Min(1)
  @Max(100_000)
  implementGrams?: number | null;

  @Field(() => CalendarDate, { nullable: true })
  from?: string | null;

  @Field(() => CalendarDate, { nullable: true })
  to?: string | null;

  @Field(() => ThrownInEnum, { nullable: true })
  thrownIn?: KnownThrow['thrownIn'] | null;
}

@ArgsType()
export class OutlookArgs {
  @Field(() => EventEnum)
  event: EventCode;

  @Field(() => Int, { nullable: true, description: 'Absent: of a jump.' })
  @IsOptional()
  @IsInt()
  @Min(1)
  @Max(100_000)
  implementGrams?: number | null;

  @Field(() => MarkText, { description: 'In metres.' })
  standard: string;

  @Field(() => CalendarDate, { description: 'The day of the competition.' })
  on: string;

  @Field(() => Int, { defaultValue: 6 })
  @IsInt()
  @Min(1)
  @Max(12)
  trials: number;
}
