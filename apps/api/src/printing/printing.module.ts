import { Module } from '@nestjs/common';
import { BibsModule } from '../bibs/bibs.module.js';
import { MeetsModule } from '../meets/meets.module.js';
import { RecordsModule } from '../records/records.module.js';
import { ResultsModule } from '../results/results.module.js';
import { ScoringModule } from '../scoring/scoring.module.js';
import { Press } from './pdf/press.js';
import { PrintingController } from './printing.controller.js';
import { PrintingService } from './printing.service.js';

/** Papers: start lists, field sheets, results, record forms, first three, club table, bibs. */
@Module({
  imports: [BibsModule, MeetsModule, ResultsModule, ScoringModule, RecordsModule],
  controllers: [PrintingController],
  providers: [PrintingService, Press],
})
export class PrintingModule {}
