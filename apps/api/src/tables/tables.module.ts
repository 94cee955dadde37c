import { Module } from '@nestjs/common';
import { EntriesModule } from '../entries/entries.module.js';
import { EntriesImportResolver } from './entries-import.resolver.js';
import { EntriesImportService } from './entries-import.service.js';
import { PastResultsImportService } from './past-results-import.service.js';
import { PastResultsResolver } from './past-results.resolver.js';
import { PastResultsService } from './past-results.service.js';

/** What comes in as a table: entries, and results of seasons past. */
@Module({
  imports: [EntriesModule],
  providers: [
    EntriesImportService,
    PastResultsImportService,
    PastResultsService,
    EntriesImportResolver,
    PastResultsResolver,
  ],
})
export class TablesModule {}
