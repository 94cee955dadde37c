import { Args, Context, ID, Mutation, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import { connectionOf, PageArgs } from '../platform/connections/connection.js';
import { loaderPerRequest } from '../platform/graphql/per-request.js';
import type { RequestContext } from '../platform/graphql/request-context.js';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Public, Viewer } from '../platform/identity/rights.js';
import { ReadId } from '../platform/inputs/object-id.js';
import { Club, clubObject } from '../platform/objects/club.type.js';
import { AthleteCreateInput, AthleteUpdateInput, ClubCreateInput } from './athletes.inputs.js';
import { AthletesService } from './athletes.service.js';
import {
  Athlete,
  AthleteConnection,
  AthleteCreatePayload,
  athleteObject,
  AthleteUpdatePayload,
  ClubConnection,
  ClubCreatePayload,
} from './athletes.types.js';

@Resolver(() => Athlete)
export class AthletesResolver {
  private readonly clubLoader = loaderPerRequest((rows: readonly Athlete['row'][]) =>
    this.service.clubsOf(rows),
  );

  constructor(private readonly service: AthletesService) {}

  @Query(() => ClubConnection, { description: 'By name.' })
  @Public()
  async clubs(@Args() args: PageArgs, @Viewer() viewer: Identity): Promise<ClubConnection> {
    return connectionOf(args, () => this.service.clubPage(args, viewer), clubObject);
  }

  @Query(() => Club, { nullable: true, description: 'Null: not there.' })
  @Public()
  async club(
    @Args('id', { type: () => ID }, new ReadId('Club')) id: string,
    @Viewer() viewer: Identity,
  ): Promise<Club | null> {
    const row = await this.service.findClub(id, viewer);
    return row && clubObject(row);
  }

  @Query(() => Athlete, { nullable: true, description: 'For directors and administrators. Null: not there.' })
  @Needs('admin', 'director')
  async athlete(
    @Args('id', { type: () => ID }, new ReadId('Athlete')) id: string,
    @Viewer() viewer: Identity,
  ): Promise<Athlete | null> {
    const row = await this.service.find(id, viewer);
    return row && athleteObject(row);
  }

  @Query(() => AthleteConnection, { description: 'By name. For directors and administrators.' })
  @Needs('admin', 'director')
  async athletes(@Args() args: PageArgs, @Viewer() viewer: Identity): Promise<AthleteConnection> {
    return connectionOf(args, () => this.service.page(args, viewer), athleteObject);
  }

  @ResolveField('club', () => Club, { nullable: true })
  async clubOf(@Parent() athlete: Athlete, @Context() context: RequestContext): Promise<Club | null> {
    const row = await this.clubLoader(context).load(athlete.row);
    return row && clubObject(row);
  }

  @Mutation(() => ClubCreatePayload, { description: 'Codes: NAME_TAKEN, ID_REUSED.' })
  @Needs('admin', 'director')
  async clubCreate(
    @Args('input') input: ClubCreateInput,
    @Viewer() viewer: Identity,
  ): Promise<ClubCreatePayload> {
    const made = await this.service.createClub(input, viewer);
    if ('refusal' in made) return { club: null, isReplay: false, userErrors: [made.refusal] };
    return { club: clubObject(made.row), isReplay: made.replayed, userErrors: [] };
  }

  @Mutation(() => AthleteCreatePayload, { description: 'Codes: NOT_FOUND, ID_REUSED.' })
  @Needs('admin', 'director')
  async athleteCreate(
    @Args('input') input: AthleteCreateInput,
    @Viewer() viewer: Identity,
  ): Promise<AthleteCreatePayload> {
    const made = await this.service.create(input, viewer);
    if ('refusal' in made) return { athlete: null, isReplay: false, userErrors: [made.refusal] };
    return { athlete: athleteObject(made.row), isReplay: made.replayed, userErrors: [] };
  }

  @Mutation(() => AthleteUpdatePayload, { description: 'Codes: NOT_FOUND.' })
  @Needs('admin', 'director')
  async athleteUpdate(
    @Args('input') input: AthleteUpdateInput,
    @Viewer() viewer: Identity,
  ): Promise<AthleteUpdatePayload> {
    const updated = await this.service.update(input, viewer);
    if ('refusal' in updated) return { athlete: null, userErrors: [updated.refusal] };
    return { athlete: athleteObject(updated.row), userErrors: [] };
  }
}
