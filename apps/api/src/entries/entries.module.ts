import { Module } from '@nestjs/common';
import { MeetsModule } from '../meets/meets.module.js';
import { AthletesResolver } from './athletes.resolver.js';
import { AthletesService } from './athletes.service.js';
import { EntriesResolver } from './entries.resolver.js';
import { EntriesService } from './entries.service.js';
import { StartListService } from './start-list.service.js';
import { StartListReader } from './start-list.reader.js';

/** Clubs, athletes and start lists: who competes. */
@Module({
  imports: [MeetsModule],
  providers: [
    AthletesService,
    EntriesService,
    StartListReader,
    StartListService,
    AthletesResolver,
    EntriesResolver,
  ],
  exports: [EntriesService, StartListService],
})
export class EntriesModule {}
