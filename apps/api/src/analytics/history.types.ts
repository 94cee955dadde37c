import type { EventCode } from '#rules';
import { formatMark, formatWind } from '#rules';
import type { Variant } from '#technique';
import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { connectionType } from '../platform/connections/connection.js';
import { enumOf } from '../platform/inputs/enums.js';
import { EventEnum } from '../platform/objects/words.js';
import { CalendarDate } from '../platform/scalars/calendar-date.js';
import { MarkText } from '../platform/scalars/mark.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { WindText } from '../platform/scalars/wind-reading.js';
import { VariantEnum } from '../technique/words.js';
import type { KnownThrow } from './findings/task.js';

export const ThrownInEnum = enumOf<KnownThrow['thrownIn']>(
  'ThrownIn',
  ['competition', 'practice'],
  'Whether a throw was a trial of a competition or one of practice.',
);

const HistoryOutcomeEnum = enumOf<KnownThrow['outcome']>(
  'HistoryOutcome',
  ['valid', 'foul', 'pass'],
  'What became of a trial or a throw.',
);

@ObjectType({ description: 'A trial or a throw of practice in the history of an athlete.' })
export class HistoryThrow {
  @Field(() => Uuid, {
    description: 'Of the trial, or of the throw of practice; what numbers are opened by.',
  })
  id: string;

  @Field(() => ThrownInEnum)
  thrownIn: KnownThrow['thrownIn'];

  @Field(() => ID, { description: 'The competition or the session, as a UUID.' })
  occasion: string;

  @Field()
  occasionName: string;

  @Field(() => CalendarDate)
  onDate: string;

  @Field(() => EventEnum)
  event: EventCode;

  @Field(() => VariantEnum)
  variant: Variant;

  @Field(() => Int, { nullable: true })
  implementGrams: number | null;

  @Field(() => Int)
  round: number;

  @Field(() => HistoryOutcomeEnum)
  outcome: KnownThrow['outcome'];

  @Field(() => MarkText, { nullable: true, description: 'In metres.' })
  mark: string | null;

  @Field()
  isMeasured: boolean;

  @Field(() => WindText, { nullable: true })
  wind: string | null;

  @Field(() => String, { nullable: true, description: 'Why it was a foul.' })
  foul: string | null;
}

@ObjectType()
export class HistoryThrowConnection extends connectionType(HistoryThrow, 'HistoryThrow') {}

export function historyThrow(one: KnownThrow): HistoryThrow {
  return {
    ...{ id: one.id, thrownIn: one.thrownIn, occasion: one.occasion, occasionName: one.occasionName },
    ...{ onDate: one.onDate, event: one.event, variant: one.variant, implementGrams: one.massG },
    ...{ round: one.round, outcome: one.outcome, isMeasured: one.measured, foul: one.foul },
    mark: one.markCm === null ? null : formatMark(one.markCm, 'cm'),
    wind: one.windTenths === null ? null : formatWind(one.windTenths),
  };
}
