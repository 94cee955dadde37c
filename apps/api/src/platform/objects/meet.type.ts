import type { MeetRow, NameDisplay } from '#persistence';
import type { RuleSetCode } from '#rules';
import { Field, ID, ObjectType } from '@nestjs/graphql';
import { globalId } from '../inputs/global-id.js';
import { CalendarDate } from '../scalars/calendar-date.js';
import { Instant } from '../scalars/instant.js';
import { NameDisplayEnum, RuleSetEnum } from './words.js';

@ObjectType({ description: 'One meet: competitions at one place under one rule set by default.' })
export class Meet {
  /** Not a field: for resolvers that add to a meet. */
  row: MeetRow;

  @Field(() => ID)
  id: string;

  @Field()
  name: string;

  @Field()
  venue: string;

  @Field(() => CalendarDate)
  startsOn: string;

  @Field(() => CalendarDate)
  endsOn: string;

  @Field({ description: 'IANA time zone of the place.' })
  timeZone: string;

  @Field(() => RuleSetEnum)
  rules: RuleSetCode;

  @Field()
  edition: string;

  @Field(() => NameDisplayEnum, { description: 'How children, and all whose age is not known, are shown.' })
  minorsDisplay: NameDisplay;

  @Field({ description: 'A second person confirms signatures and reopenings.' })
  needsSecondPerson: boolean;

  @Field()
  isPublished: boolean;

  @Field(() => Instant, { nullable: true })
  publishedAt: Date | null;
}

export function meetObject(row: MeetRow): Meet {
  return {
    row,
    id: globalId('Meet', row.id),
    name: row.name,
    venue: row.venue,
    startsOn: row.startsOn,
    endsOn: row.endsOn,
    timeZone: row.timeZone,
    rules: row.rules,
    edition: row.edition,
    minorsDisplay: row.minorsDisplay,
    needsSecondPerson: row.needsSecondPerson,
    isPublished: row.publishedAt !== null,
    publishedAt: row.publishedAt === null ? null : new Date(row.publishedAt),
  };
}
