import type { EntryChangeRow, EntryTermsRow } from '#persistence';
import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { UserError } from '../platform/errors/user-error.types.js';
import { enumOf } from '../platform/inputs/enums.js';
import { globalId } from '../platform/inputs/global-id.js';
import { Instant } from '../platform/scalars/instant.js';

@ObjectType()
export class CompetitionLimit {
  @Field(() => ID)
  competitionId: string;

  @Field(() => Int, { nullable: true, description: 'Null: as many as the club likes.' })
  mostPerClub: number | null;
}

@ObjectType({ description: 'Who may be entered at a meet, and until when.' })
export class EntryTerms {
  @Field(() => Int, { description: 'Rises with every change.' })
  revision: number;

  @Field(() => Instant, {
    nullable: true,
    description:
      'Until then coaches enter; from then on only a director, with a reason. Null: only a director.',
  })
  closesAt: Date | null;

  @Field(() => Int, {
    nullable: true,
    description: 'Competitors of one club in a competition, guests aside.',
  })
  mostPerClub: number | null;

  @Field(() => Int, { nullable: true, description: 'Competitions of one athlete.' })
  mostPerAthlete: number | null;

  @Field(() => [CompetitionLimit], { description: 'Competitions in which a club may have another number.' })
  competitionLimits: CompetitionLimit[];
}

@ObjectType()
export class MeetEntryTermsSetPayload {
  @Field(() => EntryTerms, { nullable: true })
  entryTerms: EntryTerms | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}

const EntryChangeKindEnum = enumOf<EntryChangeRow['kind']>(
  'EntryChangeKind',
  ['entered', 'withdrawn'],
  'What became of an entry.',
);

@ObjectType({ description: 'Somebody came to the start list, or was taken off it. Kept without names.' })
export class EntryChange {
  @Field(() => EntryChangeKindEnum)
  kind: EntryChangeRow['kind'];

  @Field({ description: 'As it was then.' })
  bib: string;

  @Field(() => ID, { nullable: true })
  athleteId: string | null;

  @Field({ description: 'After the entries were closed.' })
  isLate: boolean;

  @Field(() => String, { nullable: true })
  reason: string | null;

  @Field({ description: 'Whose token it was.' })
  madeBy: string;

  @Field(() => Instant)
  madeAt: Date;
}

export function entryTermsObject(row: EntryTermsRow): EntryTerms {
  return {
    revision: row.revision,
    closesAt: row.closesAt === null ? null : new Date(row.closesAt),
    mostPerClub: row.mostPerClub,
    mostPerAthlete: row.mostPerAthlete,
    competitionLimits: row.competitionLimits.map(({ competitionId, mostPerClub }) => ({
      competitionId: globalId('Competition', competitionId),
      mostPerClub,
    })),
  };
}

export function entryChangeObject(row: EntryChangeRow): EntryChange {
  return {
    kind: row.kind,
    bib: row.bib,
    athleteId: row.athleteId === null ? null : globalId('Athlete', row.athleteId),
    isLate: row.isLate,
    reason: row.reason,
    madeBy: row.madeBy,
    madeAt: new Date(row.madeAt),
  };
}
