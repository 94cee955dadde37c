import { Module } from '@nestjs/common';
import { CombinedEventsResolver } from './combined-events.resolver.js';
import { CombinedImportService } from './combined-import.service.js';
import { CombinedEventsService } from './combined-events.service.js';
import { CombinedRecordingResolver } from './combined-recording.resolver.js';
import { CombinedRecordingService } from './combined-recording.service.js';
import { CombinedScoresService } from './combined-scores.service.js';
import { CombinedSetupResolver } from './combined-setup.resolver.js';
import { CombinedSetupService } from './combined-setup.service.js';
import { MeetCombinedEventsResolver } from './meet-combined-events.resolver.js';

/** Decathlon, heptathlon and other combined events, counted from competitions of the meet and from what is entered. */
@Module({
  providers: [
    CombinedEventsService,
    CombinedSetupService,
    CombinedImportService,
    CombinedScoresService,
    CombinedRecordingService,
    CombinedEventsResolver,
    CombinedSetupResolver,
    CombinedRecordingResolver,
    MeetCombinedEventsResolver,
  ],
  exports: [CombinedImportService, CombinedScoresService],
})
export class CombinedModule {}
