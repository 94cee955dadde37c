import { Args, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { Meet } from '../platform/objects/meet.type.js';
import { EnteredImportService } from './entered-import.service.js';
import { EnteredResultSetInput, EnteredResultsImportInput } from './entered-results.inputs.js';
import { EnteredResultsService } from './entered-results.service.js';
import {
  EnteredResult,
  EnteredResultSetPayload,
  EnteredResultsImportPayload,
} from './entered-results.types.js';
import { enteredView } from './entered-view.js';

/** Results of running events and relays, entered so that a team score is whole. */
@Resolver(() => Meet)
export class EnteredResultsResolver {
  constructor(
    private readonly results: EnteredResultsService,
    private readonly imports: EnteredImportService,
  ) {}

  @ResolveField(() => [EnteredResult], {
    description: 'Results of running events and relays that count, in the order of entering.',
  })
  async enteredResults(@Parent() meet: Meet): Promise<EnteredResult[]> {
    return (await this.results.of(meet.row)).map(enteredView);
  }

  @Mutation(() => EnteredResultSetPayload, {
    description:
      'Enters the result of a running event or a relay, or one that replaces it; nothing is overwritten. Codes: NOT_FOUND, BIB_TWICE, PLACE_OR_STATUS, PLACES, REASON_MISSING, REASON_NOT_EXPECTED, REPLACED_ALREADY, ID_REUSED.',
  })
  @Needs('director', 'referee')
  async enteredResultSet(
    @Args('input') input: EnteredResultSetInput,
    @Viewer() viewer: Identity,
  ): Promise<EnteredResultSetPayload> {
    const set = await this.results.set(input, viewer);
    if ('row' in set) return { result: enteredView(set.row), isReplay: set.replayed, userErrors: [] };
    const userErrors = 'refusals' in set ? set.refusals : [set.refusal];
    return { result: null, isReplay: false, userErrors };
  }

  @Mutation(() => EnteredResultsImportPayload, {
    description:
      'Enters the results of a table, all or none. Codes: NOT_FOUND, ID_REUSED, CSV_MISSING; of the table NUL, MIXED_ENCODINGS, WRONG_ENCODING, QUOTES, EMPTY, NO_LINES, TOO_LARGE, TOO_MANY_LINES, UNKNOWN_COLUMN, COLUMN_TWICE, MISSING_COLUMN, CELL_COUNT, CELL, CELL_EMPTY, MORE_PROBLEMS; of its results BIB_MISSING, BIB_TWICE, PLACE_OR_STATUS, PLACES, RELAY_OR_NOT, TOO_MANY_IN_RESULT, ENTERED_ALREADY.',
  })
  @Needs('director', 'referee')
  async enteredResultsImport(
    @Args('input') input: EnteredResultsImportInput,
    @Viewer() viewer: Identity,
  ): Promise<EnteredResultsImportPayload> {
    const imported = await this.imports.import(input, viewer);
    if ('refusals' in imported) return { results: [], isReplay: false, userErrors: imported.refusals };
    const { rows, replayed } = imported;
    return { results: rows.map(enteredView), isReplay: replayed, userErrors: [] };
  }
}
