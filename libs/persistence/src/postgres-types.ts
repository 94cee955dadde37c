import pg from 'pg';

const DATE_OID = 1082;
const TIMESTAMPTZ_OID = 1184;

type Parser = (text: string) => unknown;

const readInstant = pg.types.getTypeParser(TIMESTAMPTZ_OID) as (text: string) => Date;

/**
 * A date is a day and stays text: as a `Date` it would be a moment, and another day in another time zone. An instant
 * is text too, in RFC 3339 and UTC, as rows carry it.
 */
export const POSTGRES_TYPES: pg.CustomTypesConfig = {
  getTypeParser(oid: number, format?: 'text' | 'binary'): Parser {
    if (oid === DATE_OID && format !== 'binary') return (text) => text;
    if (oid === TIMESTAMPTZ_OID && format !== 'binary') return (text) => readInstant(text).toISOString();
    return pg.types.getTypeParser(oid, format ?? 'text') as Parser;
  },
};
