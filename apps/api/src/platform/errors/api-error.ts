import { GraphQLError } from 'graphql';

/** Every `extensions.code` that a top-level error may carry. The list is closed: clients may switch over it. */
export const ERROR_CODES = [
  'UNAUTHENTICATED',
  'FORBIDDEN',
  'BAD_USER_INPUT',
  'RATE_LIMITED',
  'QUERY_TOO_EXPENSIVE',
  'UNAVAILABLE',
  'INTERNAL',
] as const;
export type ErrorCode = (typeof ERROR_CODES)[number];

/** One thing wrong with what a client sent: where, which demand it breaks, and what to do. */
export interface FieldProblem {
  /** From the argument or variable inwards, e.g. `["input", "competitors", "3", "bib"]`. */
  readonly path: readonly string[];
  readonly rule: string;
  readonly message: string;
  readonly remedy: string;
}

export interface ApiErrorDetails {
  readonly fields?: readonly FieldProblem[];
  readonly retryAfterMs?: number;
  /** HTTP status when the request failed as a whole, before anything was executed. */
  readonly status?: number;
  readonly cause?: unknown;
}

/** A fault of the request or of the server, as a top-level GraphQL error. Business outcomes are `userErrors` instead. */
export class ApiError extends GraphQLError {
  constructor(code: ErrorCode, message: string, details: ApiErrorDetails = {}) {
    const { fields, retryAfterMs, status, cause } = details;
    super(message, {
      extensions: {
        code,
        ...(fields && { fields }),
        ...(retryAfterMs !== undefined && { retryAfterMs }),
        ...(status !== undefined && { http: { status } }),
      },
    });
    if (cause !== undefined) this.cause = cause;
  }
}

export function unauthenticated(message: string): ApiError {
  return new ApiError('UNAUTHENTICATED', message);
}

export function forbidden(message: string): ApiError {
  return new ApiError('FORBIDDEN', message);
}

/** Input that cannot be read at all; `fields` names each place, its rule and the remedy. */
export function badUserInput(message: string, fields: readonly FieldProblem[] = []): ApiError {
  return new ApiError('BAD_USER_INPUT', message, { fields });
}

/** The request as a whole is at fault: answered with `status` and never executed. */
export function badRequest(message: string, status = 400): ApiError {
  return new ApiError('BAD_USER_INPUT', message, { status });
}
