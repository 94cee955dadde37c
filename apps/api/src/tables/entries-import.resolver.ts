import { Args, Mutation, Resolver } from '@nestjs/graphql';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { EntriesImportInput } from './entries-import.inputs.js';
import { EntriesImportService } from './entries-import.service.js';
import { EntriesImportPayload, entriesImportPayload } from './entries-import.types.js';

/** Entries from a table. */
@Resolver()
export class EntriesImportResolver {
  constructor(private readonly entries: EntriesImportService) {}

  @Mutation(() => EntriesImportPayload, {
    description:
      'Enters everybody of a table, all or none; look at it with `isDryRun` first. Codes: CSV_MISSING, FINGERPRINT_MISSING, CHANGED_SINCE, LATE_REASON_MISSING, ID_REUSED, NOT_FOUND; of the table NUL, MIXED_ENCODINGS, WRONG_ENCODING, QUOTES, EMPTY, NO_LINES, TOO_LARGE, TOO_MANY_LINES, UNKNOWN_COLUMN, COLUMN_TWICE, MISSING_COLUMN, CELL_COUNT, CELL, CELL_EMPTY, MORE_PROBLEMS; of its lines COMPETITION_UNKNOWN, COMPETITION_AMBIGUOUS, NAME_INCOMPLETE, ATHLETE_UNKNOWN, SEX_MISSING, DECISION_MISSING, NOT_ASKED, NO_CANDIDATE, CLUB_UNKNOWN and those of competitorEnter.',
  })
  @Needs('admin', 'director')
  async entriesImport(
    @Args('input') input: EntriesImportInput,
    @Viewer() viewer: Identity,
  ): Promise<EntriesImportPayload> {
    return entriesImportPayload(await this.entries.import(input, viewer));
  }
}
