import { Args, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { Athlete } from '../entries/athletes.types.js';
import { connectionOf, PageArgs } from '../platform/connections/connection.js';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { PastResultsImportService } from './past-results-import.service.js';
import { PastResultsImportInput, PastResultWithdrawInput } from './past-results.inputs.js';
import { PastResultsService } from './past-results.service.js';
import {
  PastResultConnection,
  pastResultObject,
  PastResultsImportPayload,
  pastResultsImportPayload,
  PastResultWithdrawPayload,
} from './past-results.types.js';

/** What an athlete did before, or elsewhere. */
@Resolver(() => Athlete)
export class PastResultsResolver {
  constructor(
    private readonly results: PastResultsService,
    private readonly imports: PastResultsImportService,
  ) {}

  @ResolveField(() => PastResultConnection, {
    description: 'Results from before, or from elsewhere, the latest first. As private as the athlete.',
  })
  async pastResults(
    @Parent() { row }: Athlete,
    @Args() args: PageArgs,
    @Viewer() viewer: Identity,
  ): Promise<PastResultConnection> {
    return connectionOf(args, () => this.results.page(row, args, viewer), pastResultObject);
  }

  @Mutation(() => PastResultsImportPayload, {
    description:
      'Keeps the results of a table as history of its athletes, all or none; look at it with `isDryRun` first. Codes: CSV_MISSING, FINGERPRINT_MISSING, CHANGED_SINCE, ID_REUSED; of the table those of entriesImport; of its lines NAME_INCOMPLETE, ATHLETE_UNKNOWN, SEX_MISSING, DECISION_MISSING, NOT_ASKED, NO_CANDIDATE, CLUB_UNKNOWN, KNOWN_ALREADY, IMPLEMENT_MISSING, IMPLEMENT_NOT_EXPECTED, WIND_MISSING, WIND_NOT_EXPECTED, NOT_YET.',
  })
  @Needs('admin', 'director')
  async pastResultsImport(
    @Args('input') input: PastResultsImportInput,
    @Viewer() viewer: Identity,
  ): Promise<PastResultsImportPayload> {
    return pastResultsImportPayload(await this.imports.import(input, viewer));
  }

  @Mutation(() => PastResultWithdrawPayload, {
    description:
      'Takes a past result back; it is kept and counts no more. Codes: NOT_FOUND, REPLACED_ALREADY, ID_REUSED.',
  })
  @Needs('admin', 'director')
  async pastResultWithdraw(
    @Args('input') input: PastResultWithdrawInput,
    @Viewer() viewer: Identity,
  ): Promise<PastResultWithdrawPayload> {
    const done = await this.results.withdraw(input, viewer);
    if ('refusal' in done) return { pastResult: null, isReplay: false, userErrors: [done.refusal] };
    return { pastResult: pastResultObject(done.row), isReplay: done.replayed, userErrors: [] };
  }
}
