import { Module } from '@nestjs/common';
import { EntriesModule } from '../entries/entries.module.js';
import { BarResolver } from './bar.resolver.js';
import { CircleResolver } from './circle.resolver.js';
import { ConfirmationResolver } from './confirmation.resolver.js';
import { ConfirmationService } from './confirmation.service.js';
import { DecisionResolver } from './decision.resolver.js';
import { JumpResolver } from './jump.resolver.js';
import { ListResolver } from './list.resolver.js';
import { RecordingService } from './recording.service.js';
import { SafetyResolver } from './safety.resolver.js';
import { TrialResolver } from './trial.resolver.js';
import { TrialRulesResolver } from './trial-rules.resolver.js';

/** The journal of a competition: every trial, correction, ruling and signature goes in here. */
@Module({
  imports: [EntriesModule],
  providers: [
    RecordingService,
    TrialResolver,
    JumpResolver,
    BarResolver,
    DecisionResolver,
    ConfirmationService,
    ConfirmationResolver,
    SafetyResolver,
    CircleResolver,
    ListResolver,
    TrialRulesResolver,
  ],
  exports: [RecordingService],
})
export class RecordingModule {}
