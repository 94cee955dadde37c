import { Module } from '@nestjs/common';
import { EvidenceReader } from './evidence.js';
import { RatificationResolver } from './ratification.resolver.js';
import { RatificationService } from './ratification.service.js';
import {
  AthleteBestsResolver,
  ClaimsResolver,
  ClubRecordsResolver,
  MeetRecordsResolver,
} from './records.resolver.js';
import { RecordsService } from './records.service.js';
import { MarkMemory } from './standing-marks.js';
import {
  ClubStartingMarksResolver,
  MeetStartingMarksResolver,
  StartingMarksResolver,
} from './starting-marks.resolver.js';
import { StartingMarksService } from './starting-marks.service.js';
import { RowBestsResolver, WOULD_BE_RESOLVERS } from './would-be.resolver.js';

/** Bests and records: what they begin with, what marks claim, what referees decide, and the lists of them all. */
@Module({
  providers: [
    MarkMemory,
    EvidenceReader,
    RecordsService,
    RatificationService,
    StartingMarksService,
    ClubRecordsResolver,
    MeetRecordsResolver,
    AthleteBestsResolver,
    ClaimsResolver,
    RatificationResolver,
    StartingMarksResolver,
    ClubStartingMarksResolver,
    MeetStartingMarksResolver,
    RowBestsResolver,
    ...WOULD_BE_RESOLVERS,
  ],
  exports: [RecordsService],
})
export class RecordsModule {}
