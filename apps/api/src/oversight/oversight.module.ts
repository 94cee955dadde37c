import { Module } from '@nestjs/common';
import { CompetitionOversightResolver, MeetOversightResolver } from './oversight.resolver.js';
import { OversightService } from './oversight.service.js';

/** What director and referee see of a meet as a whole. */
@Module({ providers: [OversightService, MeetOversightResolver, CompetitionOversightResolver] })
export class OversightModule {}
