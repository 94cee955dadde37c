import { Context, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { loaderPerRequest } from '../platform/graphql/per-request.js';
import type { RequestContext } from '../platform/graphql/request-context.js';
import { Meet } from '../platform/objects/meet.type.js';
import { QualificationsService } from './qualifications.service.js';
import { Qualification, qualificationObject } from './qualifications.types.js';

@Resolver(() => Meet)
export class MeetQualificationsResolver {
  private readonly loader = loaderPerRequest((rows: readonly Meet['row'][]) => this.service.ofMeets(rows));

  constructor(private readonly service: QualificationsService) {}

  @ResolveField(() => [Qualification], { complexity: 4, description: 'By title.' })
  async qualifications(
    @Parent() { row }: Meet,
    @Context() context: RequestContext,
  ): Promise<Qualification[]> {
    const rows = await this.loader(context).load(row);
    const hidden = await Promise.all(rows.map((one) => this.service.isKeptBack(one, context.identity)));
    return rows.filter((_one, at) => !hidden[at]).map(qualificationObject);
  }
}
