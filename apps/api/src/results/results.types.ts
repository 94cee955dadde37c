import type { CompetitionRow } from '#persistence';
import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { Instant } from '../platform/scalars/instant.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { TrialCall } from './trial-call.type.js';
import { VerticalProgress } from './vertical-progress.types.js';
import { VerticalRow, VerticalTable } from './vertical.types.js';

/*
 * What everybody may see of a result. There is no birth date, no contact and no full name of a child here to leak:
 * `name` is what the meet shows of a name.
 */

@ObjectType({ description: 'One trial as it stands.' })
export class TableTrial {
  @Field(() => Uuid, { description: 'The id of its entry.' })
  entry: string;

  @Field(() => Int)
  round: number;

  @Field({ description: 'As on a field card: the mark, "X", "-", "r", "O" for valid and not measured.' })
  cell: string;

  @Field(() => String, { nullable: true, description: '"+1.3", "NWI", or nothing.' })
  wind: string | null;

  @Field({ description: 'A wind belongs to it and has not come in yet.' })
  isWindPending: boolean;

  @Field(() => String, { nullable: true, description: 'Why it was a failure, if a reason was given.' })
  foul: string | null;

  @Field(() => String, { nullable: true, description: 'The mark held under protest.' })
  protestedMark: string | null;

  @Field(() => Int, {
    nullable: true,
    description:
      'Mass of the implement: as it was noted, else of the competitor’s category. Marks made with different implements do not compare.',
  })
  implementGrams: number | null;

  @Field(() => Uuid, { nullable: true, description: 'The implement, if the trial named it.' })
  implementId: string | null;
}

@ObjectType({ description: 'One line of a result table.' })
export class TableRow {
  /** Not a field: for resolvers that add to a row. */
  in: CompetitionRow;

  @Field(() => ID)
  competitor: string;

  @Field()
  bib: string;

  @Field({ description: 'What the meet shows of the name.' })
  name: string;

  @Field(() => String, { nullable: true })
  club: string | null;

  @Field(() => Int, { nullable: true, description: 'Nothing while there is no valid mark, and for guests.' })
  place: number | null;

  @Field({ description: 'The place is shared.' })
  isEqual: boolean;

  @Field(() => String, { nullable: true })
  mark: string | null;

  @Field(() => String, { nullable: true })
  wind: string | null;

  @Field(() => Boolean, {
    nullable: true,
    description: 'Nothing where wind does not matter or is not known.',
  })
  isWindLegal: boolean | null;

  @Field(() => String, {
    nullable: true,
    description: 'The best mark that may count for records as far as wind decides it.',
  })
  windLegalMark: string | null;

  @Field(() => String, { nullable: true, description: 'NM, DQ, DNS or GUEST.' })
  status: string | null;

  @Field(() => String, { nullable: true, description: 'What separates from the one placed just before.' })
  decidedBy: string | null;

  @Field({ description: 'The same as a sentence: "2nd: equal best 58.10; second best 57.02 against 57.44".' })
  reason: string;

  @Field(() => String, { nullable: true, description: 'The rule by which ties were broken.' })
  reasonRule: string | null;

  @Field(() => String, { nullable: true, description: 'Q, q, qR, qJ or qD.' })
  qualified: string | null;

  @Field(() => [TableTrial], { description: 'Round by round; empty in high jump and pole vault.' })
  series: TableTrial[];

  @Field(() => VerticalRow, { nullable: true, description: 'In high jump and pole vault, and only there.' })
  vertical: VerticalRow | null;
}

@ObjectType({ description: 'Who goes on after a round, as things stand.' })
export class TableCut {
  @Field(() => Int)
  afterRound: number;

  @Field(() => [ID], { description: 'Competitors, in ranking order.' })
  through: string[];
}

@ObjectType({ description: 'Where a competition is.' })
export class CompetitionProgress {
  @Field({
    description: '"not started", "running", "jump-off", "complete" (not signed yet) or "official".',
  })
  phase: string;

  @Field(() => Int, {
    nullable: true,
    description:
      'Of whoever is up; in high jump and pole vault the trial at the height, in a jump-off its round.',
  })
  round: number | null;

  @Field(() => String, { nullable: true })
  flight: string | null;

  @Field(() => TrialCall, { nullable: true, description: 'Who is up.' })
  up: TrialCall | null;

  @Field(() => TrialCall, { nullable: true, description: 'Who is on deck.' })
  next: TrialCall | null;

  @Field(() => TrialCall, { nullable: true })
  then: TrialCall | null;

  @Field(() => Int, {
    description:
      'Trials still to be taken as things stand; in high jump and pole vault those that are called now.',
  })
  remaining: number;

  @Field(() => VerticalProgress, {
    nullable: true,
    description: 'In high jump and pole vault, and only there.',
  })
  vertical: VerticalProgress | null;
}

@ObjectType({ description: 'The order in which one round is called, as things stand.' })
export class RoundOrder {
  @Field(() => Int)
  round: number;

  @Field(() => [ID])
  competitors: string[];
}

@ObjectType({ description: 'A result table at one version. Everything in it belongs together.' })
export class ResultTable {
  @Field(() => Int, {
    description: 'Rises with every change, never falls. Ignore a table that is older than yours.',
  })
  version: number;

  @Field({ description: 'Rule set and edition that decided.' })
  rules: string;

  @Field({ description: 'The result has been signed.' })
  isOfficial: boolean;

  @Field({ description: 'Questions to the referee are open, so places may still change.' })
  isDisputed: boolean;

  @Field(() => Instant, { nullable: true, description: 'When the latest entry was recorded.' })
  changedAt: Date | null;

  @Field(() => [TableRow])
  rows: TableRow[];

  @Field(() => [TableRow], {
    nullable: true,
    description:
      'The rows as they would be if every trial held under protest counted; nothing when there is none.',
  })
  rowsIfProtestsSucceed: TableRow[] | null;

  @Field(() => [TableCut])
  cuts: TableCut[];

  @Field(() => VerticalTable, { nullable: true, description: 'In high jump and pole vault, and only there.' })
  vertical: VerticalTable | null;
}
