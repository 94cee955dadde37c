import type { QualificationRow } from '#persistence';
import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { UserError } from '../platform/errors/user-error.types.js';
import { Competition } from '../platform/objects/competition.type.js';
import { Draw } from '../platform/objects/draw.type.js';
import { Uuid } from '../platform/scalars/uuid.js';

@ObjectType({ description: 'A competitor among all groups, as things stand.' })
export class QualifyingLine {
  @Field(() => ID)
  competitor: string;

  @Field(() => Int, { description: 'Of the group in the order of groups, from 1.' })
  group: number;

  @Field()
  bib: string;

  @Field({ description: 'The name, initials or the bib with #: as the club and the meet decide.' })
  name: string;

  @Field(() => String, { nullable: true })
  club: string | null;

  @Field(() => Int, { nullable: true, description: 'Among everybody of all groups.' })
  place: number | null;

  @Field({ description: 'The place is shared.' })
  isEqual: boolean;

  @Field(() => String, { nullable: true, description: 'O: only trials that were valid and not measured.' })
  mark: string | null;

  @Field(() => String, { nullable: true })
  wind: string | null;

  @Field(() => String, { nullable: true, description: 'NM, DQ, DNS or GUEST.' })
  status: string | null;

  @Field(() => String, {
    nullable: true,
    description: 'Q: reached the standard. q: filled up. qR, qJ, qD: admitted by referee, jury or draw.',
  })
  qualified: string | null;

  @Field({ description: 'Goes on, as things stand.' })
  isThrough: boolean;

  @Field({ description: 'Shares the last place that goes on, so that more go on than were wanted.' })
  isLevelForLast: boolean;

  @Field({ description: 'Why, in one sentence.' })
  reason: string;
}

@ObjectType({ description: 'All groups in one table.' })
export class QualifyingTable {
  @Field({ description: 'A group is not signed off yet: who is through may change.' })
  isProvisional: boolean;

  @Field({ description: 'The referee has questions to rule on in a group.' })
  isDisputed: boolean;

  @Field(() => [QualifyingLine], {
    complexity: 50,
    description: 'By place, then those without one. Marks of the qualification do not count in the final.',
  })
  lines: readonly QualifyingLine[];

  @Field(() => Int, { description: 'How many reached the standard.' })
  byStandard: number;

  @Field(() => Int, { description: 'How many were filled up with.' })
  byPerformance: number;

  @Field({ description: 'The rule by which they go on.' })
  rule: string;
}

@ObjectType({
  description:
    'Competitions that are the groups of one qualification. Standard and number to fill up to are those of the groups and count over all of them: a `q` in the table of one group says nothing about the others.',
})
export class Qualification {
  /** Not a field. */
  row: QualificationRow;

  @Field(() => Uuid)
  id: string;

  @Field()
  title: string;
}

@ObjectType()
export class QualificationCreatePayload {
  @Field(() => Qualification, { nullable: true })
  qualification: Qualification | null;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class QualificationDissolvePayload {
  @Field(() => Uuid, { nullable: true })
  qualificationId: string | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class QualificationFinalDrawPayload {
  @Field(() => [String], {
    description: 'The order that was drawn, or would be, by bib. Empty when refused.',
  })
  order: readonly string[];

  @Field(() => Draw, { nullable: true, description: 'Null: a preview, or refused.' })
  draw: Draw | null;

  @Field(() => Competition, { nullable: true, description: 'The final with its start list.' })
  final: Competition | null;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}

export function qualificationObject(row: QualificationRow): Qualification {
  return { row, id: row.id, title: row.title };
}
