import { GraphQLError, type ExecutionResult } from 'graphql';
import type { Plugin } from 'graphql-yoga';
import { publicError } from '../errors/classify.js';
import type { Log } from '../log.js';
import type { HttpContext } from './request-parameters.js';

type Result = ExecutionResult<unknown, { http?: { status?: number } }>;

/**
 * The last word on every error before it leaves: a code of the closed list, the trace id, and for what was not
 * expected one line in the log under the same id.
 */
export function useErrors(log: Log): Plugin<Record<string, unknown>, HttpContext> {
  const finish = (result: Result, traceId: string): Result => {
    if (!result.errors) return result;
    const errors = result.errors.map((error) => finished(error, traceId, log));
    return { ...result, errors, ...statusOf(result, errors) };
  };
  return {
    onResultProcess(payload) {
      const { result } = payload;
      const traceId = payload.serverContext.req.id;
      if (Symbol.asyncIterator in result)
        payload.setResult(mapped(result as AsyncIterable<Result>, (one) => finish(one, traceId)));
      else payload.setResult(finish(result as Result, traceId));
    },
  };
}

/** Always a new error: those of a document are remembered with it and must not carry one request's trace id. */
function finished(error: GraphQLError, traceId: string, log: Log): GraphQLError {
  const shown = publicError(error);
  const { code } = shown.extensions;
  if (code === 'INTERNAL' || code === 'UNAVAILABLE') {
    const what = code === 'INTERNAL' ? 'unexpected error' : 'database unavailable';
    log.failure(what, shown.cause, { traceId, path: shown.path?.join('.') });
  }
  return new GraphQLError(shown.message, {
    nodes: shown.nodes,
    source: shown.source,
    positions: shown.positions,
    path: shown.path,
    extensions: { ...shown.extensions, traceId },
  });
}

/** A result without any data says by its status, too, whose fault that is. */
function statusOf(result: Result, errors: readonly GraphQLError[]): Partial<Result> {
  if (result.data) return {};
  const codes = new Set(errors.map((error) => error.extensions.code));
  const status = codes.has('INTERNAL') ? 500 : codes.has('UNAVAILABLE') ? 503 : null;
  return status === null ? {} : { extensions: { ...result.extensions, http: { status } } };
}

/** Passes on at once that nobody reads any more, also while something is waited for; a generator would not. */
function mapped<T>(source: AsyncIterable<T>, change: (one: T) => T): AsyncIterable<T> {
  return {
    [Symbol.asyncIterator]: () => {
      const from = source[Symbol.asyncIterator]();
      return {
        next: async () => {
          const step = await from.next();
          return step.done ? { done: true, value: undefined } : { done: false, value: change(step.value) };
        },
        return: async () => {
          await from.return?.();
          return { done: true, value: undefined };
        },
      };
    },
  };
}
