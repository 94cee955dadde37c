import { sqlStateOf } from '#persistence';

/** SQLSTATE classes and codes (PostgreSQL, appendix A) and system errors that mean: not now. */
const UNAVAILABLE = [
  /^08/, // connection exceptions
  /^53300$/, // too many connections
  /^57P0[1-5]$/, // shutting down, starting up, crashed
  /^(57014|55P03|25P03)$/, // too slow: a statement, a lock or a transaction was given up
  /^(40001|40P01)$/, // given up in favour of another transaction
  /^57014$/, // took longer than the statement timeout, also waiting for a lock
  /^25P0[34]$/, // stood idle in a transaction for too long
  /^E(CONN(REFUSED|RESET|ABORTED)|PIPE|TIMEDOUT|NOTFOUND|HOSTUNREACH|NETUNREACH)$/,
];

/** The pool and the driver report these without a code. */
const UNAVAILABLE_MESSAGES = /timeout exceeded when trying to connect|Connection terminated|not queryable/i;

/** True when the database could not be reached or went away, so that the same request may succeed later. */
export function isDatabaseUnavailable(error: unknown): boolean {
  if (error instanceof AggregateError) return error.errors.some(isDatabaseUnavailable);
  const code = sqlStateOf(error);
  if (code !== null) return UNAVAILABLE.some((form) => form.test(code));
  return error instanceof Error && UNAVAILABLE_MESSAGES.test(error.message);
}
