import { Field, ID, InputType } from '@nestjs/graphql';
import { IsBoolean } from 'class-validator';
import { ObjectId } from '../platform/inputs/object-id.js';
import { OwnId } from '../platform/inputs/own-id.js';
import { Text } from '../platform/inputs/text.js';
import { CalendarDate } from '../platform/scalars/calendar-date.js';

@InputType({
  description:
    'A new meet like one that there is, on another day: every time of day by the clock of the place stays.',
})
export class MeetCopyInput {
  @OwnId()
  id?: string | null;

  @Field(() => ID, { description: 'The meet that is copied.' })
  @ObjectId('Meet')
  meetId: string;

  @Field()
  @Text(1, 200)
  name: string;

  @Field(() => CalendarDate)
  startsOn: string;

  @Field({ defaultValue: false, description: 'Whether the same people work at the same competitions.' })
  @IsBoolean()
  isWithCrew: boolean;
}
