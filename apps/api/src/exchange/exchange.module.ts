import { Module } from '@nestjs/common';
import { CombinedModule } from '../combined/combined.module.js';
import { ExchangeResolver } from './exchange.resolver.js';
import { MeetExchangeResolver } from './meet-exchange.resolver.js';
import { MeetSheetService } from './meet-sheet.service.js';
import { SheetImportService } from './sheet-import.service.js';

/** Sheets and result documents, in and out. */
@Module({
  imports: [CombinedModule],
  providers: [SheetImportService, MeetSheetService, ExchangeResolver, MeetExchangeResolver],
})
export class ExchangeModule {}
