import { GraphQLError } from 'graphql';
import { ApiError, ERROR_CODES } from './api-error.js';
import { isDatabaseUnavailable } from './unavailable.js';

const CODES: ReadonlySet<unknown> = new Set(ERROR_CODES);

/**
 * The error that may be shown for any error thrown on the way of a request. Errors of this API pass; GraphQL's own
 * complaints about a document or its variables become BAD_USER_INPUT; a database that cannot be reached UNAVAILABLE;
 * all else is INTERNAL and says nothing about itself. The error behind it is kept as `cause` for the log.
 */
export function publicError(error: unknown): GraphQLError {
  const origin = originOf(error);
  if (error instanceof GraphQLError && origin instanceof GraphQLError) {
    if (CODES.has(origin.extensions?.code)) return error;
    if (isFaultOfRequest(error)) return withCode(error);
  }
  if (isDatabaseUnavailable(origin)) {
    return located(
      error,
      new ApiError('UNAVAILABLE', 'The database does not answer now; try again shortly.', { cause: origin }),
    );
  }
  return located(
    error,
    new ApiError('INTERNAL', 'Something went wrong here; the trace id names it in the log.', {
      cause: origin,
    }),
  );
}

/** GraphQL wraps what a resolver throws; the innermost error is the one that was thrown. */
function originOf(error: unknown): unknown {
  let origin = error;
  while (origin instanceof GraphQLError && origin.originalError) origin = origin.originalError;
  return origin;
}

/** Without a path nothing was executed yet; with one, only an argument's value can be the client's fault. */
function isFaultOfRequest(error: GraphQLError): boolean {
  return error.path === undefined || /^Argument "/.test(error.message);
}

/** 400, or 200 for clients that ask for plain application/json, as GraphQL over HTTP says for documents. */
const BY_SPECIFICATION = { spec: true, status: 400 };

function withCode(error: GraphQLError): GraphQLError {
  return new GraphQLError(error.message, {
    nodes: error.nodes,
    source: error.source,
    positions: error.positions,
    path: error.path,
    extensions: { code: 'BAD_USER_INPUT', http: error.extensions?.http ?? BY_SPECIFICATION },
  });
}

function located(error: unknown, shown: ApiError): GraphQLError {
  if (!(error instanceof GraphQLError) || error.path === undefined) return shown;
  const placed = new GraphQLError(shown.message, {
    nodes: error.nodes,
    path: error.path,
    extensions: shown.extensions,
  });
  placed.cause = shown.cause;
  return placed;
}
