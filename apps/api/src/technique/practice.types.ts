import type { CountingObservation, CountingThrow, PracticeSessionRow } from '#persistence';
import type { EventCode } from '#rules';
import { formatMark, formatWind } from '#rules';
import type { Severity, Style, Variant, View } from '#technique';
import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { UserError } from '../platform/errors/user-error.types.js';
import { globalId } from '../platform/inputs/global-id.js';
import { EventEnum } from '../platform/objects/words.js';
import { CalendarDate } from '../platform/scalars/calendar-date.js';
import { Instant } from '../platform/scalars/instant.js';
import { MarkText } from '../platform/scalars/mark.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { WindText } from '../platform/scalars/wind-reading.js';
import { LogStatusEnum, MethodEnum, StyleEnum, ThrowOutcomeEnum, VariantEnum, ViewEnum } from './words.js';

@ObjectType({ description: 'How the implement left the hand, as far as it was measured.' })
export class ReleaseMeasured {
  @Field(() => Int, { nullable: true })
  speedCmS: number | null;

  @Field(() => Int, { nullable: true })
  angleTenths: number | null;

  @Field(() => Int, { nullable: true })
  heightCm: number | null;

  @Field(() => Int, { nullable: true })
  attitudeTenths: number | null;
}

@ObjectType({ description: 'What was seen of one fault in one throw.' })
export class FaultMarkNoted {
  @Field()
  code: string;

  @Field(() => Int, { description: '0 not there, 1 slight, 2 clear, 3 breaks the throw.' })
  severity: Severity;

  @Field()
  sure: boolean;

  @Field(() => String, { nullable: true })
  causedBy: string | null;
}

@ObjectType({ description: 'A trial of a competition, by whose and which it is.' })
export class TrialRef {
  @Field(() => ID)
  competitionId: string;

  @Field(() => ID)
  competitorId: string;

  @Field(() => Int)
  round: number;
}

@ObjectType({
  description: 'What one observer saw of one throw. For the coaches, and for the athlete once released.',
})
export class ThrowObservation {
  @Field(() => Uuid)
  id: string;

  @Field(() => Uuid, { nullable: true, description: 'The throw of practice; or else the trial.' })
  throwId: string | null;

  @Field(() => TrialRef, { nullable: true })
  trial: TrialRef | null;

  @Field(() => EventEnum)
  event: EventCode;

  @Field(() => ID, { description: 'The person who observed.' })
  observerId: string;

  @Field(() => Instant)
  observedAt: Date;

  @Field(() => MethodEnum)
  method: 'live' | 'video';

  @Field()
  markKnown: boolean;

  @Field(() => ViewEnum, { nullable: true })
  view: View | null;

  @Field(() => [String], {
    nullable: true,
    description:
      'What was looked for. Null: only what was noticed was noted, and nothing is known of the rest.',
  })
  scope: readonly string[] | null;

  @Field(() => String, { nullable: true })
  checklist: string | null;

  @Field(() => [FaultMarkNoted], { complexity: 3 })
  marks: readonly FaultMarkNoted[];

  @Field(() => String, {
    nullable: true,
    description: 'With left and right where the throwing arm is known.',
  })
  note: string | null;
}

@ObjectType({ description: 'A throw of practice, as it counts now.' })
export class PracticeThrow {
  @Field(() => Uuid, { description: 'It stays the same when the throw is corrected.' })
  throwId: string;

  @Field(() => Uuid, { description: 'Of the newest row: what a correction replaces.' })
  rowId: string;

  @Field(() => Uuid)
  sessionId: string;

  @Field(() => ID)
  athleteId: string;

  @Field(() => CalendarDate)
  onDate: string;

  @Field(() => EventEnum)
  event: EventCode;

  @Field(() => VariantEnum)
  variant: Variant;

  @Field(() => Int, { nullable: true })
  implementGrams: number | null;

  @Field(() => Int)
  round: number;

  @Field(() => ThrowOutcomeEnum)
  outcome: 'valid' | 'foul';

  @Field(() => MarkText, { nullable: true })
  mark: string | null;

  @Field()
  isMeasured: boolean;

  @Field(() => Int, { nullable: true })
  effortPercent: number | null;

  @Field()
  voidedOnPurpose: boolean;

  @Field(() => String, { nullable: true })
  foul: string | null;

  @Field(() => WindText, { nullable: true })
  wind: string | null;

  @Field(() => [StyleEnum])
  styles: readonly Style[];

  @Field(() => ReleaseMeasured, { nullable: true })
  release: ReleaseMeasured | null;

  @Field({ description: 'Struck from the record; it counts in nothing.' })
  isAnnulled: boolean;
}

@ObjectType({ description: 'A day at which somebody practises.' })
export class PracticeSession {
  @Field(() => Uuid)
  id: string;

  @Field(() => CalendarDate)
  onDate: string;

  @Field(() => String, { nullable: true })
  place: string | null;

  @Field(() => String, { nullable: true })
  note: string | null;
}

@ObjectType({ description: 'What became of one item of a batch.' })
export class LogResult {
  @Field(() => Uuid)
  id: string;

  @Field(() => LogStatusEnum)
  status: 'stored' | 'replayed' | 'refused';
}

@ObjectType()
export class PracticeSessionCreatePayload {
  @Field(() => PracticeSession, { nullable: true })
  session: PracticeSession | null;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType({ description: 'Each item by itself: one that is refused keeps none of the others out.' })
export class LogPayload {
  @Field(() => [LogResult], {
    complexity: 50,
    description: 'In the order of sending; of a throw first the throw, then what was seen of it.',
  })
  results: LogResult[];

  @Field(() => [UserError])
  userErrors: UserError[];
}

export function sessionObject({ id, onDate, place, note }: PracticeSessionRow): PracticeSession {
  return { id, onDate, place, note };
}

export function throwObject(row: CountingThrow): PracticeThrow {
  const { release } = row;
  return {
    ...{ throwId: row.throwId, rowId: row.id, sessionId: row.sessionId, onDate: row.onDate },
    athleteId: globalId('Athlete', row.athleteId),
    ...{ event: row.event, variant: row.variant, implementGrams: row.implementGrams, round: row.round },
    ...{ outcome: row.outcome, isMeasured: row.isMeasured, effortPercent: row.effortPercent },
    mark: row.mark === null ? null : formatMark(row.mark, 'cm'),
    ...{
      voidedOnPurpose: row.voidedOnPurpose,
      foul: row.foul,
      styles: row.styles,
      isAnnulled: row.isAnnulled,
    },
    wind: row.wind === null ? null : formatWind(row.wind),
    release: release && {
      speedCmS: release.speedCmS ?? null,
      angleTenths: release.angleTenths ?? null,
      heightCm: release.heightCm ?? null,
      attitudeTenths: release.attitudeTenths ?? null,
    },
  };
}

/** `said`: puts left and right into the words. */
export function observationObject(
  row: CountingObservation,
  said: (text: string) => string,
): ThrowObservation {
  const { competitionId, competitorId, round } = row;
  const isTrial = competitionId !== null && competitorId !== null && round !== null;
  return {
    ...{ id: row.id, throwId: row.practiceThrowId, event: row.event },
    trial: isTrial
      ? {
          competitionId: globalId('Competition', competitionId),
          competitorId: globalId('Competitor', competitorId),
          round,
        }
      : null,
    observerId: globalId('Person', row.observerId),
    observedAt: new Date(row.observedAt),
    ...{ method: row.method, markKnown: row.markKnown, view: row.view, scope: row.scope },
    ...{ checklist: row.checklist, marks: row.marks, note: row.note && said(row.note) },
  };
}
