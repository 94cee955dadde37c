import type { CompetitionRow, DrawRow } from '#persistence';
import { Args, Context, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { loaderPerRequest } from '../platform/graphql/per-request.js';
import type { RequestContext } from '../platform/graphql/request-context.js';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { Competition, competitionObject } from '../platform/objects/competition.type.js';
import { Draw, drawObject } from '../platform/objects/draw.type.js';
import { StartListDrawInput } from './draws.inputs.js';
import { DrawsService } from './draws.service.js';
import { StartListDrawPayload } from './draws.types.js';

/** Draws of flights and of the order of competition. */
@Resolver(() => Competition)
export class DrawsResolver {
  private readonly drawsLoader = loaderPerRequest((rows: readonly Competition['row'][]) =>
    this.service.ofCompetitions(rows),
  );

  constructor(private readonly service: DrawsService) {}

  @ResolveField(() => [Draw], {
    complexity: 3,
    description: 'How the start list was drawn: every draw in its order, the last one in force.',
  })
  async draws(@Parent() { row }: Competition, @Context() context: RequestContext): Promise<Draw[]> {
    const kept = await this.drawsLoader(context).load(row);
    return kept.map((draw) => drawObject(draw.row, row.unit, draw));
  }

  @Mutation(() => StartListDrawPayload, {
    description:
      'Draws flights and the order of competition from a published seed, before the first trial. Codes: NOT_FOUND, SIGNED_OFF, COMPETITION_STARTED, VERSION_CONFLICT, REASON_MISSING, START_LIST_EMPTY, FLIGHTS, FLIGHTS_OR_SIZE, FLIGHT_SIZE, NO_SEED_MARKS, ID_REUSED.',
  })
  @Needs('admin', 'director')
  async startListDraw(
    @Args('input') input: StartListDrawInput,
    @Viewer() viewer: Identity,
  ): Promise<StartListDrawPayload> {
    const drawing = await this.service.draw(input, viewer);
    if ('refusal' in drawing)
      return { flights: [], draw: null, competition: null, isReplay: false, userErrors: [drawing.refusal] };
    const { flights, draw, competition, replayed } = drawing;
    return {
      flights,
      draw: draw && (await this.asKept(draw, competition)),
      competition: competitionObject(competition),
      isReplay: replayed,
      userErrors: [],
    };
  }

  /** As it lies with the others: a request that is sent again may find that another one is in force by now. */
  private async asKept({ id }: DrawRow, competition: CompetitionRow): Promise<Draw | null> {
    const [kept = []] = await this.service.ofCompetitions([competition]);
    const own = kept.find(({ row }) => row.id === id);
    return own ? drawObject(own.row, competition.unit, own) : null;
  }
}
