import { flat, h, LANGUAGES, type Part, type Tree } from '#scoreboard';
import { dataBlock, htmlOf } from './html.js';
import { OWN_NAMES, pageWord } from './page-words.js';
import type { Visit } from './visit.js';

/** One page for people. */
export interface Page {
  readonly title: string;
  readonly description: string;
  /** Without the server's name and without a language. */
  readonly path: string;
  /** How it looks: `plain`, in a frame on another page, on a wall, for the announcer. */
  readonly kind: 'plain' | 'framed' | 'screen' | 'announcer';
  /** From the list of meets to here, as address and text. */
  readonly trail: readonly (readonly [address: string, text: string])[];
  readonly body: readonly Part[];
  /** Addresses of what it runs; it works without. */
  readonly scripts: readonly string[];
  /** For search engines. */
  readonly data: object | null;
}

const SITE = 'Sectorline';

/** The page as HTML, whole. */
export function pageHtml(page: Page, visit: Visit): string {
  const { language } = visit;
  const head = htmlOf(headOf(page, visit)) + (page.data ? dataBlock(page.data) : '');
  const body = htmlOf(bodyOf(page, visit));
  return `<!DOCTYPE html>\n<html lang="${language}"><head>${head}</head><body class="${page.kind}">${body}</body></html>\n`;
}

function headOf({ title, description, path, kind, scripts }: Page, { language, origin }: Visit): Tree[] {
  const canonical = `${origin}${path}`;
  const meta = (name: string, content: string): Tree => h('meta', { name, content });
  const graph = (property: string, content: string): Tree => h('meta', { property, content });
  return flat([
    h('meta', { charset: 'utf-8' }),
    meta('viewport', 'width=device-width, initial-scale=1'),
    h('title', {}, title === SITE ? SITE : `${title} · ${SITE}`),
    meta('description', description),
    meta('color-scheme', 'light dark'),
    kind === 'plain'
      ? [
          h('link', { rel: 'canonical', href: canonical }),
          LANGUAGES.map((one) =>
            h('link', { rel: 'alternate', hreflang: one, href: `${canonical}?lang=${one}` }),
          ),
          graph('og:type', 'website'),
          graph('og:site_name', SITE),
          graph('og:title', title),
          graph('og:description', description),
          graph('og:url', canonical),
          graph('og:locale', language),
        ]
      : meta('robots', 'noindex'),
    h('link', { rel: 'icon', href: '/desk-icon.svg', type: 'image/svg+xml' }),
    h('link', { rel: 'stylesheet', href: '/pages.css' }),
    scripts.map((src) => h('script', { type: 'module', src })),
  ]);
}

function bodyOf({ kind, trail, body, path }: Page, { language, isChosen }: Visit): Tree[] {
  if (kind === 'framed' || kind === 'screen') return [h('main', { id: 'table' }, body)];
  const home = isChosen ? `/?lang=${language}` : '/';
  return flat([
    h('a', { class: 'skip', href: '#table' }, pageWord('skip', language)),
    h(
      'header',
      { class: 'band' },
      h(
        'div',
        { class: 'band-in' },
        h('a', { class: 'brand', href: home }, SITE),
        trail.length > 0 &&
          h(
            'nav',
            { 'aria-label': pageWord('where', language) },
            h(
              'ul',
              { class: 'trail' },
              trail.map(([address, text]) => h('li', {}, h('a', { href: address }, text))),
            ),
          ),
      ),
    ),
    h('main', { id: 'table' }, body),
    h(
      'footer',
      { class: 'page-foot' },
      h('p', {}, pageWord('safety', language)),
      h(
        'nav',
        { 'aria-label': pageWord('languages', language) },
        h(
          'ul',
          { class: 'links' },
          LANGUAGES.map((one) =>
            h('li', {}, h('a', { href: `${path}?lang=${one}`, hreflang: one, lang: one }, OWN_NAMES[one])),
          ),
        ),
      ),
    ),
  ]);
}
