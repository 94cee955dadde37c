import { Context, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { loaderPerRequest } from '../platform/graphql/per-request.js';
import type { RequestContext } from '../platform/graphql/request-context.js';
import { CombinedEvent, combinedEventObject } from '../platform/objects/combined-event.type.js';
import { Meet } from '../platform/objects/meet.type.js';
import { CombinedEventsService } from './combined-events.service.js';

@Resolver(() => Meet)
export class MeetCombinedEventsResolver {
  private readonly loader = loaderPerRequest((rows: readonly Meet['row'][]) => this.events.ofMeets(rows));

  constructor(private readonly events: CombinedEventsService) {}

  @ResolveField(() => [CombinedEvent], { complexity: 5, description: 'By title.' })
  async combinedEvents(@Parent() meet: Meet, @Context() context: RequestContext): Promise<CombinedEvent[]> {
    return (await this.loader(context).load(meet.row)).map(combinedEventObject);
  }
}
