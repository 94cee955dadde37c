import { Module } from '@nestjs/common';
import { CompetitionsResolver } from './competitions.resolver.js';
import { CompetitionsService } from './competitions.service.js';
import { MeetCopyService } from './meet-copy.service.js';
import { MeetsResolver } from './meets.resolver.js';
import { MeetsService } from './meets.service.js';

/** Meets and their competitions: what is held, under which rules. */
@Module({
  providers: [MeetsService, MeetCopyService, CompetitionsService, MeetsResolver, CompetitionsResolver],
  exports: [MeetsService],
})
export class MeetsModule {}
