import { Module } from '@nestjs/common';
import { BibsResolver } from './bibs.resolver.js';
import { BibsService } from './bibs.service.js';

/** Bibs of a whole meet. */
@Module({ providers: [BibsService, BibsResolver], exports: [BibsService] })
export class BibsModule {}
