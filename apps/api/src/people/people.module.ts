import { Module } from '@nestjs/common';
import { PeopleResolver } from './people.resolver.js';
import { PeopleService } from './people.service.js';
import { MeetRolesResolver, RolesResolver } from './roles.resolver.js';
import { RolesService } from './roles.service.js';
import { SessionsResolver } from './sessions.resolver.js';
import { SessionsService } from './sessions.service.js';

/** Accounts, what each may do, and how their people come in. */
@Module({
  providers: [
    PeopleService,
    RolesService,
    SessionsService,
    PeopleResolver,
    RolesResolver,
    MeetRolesResolver,
    SessionsResolver,
  ],
})
export class PeopleModule {}
