import { Module } from '@nestjs/common';
import { CombinedModule } from '../combined/combined.module.js';
import { ExchangeResolver } from './exchange.resolver.js';
import { SheetImportService } from './sheet-import.service.js';

/** Sheets and result documents, in and out. */
@Module({ imports: [CombinedModule], providers: [SheetImportService, ExchangeResolver] })
export class ExchangeModule {}
