import { Global, Module, type DynamicModule } from '@nestjs/common';
import { APP_FILTER, APP_GUARD, APP_PIPE } from '@nestjs/core';
import { CompetitionMemory } from './competition/competition-memory.js';
import { VersionWatch } from './competition/version-watch.js';
import { Database } from './database/database.js';
import { ErasureLog } from './erasures/erasure-log.js';
import { HealthController } from './health/health.controller.js';
import { ProblemFilter } from './health/problem.filter.js';
import { ReadinessProbe } from './health/readiness.js';
import { AccessMemory } from './identity/access-memory.js';
import { Doorkeeper } from './identity/doorkeeper.js';
import { IdentityResolver } from './identity/identity.resolver.js';
import { RightsGuard } from './identity/rights.guard.js';
import { Passwords } from './identity/passwords.js';
import { Throttle } from './identity/throttle.js';
import { TokenOffice } from './identity/token-office.js';
import { Tokens } from './identity/tokens.js';
import { CompetitionChanges } from './live/competition-changes.js';
import { LiveHub } from './graphql/live-hub.js';
import { PublicSettings } from './graphql/public-settings.js';
import { LiveBus } from './live/live-bus.js';
import { LiveConnections } from './live/live-connections.js';
import type { LiveTransport } from './live/live-transport.js';
import { InputPipe } from './inputs/input.pipe.js';
import { Log } from './log.js';
import { FrontEnd } from './web/front-end.js';
import type { WebFiles } from './web/web-files.js';

export interface PlatformParts {
  readonly database: Database;
  readonly tokens: Tokens;
  readonly log: Log;
  /** Whether tokens and people of the demonstration hold here; by default they do not. */
  readonly isDemo?: boolean;
  /** Pages for people, beside the API; absent: none. */
  readonly web?: WebFiles;
  /** How other instances on the same database are heard of; by default there are none. */
  readonly live?: LiveTransport;
  /** How many live connections one address may have; by default 100. */
  readonly livePerAddress?: number;
  /** The public contract answers free documents and introspection; by default it does not. */
  readonly publicIsOpen?: boolean;
  /** Where erasures are kept outside the database; by default nowhere. */
  readonly erasures?: ErasureLog;
}

/** What every capability stands on: the database, tokens and rights, form checks of inputs, the log. */
@Global()
@Module({})
export class PlatformModule {
  static of({
    database,
    tokens,
    log,
    isDemo = false,
    web = new Map(),
    live,
    livePerAddress = 100,
    publicIsOpen = false,
    erasures = new ErasureLog(null),
  }: PlatformParts): DynamicModule {
    const bus = new LiveBus(live);
    const access = new AccessMemory(database, bus);
    return {
      module: PlatformModule,
      controllers: [HealthController],
      providers: [
        { provide: Database, useValue: database },
        { provide: Tokens, useValue: tokens },
        { provide: Log, useValue: log },
        { provide: FrontEnd, useValue: new FrontEnd(web) },
        { provide: AccessMemory, useValue: access },
        { provide: Doorkeeper, useValue: new Doorkeeper(tokens, access, isDemo) },
        { provide: Passwords, useFactory: () => new Passwords() },
        { provide: Throttle, useFactory: () => new Throttle() },
        { provide: ReadinessProbe, useFactory: () => new ReadinessProbe(database, log) },
        { provide: LiveBus, useValue: bus },
        { provide: CompetitionChanges, useFactory: () => new CompetitionChanges(bus) },
        { provide: PublicSettings, useValue: new PublicSettings(publicIsOpen) },
        { provide: ErasureLog, useValue: erasures },
        VersionWatch,
        LiveHub,
        { provide: LiveConnections, useFactory: () => new LiveConnections({ perAddress: livePerAddress }) },
        { provide: APP_GUARD, useClass: RightsGuard },
        { provide: APP_PIPE, useClass: InputPipe },
        { provide: APP_FILTER, useFactory: () => new ProblemFilter(log) },
        CompetitionMemory,
        ...PLATFORM_PROVIDERS,
      ],
      exports: [
        Database,
        Tokens,
        Log,
        FrontEnd,
        AccessMemory,
        Doorkeeper,
        Passwords,
        Throttle,
        ReadinessProbe,
        PublicSettings,
        ErasureLog,
        LiveBus,
        LiveHub,
        LiveConnections,
        CompetitionChanges,
        CompetitionMemory,
      ],
    };
  }
}

/** Also read by the schema printer, which starts no server. */
export const PLATFORM_PROVIDERS = [TokenOffice, IdentityResolver];
