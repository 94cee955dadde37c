import type { EventCode } from '#rules';
import { ArgsType, Field, Float, Int, ObjectType } from '@nestjs/graphql';
import { IsInt, IsOptional, Max, Min } from 'class-validator';
import { EventEnum } from '../platform/objects/words.js';
import { MarkText } from '../platform/scalars/mark.js';
import { WindText } from '../platform/scalars/wind-reading.js';

function Whole(min: number, max: number, description: string, defaultValue?: number): PropertyDecorator {
  return (target, key) => {
    Field(
      () => Int,
      defaultValue === undefined ? { nullable: true, description } : { defaultValue, description },
    )(target, key);
    IsOptional()(target, key);
    IsInt()(target, key);
    Min(min)(target, key);
    Max(max)(target, key);
  };
}

@ArgsType()
export class FlightArgs {
  @Field(() => EventEnum)
  event: EventCode;

  @Whole(1, 100_000, 'Mass of the implement.', 1000)
  implementGrams: number;

  @Field(() => MarkText, { description: 'In metres.' })
  mark: string;

  @Field(() => WindText, { nullable: true, description: 'Along the throw, positive from behind.' })
  wind?: string | null;

  @Whole(50, 800, 'Of the path at release, in tenths of a degree.', 350)
  angleTenths: number;

  @Whole(0, 300, 'Of the release above the ground, in centimetres.', 160)
  heightCm: number;

  @Whole(-890, 890, 'Of a disc’s plane against the ground, in tenths of a degree; absent: as the path.')
  attitudeTenths?: number | null;
}

@ObjectType({ description: 'Why there is no answer.' })
export class FlightRefused {
  @Field()
  code: string;

  @Field()
  sentence: string;
}

@ObjectType({
  description: 'Metres that one more of something is worth around this throw, everything else the same.',
})
export class FlightTradeOff {
  @Field(() => Float)
  perMetrePerSecondM: number;

  @Field(() => Float)
  perDegreeM: number;

  @Field(() => Float)
  perTenCentimetresM: number;

  @Field(() => Float, { nullable: true })
  perDegreeOfAttitudeM: number | null;
}

@ObjectType({ description: 'What the mark would have been without wind, as a range.' })
export class StillAirRange {
  @Field({ description: 'Everywhere within a quarter of a metre of the mark.' })
  isNegligible: boolean;

  @Field(() => MarkText)
  low: string;

  @Field(() => MarkText)
  high: string;
}

@ObjectType({
  description:
    'How a throw flew, by a model of our own: to learn from, never for a place, a best, a record or a score. Cross-wind, gusts and the roll of a disc are not in it.',
})
export class ThrowFlight {
  @Field(() => Float, { nullable: true, description: 'That the mark needs, in metres a second.' })
  speedMps: number | null;

  @Field(() => FlightRefused, { nullable: true })
  speedRefused: FlightRefused | null;

  @Field(() => FlightTradeOff, { nullable: true })
  tradeOff: FlightTradeOff | null;

  @Field(() => FlightRefused, { nullable: true })
  tradeOffRefused: FlightRefused | null;

  @Field(() => StillAirRange, { nullable: true })
  stillAir: StillAirRange | null;

  @Field(() => FlightRefused, { nullable: true })
  stillAirRefused: FlightRefused | null;

  @Field(() => String, { nullable: true, description: '`vacuum`, `ball` or the name of a disc table.' })
  model: string | null;
}
