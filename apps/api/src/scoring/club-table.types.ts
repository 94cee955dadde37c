import { Field, Int, ObjectType } from '@nestjs/graphql';
import { CombinedEvent } from '../platform/objects/combined-event.type.js';
import { Competition } from '../platform/objects/competition.type.js';
import { EnteredResult } from './entered-results.types.js';
import { MeetScoring } from './scoring.types.js';

const POINTS = 'Exact: a decimal such as 7.5, or a fraction such as 19/3.';

@ObjectType()
export class ClubStanding {
  @Field(() => Int, { description: 'Shared by clubs that are level on points and on all places.' })
  place: number;

  @Field()
  club: string;

  @Field({ description: POINTS })
  points: string;

  @Field(() => String, {
    nullable: true,
    description: 'Of clubs that are level on points, such as `tied; more first places`.',
  })
  reason: string | null;
}

@ObjectType({ description: 'One line of a result with the points that it gives.' })
export class ScoredLine {
  @Field()
  bib: string;

  @Field(() => String, {
    nullable: true,
    description: 'Null: scores for nobody, as a guest or without a club.',
  })
  club: string | null;

  @Field(() => Int, { nullable: true })
  place: number | null;

  @Field({ description: POINTS })
  points: string;
}

@ObjectType({ description: 'What one competition gives to the clubs.' })
export class ScoredCompetition {
  @Field(() => Competition)
  competition: Competition;

  @Field({ description: 'Not signed off: counted as it stands.' })
  isProvisional: boolean;

  @Field(() => [ScoredLine], { description: 'In the order of the result.' })
  lines: readonly ScoredLine[];
}

@ObjectType({
  description:
    'What a combined event gives to the clubs. The competitions it is counted from give nothing, unless others compete in them as well.',
})
export class ScoredCombinedEvent {
  @Field(() => CombinedEvent)
  combinedEvent: CombinedEvent;

  @Field({ description: 'Not signed off: counted as it stands.' })
  isProvisional: boolean;

  @Field(() => [ScoredLine], { description: 'In the order of the result.' })
  lines: readonly ScoredLine[];
}

@ObjectType({ description: 'What an entered result gives to the clubs. It was entered, not counted here.' })
export class ScoredEnteredResult {
  @Field(() => EnteredResult)
  result: EnteredResult;

  @Field(() => [ScoredLine], { description: 'In the order of the result.' })
  lines: readonly ScoredLine[];
}

@ObjectType({ description: 'The clubs of one division.' })
export class DivisionTable {
  @Field({ description: 'The name of the division.' })
  name: string;

  @Field(() => [ClubStanding])
  clubs: readonly ClubStanding[];
}

@ObjectType({
  description:
    'The clubs of a meet as everything stands at one moment. Competitions that are not signed off count as they stand.',
})
export class ClubTable {
  @Field(() => MeetScoring)
  scoring: MeetScoring;

  @Field(() => Int, { description: 'How many teams the match has.' })
  teams: number;

  @Field({ description: 'Something that counts is not signed off.' })
  isProvisional: boolean;

  @Field(() => [Competition], { description: 'Those that are not signed off.' })
  openCompetitions: readonly Competition[];

  @Field(() => [DivisionTable])
  divisions: readonly DivisionTable[];

  @Field(() => [ClubStanding], {
    description:
      'The combined trophy: every competition and entered result of some division, once; without divisions, all.',
  })
  combined: readonly ClubStanding[];

  @Field(() => [ScoredCompetition], {
    description: 'Where the points come from. A qualification gives none.',
  })
  competitions: readonly ScoredCompetition[];

  @Field(() => [ScoredCombinedEvent], { complexity: 5 })
  combinedEvents: readonly ScoredCombinedEvent[];

  @Field(() => [ScoredEnteredResult], { description: 'Running events and relays, as they were entered.' })
  enteredResults: readonly ScoredEnteredResult[];
}
