import { Args, Context, ID, Mutation, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import { loaderPerRequest } from '../platform/graphql/per-request.js';
import type { RequestContext } from '../platform/graphql/request-context.js';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Public, Viewer } from '../platform/identity/rights.js';
import { ReadId } from '../platform/inputs/object-id.js';
import { Competition, competitionObject } from '../platform/objects/competition.type.js';
import { Meet, meetObject } from '../platform/objects/meet.type.js';
import { CompetitionCreateInput, CompetitionWithholdInput } from './competitions.inputs.js';
import { CompetitionsService } from './competitions.service.js';
import { MeetsService } from './meets.service.js';
import { CompetitionCreatePayload, CompetitionWithholdPayload } from './meets.types.js';

@Resolver(() => Competition)
export class CompetitionsResolver {
  private readonly meetLoader = loaderPerRequest((rows: readonly Competition['row'][]) =>
    this.meets.meetsOf(rows),
  );

  constructor(
    private readonly meets: MeetsService,
    private readonly competitions: CompetitionsService,
  ) {}

  @Query(() => Competition, {
    nullable: true,
    description: 'Null: not there, or not published and not yours.',
  })
  @Public()
  async competition(
    @Args('id', { type: () => ID }, new ReadId('Competition')) id: string,
    @Viewer() viewer: Identity,
  ): Promise<Competition | null> {
    const staged = await this.meets.findCompetition(id, viewer);
    return staged && competitionObject(staged.competition);
  }

  @ResolveField(() => Meet)
  async meet(@Parent() competition: Competition, @Context() context: RequestContext): Promise<Meet> {
    return meetObject(await this.meetLoader(context).load(competition.row));
  }

  @Mutation(() => CompetitionCreatePayload, {
    description:
      'Sets a competition up as a draft. Codes: NOT_FOUND, UNKNOWN_EDITION, IMPLEMENT_NOT_EXPECTED, QUALIFYING_MISSING, QUALIFYING_NOT_EXPECTED, VERTICAL_MISSING, VERTICAL_NOT_EXPECTED, PLAN_NOT_EXPECTED, WRONG_UNIT, PLAN, NOT_RISING, BAR_NOT_RISING, BAR_STEP_TOO_SMALL, BAR_STEP_GROWS, BAR_STEP_NOT_UNIFORM, ID_REUSED.',
  })
  @Needs('admin', 'director')
  async competitionCreate(
    @Args('input') input: CompetitionCreateInput,
    @Viewer() viewer: Identity,
  ): Promise<CompetitionCreatePayload> {
    const made = await this.competitions.create(input, viewer);
    if ('row' in made)
      return { competition: competitionObject(made.row), isReplay: made.replayed, userErrors: [] };
    const userErrors = 'refusals' in made ? made.refusals : [made.refusal];
    return { competition: null, isReplay: false, userErrors };
  }

  @Mutation(() => CompetitionWithholdPayload, {
    description:
      'Keeps everything of a competition from those who do not work at it, until a moment or until it is let go. Where clubs are scored or a final is drawn from it, that waits for it as well. Codes: NOT_FOUND.',
  })
  @Needs('admin', 'director')
  async competitionWithhold(
    @Args('input') input: CompetitionWithholdInput,
    @Viewer() viewer: Identity,
  ): Promise<CompetitionWithholdPayload> {
    const done = await this.competitions.withhold(input, viewer);
    if ('refusal' in done) return { competition: null, userErrors: [done.refusal] };
    return { competition: competitionObject(done.row), userErrors: [] };
  }
}
