import { Args, Mutation, ObjectType, Query, Resolver, Field } from '@nestjs/graphql';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { Uuid } from '../platform/scalars/uuid.js';
import type { Batch } from './batch.js';
import { ObservationsLogInput } from './observations.inputs.js';
import { ObservationsService } from './observations.service.js';
import { PracticeSessionCreateInput, ThrowsLogInput } from './practice.inputs.js';
import { PracticeService } from './practice.service.js';
import {
  LogPayload,
  PracticeSession,
  PracticeSessionCreatePayload,
  PracticeThrow,
  sessionObject,
  throwObject,
} from './practice.types.js';

@ObjectType({ description: 'A day of practice with the throws of the athletes whom the viewer coaches.' })
export class PracticeSessionLog {
  @Field(() => PracticeSession)
  session: PracticeSession;

  @Field(() => [PracticeThrow], { complexity: 60, description: 'By athlete, in the order of throwing.' })
  throws: PracticeThrow[];
}

/** Where a coach’s device sends what it has kept. */
@Resolver()
export class PracticeResolver {
  constructor(
    private readonly practice: PracticeService,
    private readonly observations: ObservationsService,
  ) {}

  @Query(() => PracticeSessionLog, { nullable: true, description: 'For coaches. Null: not there.' })
  @Needs('coach')
  async practiceSession(
    @Args('id', { type: () => Uuid }) id: string,
    @Viewer() viewer: Identity,
  ): Promise<PracticeSessionLog | null> {
    const found = await this.practice.session(id, viewer);
    return found && { session: sessionObject(found.row), throws: found.throws.map(throwObject) };
  }

  @Mutation(() => PracticeSessionCreatePayload, { description: 'Codes: ID_REUSED.' })
  @Needs('coach')
  async practiceSessionCreate(
    @Args('input') input: PracticeSessionCreateInput,
    @Viewer() viewer: Identity,
  ): Promise<PracticeSessionCreatePayload> {
    const made = await this.practice.createSession(input, viewer);
    if ('refusal' in made) return { session: null, isReplay: false, userErrors: [made.refusal] };
    return { session: sessionObject(made.row), isReplay: made.replayed, userErrors: [] };
  }

  @Mutation(() => LogPayload, {
    description:
      'Keeps throws of practice, and what was seen of them, in the order of sending; sending again is safe. One that is refused keeps no other out. Codes: NOT_FOUND, WRONG_EVENT, OTHER_EVENT, MARK_OF_FOUL, MARK_UNIT, NOT_A_FOUL, IMPLEMENT_MISSING, NO_IMPLEMENT, REASON_MISSING, REASON_NOT_EXPECTED, REPLACED_ALREADY, ID_REUSED; of an observation those of observationsLog.',
  })
  @Needs('coach')
  async throwsLog(@Args('input') input: ThrowsLogInput, @Viewer() viewer: Identity): Promise<LogPayload> {
    return payloadOf(await this.practice.log(input, viewer));
  }

  @Mutation(() => LogPayload, {
    description:
      'Keeps what was seen of throws of practice or of trials of one athlete; sending again is safe. Codes: NOT_FOUND, THROW_NOT_NAMED, WRONG_EVENT, SCOPE_MISSING, NOTHING_THROWN, SCOPE_EMPTY, CODE_UNKNOWN, CODE_OF_OTHER_EVENT, CODE_RETIRED, NOTED_TWICE, NOT_IN_SCOPE, OPPOSITES, CAUSE_NOT_PRESENT, CAUSE_LATER, CAUSES_IN_A_CIRCLE, REASON_MISSING, REASON_NOT_EXPECTED, REPLACED_ALREADY, ID_REUSED.',
  })
  @Needs('coach')
  async observationsLog(
    @Args('input') input: ObservationsLogInput,
    @Viewer() viewer: Identity,
  ): Promise<LogPayload> {
    return payloadOf(await this.observations.log(input, viewer));
  }
}

function payloadOf({ results, userErrors }: Batch): LogPayload {
  return { results: [...results], userErrors: [...userErrors] };
}
