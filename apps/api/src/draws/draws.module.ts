import { Module } from '@nestjs/common';
import { EntriesModule } from '../entries/entries.module.js';
import { DrawsResolver } from './draws.resolver.js';
import { DrawsService } from './draws.service.js';

/** Draws of start lists from a published seed. */
@Module({ imports: [EntriesModule], providers: [DrawsService, DrawsResolver] })
export class DrawsModule {}
