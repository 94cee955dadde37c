import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { globalId } from '../inputs/global-id.js';
import type { RosterLine } from '../roster/roster.js';

@ObjectType({ description: 'A line of a start list as everybody may see it.' })
export class Competitor {
  @Field(() => ID)
  id: string;

  @Field({ description: 'By which the competition names the competitor.' })
  bib: string;

  @Field(() => Int, { description: 'Place in the original order of competition, from 1.' })
  position: number;

  @Field({ description: 'The name, initials or the bib with #: as the club and the meet decide.' })
  displayName: string;

  @Field(() => String, { nullable: true })
  club: string | null;

  @Field(() => String, { nullable: true })
  flight: string | null;

  @Field({ description: 'Competes out of the ranking.' })
  isGuest: boolean;

  @Field(() => Int, {
    nullable: true,
    description: 'Of the competitor’s own category, where categories compete together.',
  })
  implementGrams: number | null;
}

export function competitorObject({ competitor, displayName, club }: RosterLine): Competitor {
  return {
    id: globalId('Competitor', competitor.id),
    bib: competitor.bib,
    position: competitor.position,
    displayName,
    club,
    flight: competitor.flight,
    isGuest: competitor.guest,
    implementGrams: competitor.implementGrams,
  };
}
