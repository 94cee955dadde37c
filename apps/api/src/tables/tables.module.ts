import { Module } from '@nestjs/common';
import { EntriesModule } from '../entries/entries.module.js';
import { MeetsModule } from '../meets/meets.module.js';
import { EntriesExportService } from './entries-export.service.js';
import { EntriesImportResolver } from './entries-import.resolver.js';
import { EntriesImportService } from './entries-import.service.js';
import { PastResultsImportService } from './past-results-import.service.js';
import { PastResultsResolver } from './past-results.resolver.js';
import { PastResultsService } from './past-results.service.js';
import { TablesController } from './tables.controller.js';

/** What comes in and goes out as a table: entries, start lists, results of seasons past. */
@Module({
  imports: [EntriesModule, MeetsModule],
  controllers: [TablesController],
  providers: [
    EntriesImportService,
    EntriesExportService,
    PastResultsImportService,
    PastResultsService,
    EntriesImportResolver,
    PastResultsResolver,
  ],
})
export class TablesModule {}
