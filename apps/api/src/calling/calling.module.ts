import { Module } from '@nestjs/common';
import { EntriesModule } from '../entries/entries.module.js';
import { CallingReader } from './calling-reader.js';
import { CallingOfCompetitionResolver, CallingOfMeetResolver, CallingResolver } from './calling.resolver.js';
import { CallingService } from './calling.service.js';
import { GroupLoader } from './loaded-group.js';

/** Calling groups: competitions that take turns at one place. */
@Module({
  imports: [EntriesModule],
  providers: [
    GroupLoader,
    CallingReader,
    CallingService,
    CallingResolver,
    CallingOfMeetResolver,
    CallingOfCompetitionResolver,
  ],
})
export class CallingModule {}
