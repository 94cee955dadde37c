import { Module } from '@nestjs/common';
import { EntriesModule } from '../entries/entries.module.js';
import { CompetitionQualificationResolver } from './competition-qualification.resolver.js';
import { FinalDrawService } from './final-draw.service.js';
import { MeetQualificationsResolver } from './meet-qualifications.resolver.js';
import { QualificationsResolver } from './qualifications.resolver.js';
import { QualificationsService } from './qualifications.service.js';

/** Groups that are one qualification, who goes on from them, and the draw of the final. */
@Module({
  imports: [EntriesModule],
  providers: [
    QualificationsService,
    FinalDrawService,
    QualificationsResolver,
    MeetQualificationsResolver,
    CompetitionQualificationResolver,
  ],
})
export class QualificationsModule {}
