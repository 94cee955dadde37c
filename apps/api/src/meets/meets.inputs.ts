import type { NameDisplay } from '#persistence';
import type { RuleSetCode } from '#rules';
import { Field, ID, InputType } from '@nestjs/graphql';
import { IsOptional } from 'class-validator';
import { ObjectId } from '../platform/inputs/object-id.js';
import { Text } from '../platform/inputs/text.js';
import { CalendarDate } from '../platform/scalars/calendar-date.js';
import { NameDisplayEnum, RuleSetEnum } from '../platform/objects/words.js';
import { OwnId } from '../platform/inputs/own-id.js';

@InputType()
export class MeetCreateInput {
  @OwnId()
  id?: string | null;

  @Field()
  @Text(1, 200)
  name: string;

  @Field({ defaultValue: '' })
  @Text(0, 200)
  venue: string;

  @Field(() => CalendarDate)
  startsOn: string;

  @Field(() => CalendarDate, { nullable: true, description: 'Absent: one day.' })
  endsOn?: string | null;

  @Field({ description: 'IANA time zone of the place, such as Europe/Lisbon.' })
  @Text(1, 64)
  timeZone: string;

  @Field(() => RuleSetEnum)
  rules: RuleSetCode;

  @Field(() => String, { nullable: true, description: 'Absent: the newest.' })
  @IsOptional()
  @Text(1, 40)
  edition?: string | null;

  @Field(() => NameDisplayEnum, {
    defaultValue: 'initials',
    description: 'How children, and all whose age is not known, are shown.',
  })
  minorsDisplay: NameDisplay;

  @Field({
    defaultValue: false,
    description: 'A result becomes official, or open again, only when a second person confirms it.',
  })
  needsSecondPerson: boolean;
}

@InputType()
export class MeetPublishInput {
  @Field(() => ID)
  @ObjectId('Meet')
  meetId: string;
}

@InputType()
export class MeetSecondPersonSetInput {
  @Field(() => ID)
  @ObjectId('Meet')
  meetId: string;

  @Field({ description: 'A director may demand it, an administrator may also let go of it.' })
  needsSecondPerson: boolean;
}
