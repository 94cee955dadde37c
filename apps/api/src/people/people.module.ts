import { Module } from '@nestjs/common';
import { DeviceLinksResolver, MeetDeviceLinksResolver } from './device-links.resolver.js';
import { DeviceLinksService } from './device-links.service.js';
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
    DeviceLinksService,
    DeviceLinksResolver,
    MeetDeviceLinksResolver,
  ],
})
export class PeopleModule {}
