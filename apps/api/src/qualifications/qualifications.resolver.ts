import { Args, Context, Int, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { QualificationRow } from '#persistence';
import { loaderPerRequest } from '../platform/graphql/per-request.js';
import type { RequestContext } from '../platform/graphql/request-context.js';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { Competition, competitionObject } from '../platform/objects/competition.type.js';
import { drawObject } from '../platform/objects/draw.type.js';
import { MarkText } from '../platform/scalars/mark.js';
import { FinalDrawService } from './final-draw.service.js';
import { qualifyingView, type Merged } from './merged-groups.js';
import {
  QualificationCreateInput,
  QualificationDissolveInput,
  QualificationFinalDrawInput,
} from './qualifications.inputs.js';
import { QualificationsService } from './qualifications.service.js';
import {
  Qualification,
  QualificationCreatePayload,
  QualificationDissolvePayload,
  QualificationFinalDrawPayload,
  qualificationObject,
  QualifyingTable,
} from './qualifications.types.js';

/** Qualifications in groups and the finals that come of them. */
@Resolver(() => Qualification)
export class QualificationsResolver {
  private readonly mergedLoader = loaderPerRequest((rows: readonly QualificationRow[]) =>
    Promise.all(rows.map((row) => this.service.merged(row))),
  );

  constructor(
    private readonly service: QualificationsService,
    private readonly finals: FinalDrawService,
  ) {}

  @ResolveField(() => MarkText, { description: 'Whoever reaches it goes on, and takes no further trial.' })
  async standard(@Parent() of: Qualification, @Context() context: RequestContext): Promise<string> {
    return (await this.merged(of, context)).standard;
  }

  @ResolveField(() => Int, {
    description: 'The best of the others go on until there are so many, over all groups.',
  })
  async fill(@Parent() of: Qualification, @Context() context: RequestContext): Promise<number> {
    return (await this.merged(of, context)).fill;
  }

  @ResolveField(() => [Competition], { complexity: 4, description: 'In their order.' })
  async groups(@Parent() of: Qualification, @Context() context: RequestContext): Promise<Competition[]> {
    return (await this.merged(of, context)).groups.map(({ row }) => competitionObject(row));
  }

  @ResolveField(() => Competition, { nullable: true, description: 'Null: not set up yet.' })
  async final(@Parent() { row }: Qualification): Promise<Competition | null> {
    const final = await this.service.finalOf(row);
    return final && competitionObject(final);
  }

  @ResolveField(() => QualifyingTable, { description: 'All groups together, as they stand now.' })
  async table(@Parent() of: Qualification, @Context() context: RequestContext): Promise<QualifyingTable> {
    return qualifyingView(await this.merged(of, context));
  }

  @Mutation(() => QualificationCreatePayload, {
    description:
      'Says which competitions are the groups of one qualification. Codes: NOT_FOUND, GROUP_TWICE, NOT_A_QUALIFICATION, DIFFERS, FINAL_DIFFERS, FINAL_TAKEN, ID_REUSED.',
  })
  @Needs('admin', 'director')
  async qualificationCreate(
    @Args('input') input: QualificationCreateInput,
    @Viewer() viewer: Identity,
  ): Promise<QualificationCreatePayload> {
    const made = await this.service.create(input, viewer);
    if ('row' in made)
      return { qualification: qualificationObject(made.row), isReplay: made.replayed, userErrors: [] };
    const userErrors = 'refusals' in made ? made.refusals : [made.refusal];
    return { qualification: null, isReplay: false, userErrors };
  }

  @Mutation(() => QualificationDissolvePayload, {
    description: 'Takes back a qualification that was set up in error. Codes: NOT_FOUND, FINAL_DRAWN.',
  })
  @Needs('admin', 'director')
  async qualificationDissolve(
    @Args('input') { qualificationId }: QualificationDissolveInput,
    @Viewer() viewer: Identity,
  ): Promise<QualificationDissolvePayload> {
    const refused = await this.service.dissolve(qualificationId, viewer);
    return refused ? { qualificationId: null, userErrors: [refused] } : { qualificationId, userErrors: [] };
  }

  @Mutation(() => QualificationFinalDrawPayload, {
    description:
      'Makes the start list of the final of those who go on and draws their order by lot from a published seed, once all groups are signed off or with a reason before that. Codes: NOT_FOUND, GROUPS_OPEN, QUESTIONS_OPEN, NOBODY_QUALIFIED, BIB_TWICE, FINAL_MISSING, FINAL_SET, FINAL_DIFFERS, FINAL_TAKEN, NOT_QUALIFIED, SIGNED_OFF, COMPETITION_STARTED, REASON_MISSING, ID_REUSED.',
  })
  @Needs('admin', 'director')
  async qualificationFinalDraw(
    @Args('input') input: QualificationFinalDrawInput,
    @Viewer() viewer: Identity,
  ): Promise<QualificationFinalDrawPayload> {
    const drawing = await this.finals.draw(input, viewer);
    if ('refusal' in drawing)
      return { order: [], draw: null, final: null, isReplay: false, userErrors: [drawing.refusal] };
    const { order, draw, final, replayed } = drawing;
    return {
      order,
      draw: draw && final && drawObject(draw, final.unit, await this.service.besides(draw)),
      final: final && competitionObject(final),
      isReplay: replayed,
      userErrors: [],
    };
  }

  private merged({ row }: Qualification, context: RequestContext): Promise<Merged> {
    return this.mergedLoader(context).load(row);
  }
}
