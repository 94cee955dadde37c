import { Module } from '@nestjs/common';
import { JournalResolver } from './journal.resolver.js';
import { LiveResolver } from './live.resolver.js';
import { ResultsResolver } from './results.resolver.js';
import { ResultsService } from './results.service.js';
import { TableMemory } from './table-memory.js';

/** What everybody reads: tables, who is up, what is needed now; and the journal for those who work at the meet. */
@Module({
  providers: [TableMemory, ResultsService, ResultsResolver, LiveResolver, JournalResolver],
  exports: [ResultsService],
})
export class ResultsModule {}
