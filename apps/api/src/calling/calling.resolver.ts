import { Args, Context, ID, Mutation, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import type { UserError } from '../platform/errors/user-error.types.js';
import { loaderPerRequest } from '../platform/graphql/per-request.js';
import type { RequestContext } from '../platform/graphql/request-context.js';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Public, Viewer } from '../platform/identity/rights.js';
import { ReadId } from '../platform/inputs/object-id.js';
import { Competition } from '../platform/objects/competition.type.js';
import { Meet } from '../platform/objects/meet.type.js';
import { CallingReader, isGroupKeptBack } from './calling-reader.js';
import { groupObject, progressOf, startListOf } from './calling-view.js';
import { CallingGroupCreateInput, CallingGroupUpdateInput, CallingOrderSetInput } from './calling.inputs.js';
import { CallingService, type GroupChange } from './calling.service.js';
import {
  CallingGroup,
  CallingGroupCreatePayload,
  CallingGroupUpdatePayload,
  CallingLine,
  CallingOrderSetPayload,
  CallingProgress,
} from './calling.types.js';

@Resolver(() => CallingGroup)
export class CallingResolver {
  constructor(
    private readonly reader: CallingReader,
    private readonly service: CallingService,
  ) {}

  @Query(() => CallingGroup, {
    nullable: true,
    description: 'Null: not there, or not published and not yours.',
  })
  @Public()
  async callingGroup(
    @Args('id', { type: () => ID }, new ReadId('CallingGroup')) id: string,
    @Viewer() viewer: Identity,
  ): Promise<CallingGroup | null> {
    const loaded = await this.reader.find(id, viewer);
    return loaded && groupObject(loaded);
  }

  @ResolveField(() => [CallingLine], { description: 'Everybody of its competitions in one order.' })
  startList(@Parent() { loaded }: CallingGroup, @Viewer() viewer: Identity): CallingLine[] {
    return startListOf(loaded, viewer);
  }

  @ResolveField(() => CallingProgress, { description: 'Who is up, who is next, and for which competition.' })
  progress(@Parent() { loaded }: CallingGroup, @Viewer() viewer: Identity): CallingProgress {
    return progressOf(loaded, viewer);
  }

  @Mutation(() => CallingGroupCreatePayload, {
    description:
      'Lets competitions take turns at one place. Codes: NOT_FOUND, NAMED_TWICE, CALLED_ELSEWHERE, EVENT_MIXED, UNIT_MIXED, COMPETITION_STARTED, ID_REUSED.',
  })
  @Needs('admin', 'director')
  async callingGroupCreate(
    @Args('input') input: CallingGroupCreateInput,
    @Viewer() viewer: Identity,
  ): Promise<CallingGroupCreatePayload> {
    const made = await this.service.create(input, viewer);
    return { ...(await this.shown(made, viewer)), isReplay: 'id' in made && made.replayed };
  }

  @Mutation(() => CallingGroupUpdatePayload, {
    description:
      'Changes the group; which competitions are in it only before the first trial. Codes: NOT_FOUND, VERSION_CONFLICT, NAMED_TWICE, CALLED_ELSEWHERE, EVENT_MIXED, UNIT_MIXED, COMPETITION_STARTED.',
  })
  @Needs('admin', 'director')
  async callingGroupUpdate(
    @Args('input') input: CallingGroupUpdateInput,
    @Viewer() viewer: Identity,
  ): Promise<CallingGroupUpdatePayload> {
    return this.shown(await this.service.update(input, viewer), viewer);
  }

  @Mutation(() => CallingOrderSetPayload, {
    description:
      'Sets the common order before the first trial. Codes: NOT_FOUND, VERSION_CONFLICT, ORDER_INCOMPLETE, COMPETITION_STARTED.',
  })
  @Needs('admin', 'director')
  async callingOrderSet(
    @Args('input') input: CallingOrderSetInput,
    @Viewer() viewer: Identity,
  ): Promise<CallingOrderSetPayload> {
    return this.shown(await this.service.setOrder(input, viewer), viewer);
  }

  private async shown(
    change: GroupChange,
    viewer: Identity,
  ): Promise<{ readonly callingGroup: CallingGroup | null; readonly userErrors: UserError[] }> {
    if ('refusal' in change) return { callingGroup: null, userErrors: [change.refusal] };
    const loaded = await this.reader.find(change.id, viewer);
    return { callingGroup: loaded && groupObject(loaded), userErrors: [] };
  }
}

/** What a meet shows of its groups. */
@Resolver(() => Meet)
export class CallingOfMeetResolver {
  private readonly loader = loaderPerRequest((rows: readonly Meet['row'][]) => this.reader.ofMeets(rows));

  constructor(private readonly reader: CallingReader) {}

  @ResolveField(() => [CallingGroup], { description: 'By time; those without a time last.' })
  async callingGroups(@Parent() meet: Meet, @Context() context: RequestContext): Promise<CallingGroup[]> {
    const groups = await this.loader(context).load(meet.row);
    return groups.filter((group) => !isGroupKeptBack(group, context.identity)).map(groupObject);
  }
}

/** What a competition shows of whom it is called with. */
@Resolver(() => Competition)
export class CallingOfCompetitionResolver {
  private readonly loader = loaderPerRequest((rows: readonly Competition['row'][]) =>
    this.reader.ofCompetitions(rows),
  );

  constructor(private readonly reader: CallingReader) {}

  @ResolveField(() => CallingGroup, { nullable: true, description: 'Null: it is called by itself.' })
  async callingGroup(
    @Parent() { row }: Competition,
    @Context() context: RequestContext,
  ): Promise<CallingGroup | null> {
    if (row.callingGroupId === null) return null;
    const loaded = await this.loader(context).load(row);
    return loaded && !isGroupKeptBack(loaded, context.identity) ? groupObject(loaded) : null;
  }
}
