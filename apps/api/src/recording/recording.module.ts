import { Module } from '@nestjs/common';
import { DecisionResolver } from './decision.resolver.js';
import { RecordingService } from './recording.service.js';
import { TrialResolver } from './trial.resolver.js';

/** The journal of a competition: every trial, correction, ruling and signature goes in here. */
@Module({
  providers: [RecordingService, TrialResolver, DecisionResolver],
  exports: [RecordingService],
})
export class RecordingModule {}
