import type { EventCode } from '#rules';
import { Args, ID, Mutation, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import { connectionOf, PageArgs } from '../platform/connections/connection.js';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { ReadId } from '../platform/inputs/object-id.js';
import { Meet } from '../platform/objects/meet.type.js';
import { EventEnum } from '../platform/objects/words.js';
import { Uuid } from '../platform/scalars/uuid.js';
import { inspectionView } from './implement-view.js';
import { ImplementRegisterInput } from './implements.inputs.js';
import {
  Implement,
  ImplementConnection,
  ImplementInspectPayload,
  ImplementRecheckPayload,
  ImplementRegisterPayload,
} from './implements.types.js';
import { ImplementInspectInput, ImplementRecheckInput } from './inspection.inputs.js';
import { InspectionService, type Looked } from './inspection.service.js';
import { RegisterService } from './register.service.js';

/** The register of implements and what is found of them, for those who work at a meet. */
@Resolver(() => Meet)
export class ImplementsResolver {
  constructor(
    private readonly register: RegisterService,
    private readonly inspections: InspectionService,
  ) {}

  @ResolveField(() => [Implement], {
    nullable: true,
    description:
      'Implements that were registered or inspected at the meet, by event and label. Only for those who work at it.',
  })
  async implements(
    @Parent() { row }: Meet,
    @Viewer() viewer: Identity,
    @Args('event', { type: () => EventEnum, nullable: true }) event?: EventCode | null,
  ): Promise<Implement[]> {
    return this.register.ofMeet(row, event ?? null, viewer);
  }

  @Query(() => Implement, {
    nullable: true,
    description: 'As it stands at the meet. For those who work there.',
  })
  @Needs('admin', 'director', 'referee', 'official')
  async implement(
    @Args('id', { type: () => Uuid }) id: string,
    @Args('meetId', { type: () => ID }, new ReadId('Meet')) meetId: string,
    @Viewer() viewer: Identity,
  ): Promise<Implement | null> {
    return this.register.find(id, meetId, viewer);
  }

  @Query(() => ImplementConnection, {
    description:
      'The whole register of an event, by label, as it stands at the meet: where an implement comes back that another meet knew. For those who work at the meet.',
  })
  @Needs('admin', 'director', 'referee', 'official')
  async registeredImplements(
    @Args('meetId', { type: () => ID }, new ReadId('Meet')) meetId: string,
    @Args('event', { type: () => EventEnum }) event: EventCode,
    @Args() page: PageArgs,
    @Viewer() viewer: Identity,
  ): Promise<ImplementConnection> {
    return connectionOf(
      page,
      () => this.register.page(meetId, event, page, viewer),
      (implement) => implement,
    );
  }

  @Mutation(() => ImplementRegisterPayload, {
    description:
      'Puts an implement on the register. Codes: NOT_FOUND, OWNER_TWICE, OWNER_NOT_ON_RECORD, ID_REUSED.',
  })
  @Needs('official', 'referee', 'director')
  async implementRegister(
    @Args('input') input: ImplementRegisterInput,
    @Viewer() viewer: Identity,
  ): Promise<ImplementRegisterPayload> {
    const made = await this.register.register(input, viewer);
    if ('refusal' in made) return { implement: null, isReplay: false, userErrors: [made.refusal] };
    return { implement: made.implement, isReplay: made.replayed, userErrors: [] };
  }

  @Mutation(() => ImplementInspectPayload, {
    description:
      'Keeps what was weighed and measured, and says whether it is within the limits. When it fails after it was used, the trials made with it become questions to the referee. Codes: NOT_FOUND, NOTHING_MEASURED, MEASURED_TWICE, DIMENSION_NOT_OF_EVENT, NOT_OF_COMPETITION, REASON_MISSING, REASON_NOT_EXPECTED, REPLACED_ALREADY, ID_REUSED.',
  })
  @Needs('official', 'referee', 'director')
  async implementInspect(
    @Args('input') input: ImplementInspectInput,
    @Viewer() viewer: Identity,
  ): Promise<ImplementInspectPayload> {
    return payloadOf(await this.inspections.inspect(input, viewer));
  }

  @Mutation(() => ImplementRecheckPayload, {
    description:
      'The same after a record or on the referee’s order, or that the implement is kept back until then. Codes as of implementInspect, and ATTEMPT_MISSING.',
  })
  @Needs('official', 'referee', 'director')
  async implementRecheck(
    @Args('input') input: ImplementRecheckInput,
    @Viewer() viewer: Identity,
  ): Promise<ImplementRecheckPayload> {
    return payloadOf(await this.inspections.recheck(input, viewer));
  }
}

function payloadOf(looked: Looked): ImplementInspectPayload {
  if ('refusals' in looked) {
    const userErrors = [...looked.refusals];
    return { inspection: null, implement: null, questioned: [], notices: [], isReplay: false, userErrors };
  }
  const { row, implement, questioned, isOther, replayed } = looked;
  return {
    inspection: inspectionView(row),
    implement,
    questioned: [...questioned],
    notices: [...(row.outcome === 'failed' ? ['FAILED'] : []), ...(isOther ? ['OTHER_IMPLEMENT'] : [])],
    isReplay: replayed,
    userErrors: [],
  };
}
