import type { FastifyRequest } from 'fastify';
import type { GraphQLParams, Plugin } from 'graphql-yoga';
import { badRequest } from '../errors/api-error.js';

/** What the HTTP side hands to GraphQL beside the request itself. */
export interface HttpContext {
  readonly req: FastifyRequest;
}

/** Takes the parameters from the body that was read under our own limits, or from the query string. */
export function useRequestParameters(): Plugin<Record<string, unknown>, HttpContext> {
  return {
    onRequestParse({ serverContext, setRequestParser }) {
      const { method, body, query } = serverContext.req;
      if (method === 'GET') setRequestParser(() => fromQuery(query as Record<string, unknown>));
      else if (method === 'POST') setRequestParser(() => fromBody(body));
    },
  };
}

function fromBody(body: unknown): GraphQLParams {
  if (Array.isArray(body)) throw badRequest('Batches are not accepted: send one operation in each request.');
  if (typeof body !== 'object' || body === null)
    throw badRequest('The body must be a JSON object with a "query".');
  return body;
}

function fromQuery(query: Readonly<Record<string, unknown>>): GraphQLParams {
  return {
    query: single(query, 'query'),
    operationName: single(query, 'operationName'),
    variables: object(query, 'variables'),
    extensions: object(query, 'extensions'),
  };
}

function single(query: Readonly<Record<string, unknown>>, key: string): string | undefined {
  const value = query[key];
  if (Array.isArray(value)) throw badRequest(`"${key}" may be given once.`);
  return typeof value === 'string' && value !== '' ? value : undefined;
}

function object(query: Readonly<Record<string, unknown>>, key: string): Record<string, unknown> | undefined {
  const text = single(query, key);
  if (text === undefined) return undefined;
  try {
    const value: unknown = JSON.parse(text);
    if (value === null) return undefined;
    if (typeof value === 'object' && !Array.isArray(value)) return value as Record<string, unknown>;
  } catch {
    // Said below, like any other value that is not an object.
  }
  throw badRequest(`"${key}" must be a JSON object.`);
}
