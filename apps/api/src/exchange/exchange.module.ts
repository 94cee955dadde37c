import { Module } from '@nestjs/common';
import { ExchangeResolver } from './exchange.resolver.js';
import { SheetImportService } from './sheet-import.service.js';

/** Sheets and result documents, in and out. */
@Module({ providers: [SheetImportService, ExchangeResolver] })
export class ExchangeModule {}
