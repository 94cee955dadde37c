import { Module } from '@nestjs/common';
import { RecordingModule } from '../recording/recording.module.js';
import { CheckInResolver } from './check-in.resolver.js';
import { CheckInService } from './check-in.service.js';
import { FailedImplement } from './failed-implement.js';
import { ImplementsResolver } from './implements.resolver.js';
import { InspectionService } from './inspection.service.js';
import { RegisterService } from './register.service.js';
import { SpecificationResolver } from './specification.resolver.js';

/** Before the first trial and after a record: who is there, what is thrown, and whether it is right. */
@Module({
  imports: [RecordingModule],
  providers: [
    RegisterService,
    FailedImplement,
    InspectionService,
    CheckInService,
    ImplementsResolver,
    SpecificationResolver,
    CheckInResolver,
  ],
})
export class InspectionModule {}
