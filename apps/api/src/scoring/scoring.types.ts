import type { MeetScoringRow, Sex } from '#persistence';
import { SCORING_PRESET_CODES, type ScoringPresetCode } from '#rules';
import { Field, Int, ObjectType } from '@nestjs/graphql';
import { UserError } from '../platform/errors/user-error.types.js';
import { enumOf } from '../platform/inputs/enums.js';
import { SexEnum } from '../platform/objects/words.js';

export const ScoringPresetEnum = enumOf<ScoringPresetCode>(
  'ScoringPreset',
  SCORING_PRESET_CODES,
  'Points of the places by name. BY_TEAMS: as many for the first as there are teams in the match, one fewer for each place after it.',
);

export const NonScorersEnum = enumOf<MeetScoringRow['nonScorers']>(
  'NonScorers',
  ['out', 'hold'],
  'Who does not score, being over the club’s number or without a club, is taken OUT so that the next one moves up, or HOLDs the points of the place, which nobody gets.',
);

export const ClubTiesEnum = enumOf<MeetScoringRow['clubTies']>(
  'ClubTies',
  ['places', 'shared'],
  'Of clubs level on points the one with more first PLACES is the better, then with more second places, and so on; or they are left tied and the place is SHARED.',
);

@ObjectType({ description: 'What the places of an event are worth, and by which source.' })
export class PointsTable {
  @Field(() => [String], {
    nullable: true,
    description:
      'Of the first place, the second, …, as decimals; null: as many as there are teams, then one fewer for each place.',
  })
  places: readonly string[] | null;

  @Field(() => String, {
    nullable: true,
    description: 'Where a preset has its points from; null: the meet’s own.',
  })
  source: string | null;

  @Field({ description: 'False for points that are from memory and were confirmed by no text.' })
  isConfirmed: boolean;

  @Field(() => String, { nullable: true, description: 'What to know before relying on it.' })
  note: string | null;
}

@ObjectType({ description: 'A part of the meet with a club table of its own.' })
export class Division {
  @Field()
  name: string;

  @Field(() => SexEnum, { nullable: true, description: 'Null: any.' })
  sex: Sex | null;

  @Field(() => [String], { description: 'Empty: any.' })
  ages: readonly string[];
}

@ObjectType({ description: 'How the places of a meet give points to clubs.' })
export class MeetScoring {
  @Field(() => Int, { description: 'Rises with every change.' })
  revision: number;

  @Field(() => ScoringPresetEnum, { nullable: true, description: 'Null: the meet has its own points.' })
  preset: ScoringPresetCode | null;

  @Field(() => PointsTable)
  individual: PointsTable;

  @Field(() => PointsTable)
  relay: PointsTable;

  @Field(() => Int, { nullable: true, description: 'Null: the clubs that have somebody in the meet.' })
  teams: number | null;

  @Field(() => Int, { nullable: true, description: 'Null: all score.' })
  scorersPerClub: number | null;

  @Field(() => Int, { nullable: true, description: 'Null: all score.' })
  relaysPerClub: number | null;

  @Field(() => NonScorersEnum)
  nonScorers: MeetScoringRow['nonScorers'];

  @Field(() => ClubTiesEnum)
  clubTies: MeetScoringRow['clubTies'];

  @Field(() => [Division])
  divisions: readonly Division[];
}

@ObjectType()
export class MeetScoringSetPayload {
  @Field(() => MeetScoring, { nullable: true })
  scoring: MeetScoring | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}
