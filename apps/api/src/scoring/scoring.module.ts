import { Module } from '@nestjs/common';
import { CombinedModule } from '../combined/combined.module.js';
import { ClubTableService } from './club-table.service.js';
import { EnteredImportService } from './entered-import.service.js';
import { EnteredResultsResolver } from './entered-results.resolver.js';
import { EnteredResultsService } from './entered-results.service.js';
import { ScoringResolver } from './scoring.resolver.js';
import { ScoringService } from './scoring.service.js';
import { StandingEvents } from './standing-events.js';

/** What a meet is worth to its clubs: how it is scored, and the table of the clubs at any moment. */
@Module({
  imports: [CombinedModule],
  providers: [
    ScoringService,
    StandingEvents,
    ClubTableService,
    EnteredResultsService,
    EnteredImportService,
    ScoringResolver,
    EnteredResultsResolver,
  ],
  exports: [ClubTableService],
})
export class ScoringModule {}
