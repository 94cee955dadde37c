import type { DrawAmendmentRow, DrawRow, Unit } from '#persistence';
import { DRAW_PROCEDURE, formatMark, isAsDrawn, type DrawMethod } from '#rules';
import { Field, Int, ObjectType } from '@nestjs/graphql';
import { enumOf } from '../inputs/enums.js';
import { Instant } from '../scalars/instant.js';
import { MarkText } from '../scalars/mark.js';
import { Uuid } from '../scalars/uuid.js';

export const DrawMethodEnum = enumOf<DrawMethod>(
  'DrawMethod',
  ['lot', 'seed marks', 'equal strength'],
  'How a field becomes flights. LOT: by lot, as equal in size as can be. SEED_MARKS: by the marks that competitors were entered with, the best flight last. EQUAL_STRENGTH: each flight as strong as the other. Within a flight the order is always by lot.',
);

export const DrawAmendmentKindEnum = enumOf<DrawAmendmentRow['kind']>(
  'DrawAmendmentKind',
  ['entered late', 'withdrawn', 'set by hand'],
  'Somebody was put at the end of a flight after the draw, was taken off the list, or the list was put in another order.',
);

@ObjectType({ description: 'A competitor as the draw knew him. What the method did not use is null.' })
export class DrawEntry {
  @Field()
  bib: string;

  @Field(() => MarkText, { nullable: true })
  seedMark: string | null;

  @Field(() => String, { nullable: true })
  club: string | null;
}

@ObjectType()
export class DrawnFlight {
  @Field(() => String, { nullable: true, description: 'Null: the field is one flight.' })
  label: string | null;

  @Field(() => [String], { description: 'In the order of competition.' })
  bibs: readonly string[];
}

@ObjectType()
export class DrawAmendmentLine {
  @Field()
  bib: string;

  @Field(() => String, { nullable: true })
  flight: string | null;
}

@ObjectType({ description: 'What was done to the start list after it was drawn.' })
export class DrawAmendment {
  @Field(() => DrawAmendmentKindEnum)
  kind: DrawAmendmentRow['kind'];

  @Field(() => [DrawAmendmentLine], {
    complexity: 10,
    description: 'Who it was; set by hand: the whole list in its order.',
  })
  lines: readonly DrawAmendmentLine[];

  @Field(() => Instant)
  madeAt: Date;
}

@ObjectType({
  description:
    'A draw as it was made, with all that it takes to make it again: the procedure is public, so anybody can draw from the seed and compare. Kept for good.',
})
export class Draw {
  @Field(() => Uuid)
  id: string;

  @Field(() => Int, { description: 'Which draw of this competition it is, from 1.' })
  number: number;

  @Field({ description: 'Only the newest draw of a competition is in force.' })
  isInForce: boolean;

  @Field({
    description: 'Name and version of the procedure, which the rules library describes step by step.',
  })
  procedure: string;

  @Field()
  seed: string;

  @Field(() => DrawMethodEnum)
  method: DrawMethod;

  @Field({ description: 'Clubmates were spread over the flights, where seed marks did not decide.' })
  areClubmatesApart: boolean;

  @Field(() => [DrawEntry], { complexity: 50, description: 'By bib: who was entered first does not matter.' })
  entries: readonly DrawEntry[];

  @Field(() => [DrawnFlight], { complexity: 4, description: 'In the order in which they are held.' })
  flights: readonly DrawnFlight[];

  @Field(() => Boolean, {
    nullable: true,
    description:
      'Whether the seed gives this result when it is drawn again now. Null: by a procedure unknown here.',
  })
  isAsDrawn: boolean | null;

  @Field(() => String, {
    nullable: true,
    description: 'Why it was drawn again, or before everything was there.',
  })
  reason: string | null;

  @Field(() => Instant)
  drawnAt: Date;

  @Field(() => [DrawAmendment], {
    complexity: 10,
    description: 'What happened to the start list since, in that order.',
  })
  amendments: readonly DrawAmendment[];
}

export function drawObject(
  row: DrawRow,
  unit: Unit,
  {
    isInForce,
    amendments,
  }: { readonly isInForce: boolean; readonly amendments: readonly DrawAmendmentRow[] },
): Draw {
  const { id, number, procedure, seed, method, flights, reason } = row;
  return {
    id,
    number,
    isInForce,
    procedure,
    seed,
    method,
    areClubmatesApart: row.clubmatesApart,
    entries: row.entries.map(({ key, seedMark, club }) => ({
      bib: key,
      seedMark: seedMark === null ? null : formatMark(seedMark, unit),
      club,
    })),
    flights,
    isAsDrawn: isRepeated(row),
    reason,
    drawnAt: new Date(row.drawnAt),
    amendments: amendments.map(({ kind, lines, madeAt }) => ({ kind, lines, madeAt: new Date(madeAt) })),
  };
}

function isRepeated({ procedure, seed, method, clubmatesApart, entries, flights }: DrawRow): boolean | null {
  if (procedure !== DRAW_PROCEDURE) return null;
  const terms = { seed, method, flights: flights.length, clubmatesApart };
  return isAsDrawn({ procedure, terms, entries, flights: flights.map(({ bibs }) => bibs) });
}
