import { Module } from '@nestjs/common';
import { TechniqueModule } from '../technique/technique.module.js';
import { AnalyticsResolver } from './analytics.resolver.js';
import { AnalyticsService } from './analytics.service.js';
import { CompetitionNotesService } from './competition-notes.service.js';
import { HistoryService } from './history.service.js';
import { OpenParts } from './open-parts.js';
import { SquadResolver } from './squad.resolver.js';
import { SquadService } from './squad.service.js';
import { WorkerPools } from './worker-pools.js';

/** What marks and notes say: histories, links of faults with distance and fouls, the squad, the flight. */
@Module({
  imports: [TechniqueModule],
  providers: [
    HistoryService,
    AnalyticsService,
    SquadService,
    CompetitionNotesService,
    OpenParts,
    WorkerPools,
    AnalyticsResolver,
    SquadResolver,
  ],
  exports: [AnalyticsService],
})
export class AnalyticsModule {}
