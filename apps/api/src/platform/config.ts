import { isIP } from 'node:net';
import { join } from 'node:path';
import { LOG_LEVELS, type LogLevel } from './log.js';

/** What the environment decides about one running server. */
export interface Config {
  /** Null: an embedded PostgreSQL of our own. */
  readonly databaseUrl: string | null;
  /** Streaming replicas from which finished competitions are read. */
  readonly replicaUrls: readonly string[];
  /** Holds the embedded database and the secret. */
  readonly dataDirectory: string;
  readonly host: string;
  readonly port: number;
  /** The environment asked for this very port, so no other one will do. */
  readonly portIsFixed: boolean;
  readonly production: boolean;
  readonly explorer: boolean;
  readonly demo: boolean;
  readonly logLevel: LogLevel;
  readonly secret: string | undefined;
  /** Addresses or ranges of proxies whose word is taken for where a request came from; empty: of none. */
  readonly trustedProxies: readonly string[];
  /** How instances on one database hear of one another; `process`: there is only one. */
  readonly liveBus: 'process' | 'postgres';
  /** The public contract answers free documents and introspection: for development. */
  readonly publicIsOpen: boolean;
  /** Origins of pages of others that may use `/graphql`, by HTTP and by WebSocket; the public contract is everybody's. */
  readonly allowedOrigins: readonly string[];
  /** Where erasures are kept, to be done again after a backup was restored. */
  readonly erasures: string;
  /** Live connections of one address. */
  readonly livePerAddress: number;
  /** Backups while the server runs; every 0 hours: none. */
  readonly backups: { readonly directory: string; readonly everyHours: number; readonly keep: number };
}

type Environment = Readonly<Record<string, string | undefined>>;

const DEFAULT_PORT = 4000;

/** Reads the environment once. Throws with the variable's name when a value cannot be used. */
export function readConfig(environment: Environment): Config {
  const production = environment.NODE_ENV === 'production';
  const dataDirectory = given(environment.SECTORLINE_DATA) ?? '.sectorline';
  const databaseUrl = given(environment.DATABASE_URL) ?? null;
  return {
    databaseUrl,
    replicaUrls:
      given(environment.DATABASE_REPLICA_URLS)
        ?.split(',')
        .map((url) => url.trim()) ?? [],
    dataDirectory,
    // From other machines only when asked for: tablets at the circles need HOST=0.0.0.0.
    host: given(environment.HOST) ?? '127.0.0.1',
    port: portOf(environment.PORT),
    portIsFixed: production && given(environment.PORT) !== undefined,
    production,
    explorer: flag(environment, 'EXPLORER', !production),
    // A real server may be anybody's: invented meets go there only when asked for.
    demo: flag(environment, 'DEMO', !production && databaseUrl === null),
    logLevel: levelOf(environment.LOG_LEVEL, production),
    secret: given(environment.SECTORLINE_SECRET),
    trustedProxies: listOf(environment, 'TRUSTED_PROXIES'),
    // Nobody else is on a database of our own.
    erasures: given(environment.SECTORLINE_ERASURES) ?? join(dataDirectory, 'erasures.jsonl'),
    publicIsOpen: flag(environment, 'PUBLIC_OPEN', false),
    allowedOrigins: originsOf(environment, 'ALLOWED_ORIGINS'),
    livePerAddress: countOf(environment, 'LIVE_PER_ADDRESS', 100),
    backups: {
      directory: given(environment.BACKUP_DIRECTORY) ?? join(dataDirectory, 'backups'),
      // Whoever runs a server has a way of their own.
      everyHours:
        environment.BACKUP_HOURS === '0'
          ? 0
          : countOf(environment, 'BACKUP_HOURS', databaseUrl === null ? 1 : 0),
      keep: countOf(environment, 'BACKUP_KEEP', 48),
    },
    liveBus: busOf(environment.LIVE_BUS, databaseUrl === null ? 'process' : 'postgres'),
  };
}

function given(value: string | undefined): string | undefined {
  return value === undefined || value === '' ? undefined : value;
}

function listOf(environment: Environment, name: string): readonly string[] {
  const parts = given(environment[name])?.split(',') ?? [];
  for (const part of parts) {
    if (isIP(part.trim().split('/', 1)[0]!) === 0)
      throw new Error(`${name} must be addresses or ranges like 10.0.0.0/8, not "${part.trim()}".`);
  }
  return parts.map((part) => part.trim());
}

function busOf(text: string | undefined, otherwise: Config['liveBus']): Config['liveBus'] {
  const value = given(text);
  if (value === undefined) return otherwise;
  if (value === 'process' || value === 'postgres') return value;
  throw new Error(`LIVE_BUS must be process or postgres, not "${value}".`);
}

function originsOf(environment: Environment, name: string): readonly string[] {
  const parts =
    given(environment[name])
      ?.split(',')
      .map((part) => part.trim()) ?? [];
  for (const part of parts) {
    if (!URL.canParse(part) || new URL(part).origin !== part)
      throw new Error(`${name} must be origins like https://club.example, not "${part}".`);
  }
  return parts;
}

function countOf(environment: Environment, name: string, otherwise: number): number {
  const value = given(environment[name]);
  if (value === undefined) return otherwise;
  if (/^[1-9]\d{0,6}$/.test(value)) return Number(value);
  throw new Error(`${name} must be a whole number from 1, not "${value}".`);
}

function portOf(text: string | undefined): number {
  const value = given(text);
  if (value === undefined) return DEFAULT_PORT;
  const port = /^\d{1,5}$/.test(value) ? Number(value) : Number.NaN;
  if (port <= 65535) return port;
  throw new Error(`PORT must be a number from 0 to 65535, not "${value}".`);
}

function flag(environment: Environment, name: string, otherwise: boolean): boolean {
  const value = given(environment[name]);
  if (value === undefined) return otherwise;
  if (value === '1' || value === '0') return value === '1';
  throw new Error(`${name} must be 1 or 0, not "${value}".`);
}

function levelOf(text: string | undefined, production: boolean): LogLevel {
  const value = given(text);
  if (value === undefined) return production ? 'info' : 'warn';
  const level = LOG_LEVELS.find((known) => known === value);
  if (level) return level;
  throw new Error(`LOG_LEVEL must be one of ${LOG_LEVELS.join(', ')}, not "${value}".`);
}
