import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { UserError } from '../platform/errors/user-error.types.js';
import { globalId } from '../platform/inputs/global-id.js';
import type { MeetBib } from './bibs.service.js';

@ObjectType({ description: 'Whose bib it is, at the whole meet.' })
export class AssignedBib {
  @Field()
  bib: string;

  @Field({ description: 'The whole name.' })
  name: string;

  @Field(() => String, { nullable: true })
  club: string | null;

  @Field(() => [ID], { description: 'The lines of start lists, one for each competition.' })
  competitorIds: string[];

  @Field(() => [String], { description: 'Those that were worn before, without repetition.' })
  before: string[];

  @Field({ description: 'A draw, a trial or a combined event goes by the bib, so that it stays.' })
  isFixed: boolean;
}

@ObjectType()
export class BibsAssignPayload {
  @Field(() => [AssignedBib], { complexity: 50, description: 'Everybody of the meet, in the order wanted.' })
  bibs: AssignedBib[];

  @Field(() => Int, { description: 'Lines of start lists with another bib than before.' })
  changedCount: number;

  @Field(() => [UserError])
  userErrors: UserError[];
}

export function assignedBib({ bib, wearer, lines }: MeetBib): AssignedBib {
  return {
    bib,
    name: [wearer.givenName, wearer.familyName].filter((part) => part !== '').join(' '),
    club: wearer.club,
    competitorIds: lines.map(({ competitor }) => globalId('Competitor', competitor.id)),
    before: [...new Set(wearer.bibs)],
    isFixed: wearer.isFixed,
  };
}
