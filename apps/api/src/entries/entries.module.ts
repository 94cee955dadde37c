import { Module } from '@nestjs/common';
import { MeetsModule } from '../meets/meets.module.js';
import { AthletesResolver } from './athletes.resolver.js';
import { AthletesService } from './athletes.service.js';
import { EnteringService } from './entering.service.js';
import { ErasureService } from './erasure.service.js';
import { EntriesResolver } from './entries.resolver.js';
import { EntriesService } from './entries.service.js';
import { EntryChangesResolver, EntryTermsResolver } from './entry-terms.resolver.js';
import { EntryTermsService } from './entry-terms.service.js';
import { StartListService } from './start-list.service.js';
import { StartListReader } from './start-list.reader.js';

/** Clubs, athletes and start lists: who competes. */
@Module({
  imports: [MeetsModule],
  providers: [
    AthletesService,
    ErasureService,
    EntriesService,
    EnteringService,
    StartListReader,
    StartListService,
    EntryTermsService,
    AthletesResolver,
    EntryTermsResolver,
    EntryChangesResolver,
    EntriesResolver,
  ],
  exports: [EntriesService, EnteringService, StartListService],
})
export class EntriesModule {}
