import { Module } from '@nestjs/common';
import { RecordingModule } from '../recording/recording.module.js';
import { PostingService } from './posting.service.js';
import { ProceedingsService } from './proceedings.service.js';
import { ProtestRuling } from './protest-ruling.service.js';
import { ProtestsResolver } from './protests.resolver.js';
import { ProtestsService } from './protests.service.js';

/** Results are announced, protested and decided. */
@Module({
  imports: [RecordingModule],
  providers: [ProceedingsService, PostingService, ProtestRuling, ProtestsService, ProtestsResolver],
})
export class ProtestsModule {}
