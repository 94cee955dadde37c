import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { connectionType } from '../platform/connections/connection.js';
import { Competition } from '../platform/objects/competition.type.js';
import { Instant } from '../platform/scalars/instant.js';
import { Json } from '../platform/scalars/json.js';
import { Uuid } from '../platform/scalars/uuid.js';

@ObjectType({ description: 'One thing that somebody did at a meet.' })
export class AuditEntry {
  @Field({ description: 'Together with `kind` of one line only.' })
  id: string;

  @Field(() => Instant)
  at: Date;

  @Field({
    description:
      'As in a journal (attempt, correction, ruling, sign-off, …), with combined- before it where it is that of a combined event; or result-posting, protest, protest-decision, protest-appeal, protest-appeal-decision, protest-withdrawal, asked-sign-off, confirmed-sign-off, asked-reopening, confirmed-reopening, record-decision, crew, timetable, scoring, entered-result, draw, draw-amendment, role, role-taken, device-link, device-link-ended, implement-inspection, implement-recheck, check-in. Accept kinds that you do not know.',
  })
  kind: string;

  @Field(() => Competition, { nullable: true })
  competition: Competition | null;

  @Field(() => ID, { nullable: true, description: 'Whom it is about.' })
  competitor: string | null;

  @Field(() => String, { nullable: true })
  bib: string | null;

  @Field(() => String, { nullable: true, description: 'The competitor’s name.' })
  competitorName: string | null;

  @Field(() => String, { nullable: true, description: 'accepted or held, of an entry of a journal.' })
  standing: string | null;

  @Field({ description: 'Whose token.' })
  actor: string;

  @Field(() => String, { nullable: true, description: 'The actor’s name, of a person with an account.' })
  name: string | null;

  @Field(() => String, { nullable: true, description: 'With which right: official, referee or director.' })
  authority: string | null;

  @Field(() => String, { nullable: true })
  device: string | null;

  @Field(() => Instant, { nullable: true, description: 'By the clock of the device, believed by nobody.' })
  deviceAt: Date | null;

  @Field(() => String, { nullable: true })
  reason: string | null;

  @Field(() => Json, { nullable: true, description: 'What it took the place of.' })
  before: unknown;

  @Field(() => Json, { nullable: true, description: 'What was entered.' })
  after: unknown;
}

@ObjectType()
export class AuditEntryConnection extends connectionType(AuditEntry, 'AuditEntry') {}

@ObjectType({ description: 'A competitor whose place or mark a ruling would change.' })
export class PlaceChange {
  @Field(() => ID)
  competitor: string;

  @Field()
  bib: string;

  @Field()
  name: string;

  @Field(() => Int, { nullable: true })
  placeBefore: number | null;

  @Field(() => Int, { nullable: true })
  placeAfter: number | null;

  @Field(() => String, { nullable: true })
  markBefore: string | null;

  @Field(() => String, { nullable: true })
  markAfter: string | null;
}

@ObjectType({ description: 'What one answer to a question would do.' })
export class RulingEffect {
  @Field(() => String, { nullable: true, description: 'Why this cannot be ruled, and what to do instead.' })
  obstacle: string | null;

  @Field(() => [PlaceChange])
  changes: PlaceChange[];
}

@ObjectType({ description: 'Something that waits for the referee, with what each answer would change.' })
export class MeetQuestion {
  @Field(() => Competition)
  competition: Competition;

  @Field(() => Uuid, { description: 'The held entry, or the trial.' })
  entry: string;

  @Field({
    description: '"held", "protest", or "implement": what the trial was made with did not pass afterwards.',
  })
  about: string;

  @Field(() => String, { nullable: true })
  holdCode: string | null;

  @Field(() => String, { nullable: true, description: 'Why it is held.' })
  message: string | null;

  @Field(() => String, { nullable: true })
  remedy: string | null;

  @Field(() => ID, { nullable: true })
  competitor: string | null;

  @Field(() => String, { nullable: true })
  bib: string | null;

  @Field(() => String, { nullable: true })
  name: string | null;

  @Field(() => Json, { description: 'What was entered.' })
  body: unknown;

  @Field(() => RulingEffect)
  ifCounted: RulingEffect;

  @Field(() => RulingEffect)
  ifDismissed: RulingEffect;
}

@ObjectType({ description: 'A result that was opened again and signed anew.' })
export class AmendedResult {
  @Field(() => Competition)
  competition: Competition;

  @Field(() => Int, { description: 'The number of the signature, from 2.' })
  revision: number;

  @Field(() => Instant)
  signedAt: Date;
}

@ObjectType({
  description:
    'Which issue the results of a meet and its club table are: every amended result makes the next one.',
})
export class ResultIssue {
  @Field(() => Int, { description: 'From 1; 0: no result has been signed.' })
  number: number;

  @Field(() => Instant, { nullable: true, description: 'When the latest result was signed.' })
  at: Date | null;

  @Field(() => [AmendedResult], { description: 'In the order of signing.' })
  amendments: AmendedResult[];
}
