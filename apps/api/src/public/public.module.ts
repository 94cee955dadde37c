import { Module } from '@nestjs/common';
import { MeetsModule } from '../meets/meets.module.js';
import { ResultsModule } from '../results/results.module.js';
import { ScoringModule } from '../scoring/scoring.module.js';
import { TimetableModule } from '../timetable/timetable.module.js';
import { PublicGraphql } from './contract/public-graphql.service.js';
import { DocumentsController } from './documents.controller.js';
import { EventStreams } from './event-streams.service.js';
import { PagesController } from './pages/pages.controller.js';
import { PagesService } from './pages/pages.service.js';
import { PublicEventsController } from './public-events.controller.js';
import { SnapshotsService } from './snapshots.service.js';

/** What the crowd sees: snapshots of what is published, for everybody alike. */
@Module({
  imports: [MeetsModule, ResultsModule, ScoringModule, TimetableModule],
  controllers: [DocumentsController, PublicEventsController, PagesController],
  providers: [SnapshotsService, EventStreams, PublicGraphql, PagesService],
  exports: [SnapshotsService],
})
export class PublicModule {}
