import { Module, type DynamicModule } from '@nestjs/common';
import { GraphQLModule } from '@nestjs/graphql';
import { CAPABILITIES } from './capabilities.js';
import type { ExplorerOptions } from './platform/graphql/explorer.js';
import { YogaDriver, type YogaDriverOptions } from './platform/graphql/yoga.driver.js';
import { PlatformModule, type PlatformParts } from './platform/platform.module.js';

export interface AppParts extends PlatformParts {
  readonly explorer: ExplorerOptions | null;
  /** Proxies that say where a request came from. */
  readonly trustedProxies?: readonly string[];
  /** Origins of pages of others that may use `/graphql`, by HTTP and by WebSocket. */
  readonly allowedOrigins?: readonly string[];
}

@Module({})
export class AppModule {
  static of({ explorer, ...parts }: AppParts): DynamicModule {
    return {
      module: AppModule,
      imports: [
        PlatformModule.of(parts),
        GraphQLModule.forRoot<YogaDriverOptions>({
          driver: YogaDriver,
          path: '/graphql',
          autoSchemaFile: true,
          // Asking the schema everything about itself takes as long as building it; `npm run schema` does so.
          buildSchemaOptions: { skipCheck: true },
          explorer,
          log: parts.log,
          origins: parts.allowedOrigins ?? [],
          trustedProxies: parts.trustedProxies ?? [],
        }),
        ...CAPABILITIES,
      ],
    };
  }
}
