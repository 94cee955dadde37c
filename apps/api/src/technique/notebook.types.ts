import type { AthleteRow, ConsentBody, FocusBody, ReleaseBody } from '#persistence';
import type { EventCode } from '#rules';
import type { Instant as ThrowInstant, Stage, View } from '#technique';
import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { UserError } from '../platform/errors/user-error.types.js';
import { EventEnum } from '../platform/objects/words.js';
import { CalendarDate } from '../platform/scalars/calendar-date.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { TrialRef } from './practice.types.js';
import {
  ConsentByEnum,
  ConsentPurposeEnum,
  FocusHowEnum,
  InstantEnum,
  ReleaseWhatEnum,
  StageEnum,
  ViewEnum,
} from './words.js';

@ObjectType({ description: 'Points to look at, under a name.' })
export class Checklist {
  @Field(() => Uuid)
  id: string;

  @Field(() => EventEnum)
  event: EventCode;

  @Field()
  name: string;

  @Field(() => Int)
  version: number;

  @Field(() => [String])
  codes: readonly string[];
}

@ObjectType({ description: 'How far an athlete is in an event.' })
export class AthleteStage {
  @Field(() => EventEnum)
  event: EventCode;

  @Field(() => StageEnum)
  stage: Stage;

  @Field(() => CalendarDate)
  from: string;
}

@ObjectType({ description: 'A time in which one point was worked on.' })
export class Focus {
  @Field(() => Uuid)
  id: string;

  @Field(() => EventEnum)
  event: EventCode;

  @Field()
  code: string;

  @Field(() => FocusHowEnum)
  how: FocusBody['how'];

  @Field(() => String, { nullable: true })
  what: string | null;

  @Field(() => CalendarDate)
  from: string;

  @Field(() => CalendarDate, { nullable: true, description: 'Null: it goes on.' })
  to: string | null;
}

@ObjectType()
export class VideoInstant {
  @Field(() => InstantEnum)
  instant: ThrowInstant;

  @Field(() => Int)
  ms: number;
}

@ObjectType({ description: 'Where a film of a throw lies, with the moments in it.' })
export class VideoReference {
  @Field(() => Uuid)
  id: string;

  @Field(() => Uuid, { nullable: true })
  throwId: string | null;

  @Field(() => TrialRef, { nullable: true })
  trial: TrialRef | null;

  @Field()
  address: string;

  @Field(() => ViewEnum, { nullable: true })
  view: View | null;

  @Field(() => [VideoInstant], { complexity: 6 })
  instants: readonly VideoInstant[];
}

@ObjectType({ description: 'Whether a part of the notebook is shown to the athlete and the guardians.' })
export class NotebookRelease {
  @Field(() => ReleaseWhatEnum)
  what: ReleaseBody['what'];

  @Field()
  isOpen: boolean;
}

@ObjectType({ description: 'What was agreed, and by whom; the newest of each purpose.' })
export class Consent {
  @Field(() => ConsentPurposeEnum)
  purpose: ConsentBody['purpose'];

  @Field()
  isGiven: boolean;

  @Field(() => ConsentByEnum)
  by: ConsentBody['by'];

  @Field()
  name: string;

  @Field(() => CalendarDate)
  on: string;

  @Field(() => String, { nullable: true })
  form: string | null;
}

@ObjectType({
  description:
    'What a coach keeps of an athlete. For the coaches of the athlete; the athlete and the guardians see results, and what was released to them. Never public.',
})
export class NotebookAthlete {
  /** Not a field. */
  row: AthleteRow;

  @Field(() => ID)
  athleteId: string;

  @Field()
  name: string;

  @Field(() => Int, { nullable: true, description: 'In completed years; null: not known.' })
  age: number | null;

  @Field({ description: 'Younger than fourteen, or of unknown age: what is said is for a child.' })
  isChild: boolean;

  @Field({ description: 'Not of age yet, or of unknown age: points of arm and shoulder are not pushed.' })
  isGrowing: boolean;

  @Field({ description: 'Whether the viewer is a coach of the athlete, and may write.' })
  isCoach: boolean;
}

@ObjectType()
export class NotebookPayload {
  @Field(() => Uuid, { nullable: true, description: 'Of what was kept.' })
  id: string | null;

  @Field(() => NotebookAthlete, { nullable: true })
  athlete: NotebookAthlete | null;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}
