import { Module } from '@nestjs/common';
import { EntriesModule } from '../entries/entries.module.js';
import { EntriesImportResolver } from './entries-import.resolver.js';
import { EntriesImportService } from './entries-import.service.js';

/** What comes in as a table: entries, and results of seasons past. */
@Module({
  imports: [EntriesModule],
  providers: [EntriesImportService, EntriesImportResolver],
})
export class TablesModule {}
