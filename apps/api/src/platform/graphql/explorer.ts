import type { FastifyRequest } from 'fastify';
import type { GraphiQLOptions } from 'graphql-yoga';
import type { HttpContext } from './request-parameters.js';

export interface ExplorerOptions {
  readonly defaultQuery: string;
  /** Given to a browser on this same machine only: the demo's token, so that the first mutation just works. */
  readonly token: () => string | null;
}

interface Explorer {
  readonly graphiql: false | ((request: Request, context: HttpContext) => GraphiQLOptions);
  readonly renderGraphiQL?: (options?: GraphiQLOptions) => Promise<string>;
}

/** The API explorer for browsers at the endpoint itself; every part of it is served from here. */
export function explorer(options: ExplorerOptions | null): Explorer {
  if (!options) return { graphiql: false };
  return {
    graphiql: (_request, { req }) => ({
      title: 'Sectorline explorer',
      defaultQuery: options.defaultQuery,
      ...headersFor(req, options.token()),
    }),
    renderGraphiQL: async (given) => {
      // Nine megabytes of editor: loaded when somebody opens it, not at the start.
      const { renderGraphiQL } = await import('@graphql-yoga/render-graphiql');
      return renderGraphiQL(given);
    },
  };
}

/**
 * A page of another site can fetch this address, too, so the token goes only where a person on this machine opened
 * the page: the browser says "document" by itself, and a foreign name that points here is refused.
 */
function headersFor(request: FastifyRequest, token: string | null): GraphiQLOptions {
  const opened = request.headers['sec-fetch-dest'] === 'document' && isLoopbackName(request.hostname);
  if (token === null || !opened || !isLoopback(request.ip)) return {};
  return { headers: JSON.stringify({ authorization: `Bearer ${token}` }, null, 2) };
}

function isLoopback(ip: string): boolean {
  return ip === '::1' || /^(::ffff:)?127\./.test(ip);
}

function isLoopbackName(name: string): boolean {
  return name === 'localhost' || name === '[::1]' || /^127\.\d+\.\d+\.\d+$/.test(name);
}
