/** Why there is no embedded server, by what can be done about it. */
export type EmbeddedFault =
  | 'NO_BINARIES'
  | 'NOT_EXECUTABLE'
  | 'NO_ACCOUNT'
  | 'NO_PLACE'
  | 'DATA_GONE'
  | 'DATA_OF_OTHERS'
  | 'OTHER_VERSION'
  | 'INIT_FAILED'
  | 'START_FAILED'
  | 'LOCKED'
  | 'NOT_STOPPED';

const USE_OWN = 'Or set DATABASE_URL to a PostgreSQL server of your own (14 or newer).';

/** The embedded server can't be had. The message says what is wrong and, in its last sentences, what to do. */
export class EmbeddedError extends Error {
  override readonly name = 'EmbeddedError';
  constructor(
    readonly fault: EmbeddedFault,
    what: string,
    readonly remedy: string,
    options?: ErrorOptions,
  ) {
    super(`${what} ${remedy} ${USE_OWN}`, options);
  }
}
