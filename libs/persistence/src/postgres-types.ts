import pg from 'pg';

const DATE_OID = 1082;

type Parser = (text: string) => unknown;

/** A date is a day and stays text; as a `Date` it would be a moment, and another day in another time zone. */
export const POSTGRES_TYPES: pg.CustomTypesConfig = {
  getTypeParser(oid: number, format?: 'text' | 'binary'): Parser {
    if (oid === DATE_OID && format !== 'binary') return (text) => text;
    return pg.types.getTypeParser(oid, format ?? 'text') as Parser;
  },
};
