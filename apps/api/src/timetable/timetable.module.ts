import { Module } from '@nestjs/common';
import { CrewResolver } from './crew.resolver.js';
import { CrewService } from './crew.service.js';
import { TimetableResolver } from './timetable.resolver.js';
import { TimetableService } from './timetable.service.js';

/** When and where competitions take place, and who works at them. */
@Module({
  providers: [TimetableService, TimetableResolver, CrewService, CrewResolver],
  exports: [CrewService, TimetableService],
})
export class TimetableModule {}
