import { Args, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { Competition } from '../platform/objects/competition.type.js';
import { Meet } from '../platform/objects/meet.type.js';
import { MeetEntryTermsSetInput } from './entry-terms.inputs.js';
import { EntryTermsService } from './entry-terms.service.js';
import {
  EntryChange,
  entryChangeObject,
  EntryTerms,
  entryTermsObject,
  MeetEntryTermsSetPayload,
} from './entry-terms.types.js';

/** Limits and closing time of a meet’s entries, for everybody who may see the meet. */
@Resolver(() => Meet)
export class EntryTermsResolver {
  constructor(private readonly service: EntryTermsService) {}

  @ResolveField(() => EntryTerms, { nullable: true, description: 'Null: nothing is laid down.' })
  async entryTerms(@Parent() { row }: Meet): Promise<EntryTerms | null> {
    const terms = await this.service.of(row.organisationId, row.id);
    return terms && entryTermsObject(terms);
  }

  @Mutation(() => MeetEntryTermsSetPayload, {
    description:
      'Lays down until when and how many may be entered; entries that are there already stay. Codes: NOT_FOUND, VERSION_CONFLICT.',
  })
  @Needs('admin', 'director')
  async meetEntryTermsSet(
    @Args('input') input: MeetEntryTermsSetInput,
    @Viewer() viewer: Identity,
  ): Promise<MeetEntryTermsSetPayload> {
    const set = await this.service.set(input, viewer);
    if ('refusal' in set) return { entryTerms: null, userErrors: [set.refusal] };
    return { entryTerms: entryTermsObject(set.row), userErrors: [] };
  }
}

/** What became of the entries of a competition. */
@Resolver(() => Competition)
export class EntryChangesResolver {
  constructor(private readonly service: EntryTermsService) {}

  @ResolveField(() => [EntryChange], {
    nullable: true,
    complexity: 50,
    description: 'Who was entered and withdrawn, in the order of time. For directors and administrators.',
  })
  async entryChanges(@Parent() { row }: Competition, @Viewer() viewer: Identity): Promise<EntryChange[]> {
    return (await this.service.changesOf(row, viewer)).map(entryChangeObject);
  }
}
