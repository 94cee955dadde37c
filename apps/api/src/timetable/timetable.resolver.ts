import { Args, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { globalId } from '../platform/inputs/global-id.js';
import { Meet } from '../platform/objects/meet.type.js';
import { TimetableDelayInput, TimetableSetInput } from './timetable.inputs.js';
import { TimetableService } from './timetable.service.js';
import { Timetable, TimetableDelayPayload, TimetableSetPayload } from './timetable.types.js';
import { timetableView } from './timetable-view.js';

/** The timetable of a meet, for everybody who may see the meet. */
@Resolver(() => Meet)
export class TimetableResolver {
  constructor(private readonly timetables: TimetableService) {}

  @ResolveField(() => Timetable, { nullable: true, description: 'Null: there is none yet.' })
  async timetable(@Parent() { row }: Meet): Promise<Timetable | null> {
    const planned = await this.timetables.of(row.organisationId, row.id);
    return planned && timetableView(planned);
  }

  @Mutation(() => TimetableSetPayload, {
    description:
      'Plans the meet anew; competitions start when their slots do. Codes: NOT_FOUND, VERSION_CONFLICT, FACILITY_TWICE, UNKNOWN_FACILITY, SHARED_WITH_ITSELF, SLOT_TWICE, SLOT_EMPTY, UNKNOWN_COMPETITION.',
  })
  @Needs('admin', 'director')
  async timetableSet(
    @Args('input') input: TimetableSetInput,
    @Viewer() viewer: Identity,
  ): Promise<TimetableSetPayload> {
    const change = await this.timetables.set(input, viewer);
    if ('refusals' in change) return { timetable: null, userErrors: [...change.refusals] };
    return { timetable: timetableView(change.planned), userErrors: [] };
  }

  @Mutation(() => TimetableDelayPayload, {
    description:
      'Moves a competition and whatever depends on it, and tells everybody. Codes: NOT_FOUND, VERSION_CONFLICT, NOT_PLANNED.',
  })
  @Needs('admin', 'director')
  async timetableDelay(
    @Args('input') input: TimetableDelayInput,
    @Viewer() viewer: Identity,
  ): Promise<TimetableDelayPayload> {
    const change = await this.timetables.delay(input, viewer);
    if ('refusals' in change) {
      return { timetable: null, movedCompetitions: [], userErrors: [...change.refusals] };
    }
    return {
      timetable: timetableView(change.planned),
      movedCompetitions: change.moved.map((id) => globalId('Competition', id)),
      userErrors: [],
    };
  }
}
