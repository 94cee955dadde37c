import type { ColumnOptions, ValueTransformer } from 'typeorm';

/** Instants leave the database as RFC 3339 text in UTC; the column keeps microseconds, the text milliseconds. */
const asText: ValueTransformer = {
  to: (value: unknown) => value,
  from: (value: Date | null) => (value === null ? null : value.toISOString()),
};

/** An instant that may be absent. */
export const OPTIONAL_INSTANT: ColumnOptions = { type: 'timestamptz', nullable: true, transformer: asText };

/** An instant that the database's clock sets when none is given. */
export const SET_BY_CLOCK: ColumnOptions = {
  type: 'timestamptz',
  default: () => 'clock_timestamp()',
  transformer: asText,
};

/** An instant that is given. */
export const INSTANT: ColumnOptions = { type: 'timestamptz', transformer: asText };
