import { languageOf, LANGUAGES, type Addresses, type Language } from '#scoreboard';
import type { FastifyRequest } from 'fastify';

/** Who looks at a page: in which language, and by which name this server was called. */
export interface Visit {
  readonly language: Language;
  /** The language was asked for in the address, so that links keep it. */
  readonly isChosen: boolean;
  /** Such as `https://results.example`. */
  readonly origin: string;
}

const HOST = /^[\w.-]+(:\d+)?$|^\[[\da-f:]+\](:\d+)?$/i;

export function visitOf(request: FastifyRequest): Visit {
  const { lang } = request.query as { readonly lang?: unknown };
  const chosen = LANGUAGES.find((language) => language === lang);
  // What calls itself by no name of a host gets addresses without one.
  const origin = HOST.test(request.host) ? `${request.protocol}://${request.host}` : '';
  const language = chosen ?? languageOf(wishedIn(request.headers['accept-language'] ?? ''));
  return { language, isChosen: chosen !== undefined, origin };
}

/** `de-AT,de;q=0.8,en;q=0.5`: the languages by how much they are wished (RFC 9110, 12.5.4). */
function wishedIn(header: string): string[] {
  return header
    .split(',')
    .map((part) => {
      const [tag = '', ...parameters] = part.split(';').map((text) => text.trim());
      const quality = Number(parameters.find((text) => text.startsWith('q='))?.slice(2) ?? 1);
      return { tag, quality: Number.isFinite(quality) ? quality : 0 };
    })
    .filter(({ tag, quality }) => tag !== '' && quality > 0)
    .sort((a, b) => b.quality - a.quality)
    .map(({ tag }) => tag);
}

export const FOLDERS = {
  meet: 'meets',
  competition: 'competitions',
  club: 'clubs',
  athlete: 'athletes',
} as const;

export function addressesFor({ language, isChosen }: Visit): NonNullable<Addresses> {
  return (kind, id) => `/${FOLDERS[kind]}/${id}${isChosen ? `?lang=${language}` : ''}`;
}
