import { Module } from '@nestjs/common';
import { BarResolver } from './bar.resolver.js';
import { ConfirmationResolver } from './confirmation.resolver.js';
import { ConfirmationService } from './confirmation.service.js';
import { DecisionResolver } from './decision.resolver.js';
import { JumpResolver } from './jump.resolver.js';
import { RecordingService } from './recording.service.js';
import { SafetyResolver } from './safety.resolver.js';
import { TrialResolver } from './trial.resolver.js';
import { TrialRulesResolver } from './trial-rules.resolver.js';

/** The journal of a competition: every trial, correction, ruling and signature goes in here. */
@Module({
  providers: [
    RecordingService,
    TrialResolver,
    JumpResolver,
    BarResolver,
    DecisionResolver,
    ConfirmationService,
    ConfirmationResolver,
    SafetyResolver,
    TrialRulesResolver,
  ],
  exports: [RecordingService],
})
export class RecordingModule {}
