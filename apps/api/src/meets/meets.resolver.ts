import { Args, Context, ID, Mutation, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import { isKeptBack } from '../platform/competition/visible.js';
import { connectionOf, PageArgs } from '../platform/connections/connection.js';
import { loaderPerRequest } from '../platform/graphql/per-request.js';
import type { RequestContext } from '../platform/graphql/request-context.js';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Public, Viewer } from '../platform/identity/rights.js';
import { ReadId } from '../platform/inputs/object-id.js';
import { Competition, competitionObject } from '../platform/objects/competition.type.js';
import { Meet, meetObject } from '../platform/objects/meet.type.js';
import { MeetCopyInput } from './meet-copy.inputs.js';
import { MeetCopyService } from './meet-copy.service.js';
import { MeetCreateInput, MeetPublishInput, MeetSecondPersonSetInput } from './meets.inputs.js';
import { MeetsService } from './meets.service.js';
import {
  MeetConnection,
  MeetCopyPayload,
  MeetCreatePayload,
  MeetPublishPayload,
  MeetSecondPersonSetPayload,
} from './meets.types.js';

@Resolver(() => Meet)
export class MeetsResolver {
  private readonly competitionLoader = loaderPerRequest((rows: readonly Meet['row'][]) =>
    this.service.competitionsOf(rows),
  );

  constructor(
    private readonly service: MeetsService,
    private readonly copies: MeetCopyService,
  ) {}

  @Query(() => MeetConnection, {
    description: 'Published meets, the latest first; an administrator sees all.',
  })
  @Public()
  async meets(@Args() args: PageArgs, @Viewer() viewer: Identity): Promise<MeetConnection> {
    return connectionOf(args, () => this.service.page(args, viewer), meetObject);
  }

  @Query(() => Meet, { nullable: true, description: 'Null: not there, or not published and not yours.' })
  @Public()
  async meet(
    @Args('id', { type: () => ID }, new ReadId('Meet')) id: string,
    @Viewer() viewer: Identity,
  ): Promise<Meet | null> {
    const row = await this.service.find(id, viewer);
    return row && meetObject(row);
  }

  @ResolveField(() => [Competition], { description: 'By time; those without a time last.' })
  async competitions(@Parent() meet: Meet, @Context() context: RequestContext): Promise<Competition[]> {
    const rows = await this.competitionLoader(context).load(meet.row);
    return rows.filter((row) => !isKeptBack(row, context.identity)).map(competitionObject);
  }

  @Mutation(() => MeetCreatePayload, {
    description: 'Codes: DATES_NOT_IN_ORDER, UNKNOWN_TIME_ZONE, UNKNOWN_EDITION, ID_REUSED.',
  })
  @Needs('admin')
  async meetCreate(
    @Args('input') input: MeetCreateInput,
    @Viewer() viewer: Identity,
  ): Promise<MeetCreatePayload> {
    const made = await this.service.create(input, viewer);
    if ('refusal' in made) return { meet: null, isReplay: false, userErrors: [made.refusal] };
    return { meet: meetObject(made.row), isReplay: made.replayed, userErrors: [] };
  }

  @Mutation(() => MeetCopyPayload, {
    description:
      'Sets up a meet like one that there is, on another day: competitions, calling groups, qualifications, combined events, timetable, scoring and terms of entry; no entries and no results. Codes: NOT_FOUND, ID_REUSED.',
  })
  @Needs('admin')
  async meetCopy(@Args('input') input: MeetCopyInput, @Viewer() viewer: Identity): Promise<MeetCopyPayload> {
    const made = await this.copies.copy(input, viewer);
    if ('refusal' in made) return { meet: null, isReplay: false, userErrors: [made.refusal] };
    return { meet: meetObject(made.row), isReplay: made.replayed, userErrors: [] };
  }

  @Mutation(() => MeetPublishPayload, { description: 'Lets everybody see the meet. Codes: NOT_FOUND.' })
  @Needs('admin', 'director')
  async meetPublish(
    @Args('input') input: MeetPublishInput,
    @Viewer() viewer: Identity,
  ): Promise<MeetPublishPayload> {
    const published = await this.service.publish(input.meetId, viewer);
    if ('refusal' in published) return { meet: null, userErrors: [published.refusal] };
    return { meet: meetObject(published.row), userErrors: [] };
  }

  @Mutation(() => MeetSecondPersonSetPayload, {
    description: 'Whether signatures and reopenings need a second person from now on. Codes: NOT_FOUND.',
  })
  @Needs('admin', 'director')
  async meetSecondPersonSet(
    @Args('input') input: MeetSecondPersonSetInput,
    @Viewer() viewer: Identity,
  ): Promise<MeetSecondPersonSetPayload> {
    const set = await this.service.setSecondPerson(input, viewer);
    if ('refusal' in set) return { meet: null, userErrors: [set.refusal] };
    return { meet: meetObject(set.row), userErrors: [] };
  }
}
