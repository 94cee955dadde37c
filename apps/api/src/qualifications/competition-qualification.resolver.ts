import type { CompetitionRow } from '#persistence';
import { Context, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { loaderPerRequest } from '../platform/graphql/per-request.js';
import type { RequestContext } from '../platform/graphql/request-context.js';
import { Competition } from '../platform/objects/competition.type.js';
import { QualificationsService } from './qualifications.service.js';
import { Qualification, qualificationObject } from './qualifications.types.js';

@Resolver(() => Competition)
export class CompetitionQualificationResolver {
  private readonly loader = loaderPerRequest((rows: readonly CompetitionRow[]) =>
    this.service.ofCompetitions(rows),
  );

  constructor(private readonly service: QualificationsService) {}

  @ResolveField(() => Qualification, {
    nullable: true,
    description: 'Of which it is a group or the final. Null: of none.',
  })
  async qualification(
    @Parent() { row }: Competition,
    @Context() context: RequestContext,
  ): Promise<Qualification | null> {
    const found = await this.loader(context).load(row);
    const isHidden = found === null || (await this.service.isKeptBack(found, context.identity));
    return isHidden ? null : qualificationObject(found);
  }
}
