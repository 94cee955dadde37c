import type { LoggerService } from '@nestjs/common';

export const LOG_LEVELS = ['debug', 'info', 'warn', 'error', 'silent'] as const;
export type LogLevel = (typeof LOG_LEVELS)[number];

export type LogFields = Readonly<Record<string, string | number | boolean | null | undefined>>;

/**
 * One JSON object a line on standard output. Fields are chosen one by one by the caller: never a whole request,
 * header or input, so that no token and no birth date can come in by accident.
 */
export class Log implements LoggerService {
  constructor(
    private readonly threshold: LogLevel,
    private readonly sink: (line: string) => void = (line) => process.stdout.write(line),
  ) {}

  /** Whether lines of this level are written at all. */
  writes(level: Exclude<LogLevel, 'silent'>): boolean {
    return LOG_LEVELS.indexOf(level) >= LOG_LEVELS.indexOf(this.threshold);
  }

  write(level: Exclude<LogLevel, 'silent'>, message: string, fields: LogFields = {}): void {
    if (!this.writes(level)) return;
    this.sink(`${JSON.stringify({ at: new Date().toISOString(), level, message, ...fields })}\n`);
  }

  /** An unexpected error, with its stack; `traceId` is what the client was told. */
  failure(message: string, error: unknown, fields: LogFields = {}): void {
    const known = error instanceof Error;
    this.write('error', message, {
      ...fields,
      error: known ? `${error.name}: ${error.message}` : typeof error,
      stack: known ? error.stack : undefined,
    });
  }

  // The framework's own lines: its chatter about modules and routes is debug here.
  log(message: unknown, context?: unknown): void {
    this.write('debug', String(message), { context: String(context) });
  }

  debug(message: unknown, context?: unknown): void {
    this.log(message, context);
  }

  verbose(message: unknown, context?: unknown): void {
    this.log(message, context);
  }

  warn(message: unknown, context?: unknown): void {
    this.write('warn', String(message), { context: String(context) });
  }

  error(message: unknown, stack?: unknown, context?: unknown): void {
    if (message instanceof Error) this.failure('framework error', message, { context: String(context) });
    else this.write('error', String(message), { stack: String(stack), context: String(context) });
  }
}
