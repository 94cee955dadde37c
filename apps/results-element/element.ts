import { h, languageOf, wordingOf, type Addresses, type Tree, type Wording } from '#scoreboard';
import boardStyle from './board.css?inline';
import { Following, type Freshness } from './follow.js';
import { News } from './news.js';
import { patch } from './patch.js';
import { SUBJECTS, timeZoneOf, type Snapshot, type Subject } from './subjects.js';

const STYLE = new CSSStyleSheet();
STYLE.replaceSync(boardStyle);

const FOLDERS = { meet: 'meets', competition: 'competitions', club: 'clubs', athlete: 'athletes' } as const;

/**
 * A live table on anybody's page: `<sectorline-results competition="ID">`. What stands inside, such as a frame with the
 * same table, is shown until the first document is there, and stays when scripts are off or the server is out of reach.
 */
export class SectorlineResults extends HTMLElement {
  static readonly observedAttributes = [
    ...SUBJECTS.map(({ attribute }) => attribute),
    ...['server', 'lang', 'heading', 'announce'],
  ];

  private board: HTMLElement | null = null;
  private following: Following<Snapshot> | null = null;
  private snapshot: Snapshot | null = null;
  private fresh: { readonly freshness: Freshness; readonly asOf: number } = { freshness: 'asked', asOf: 0 };
  private said = '';
  private readonly news = new News((text) => {
    this.said = text;
    this.draw();
  });

  connectedCallback(): void {
    this.begin();
  }

  disconnectedCallback(): void {
    this.following?.end();
    this.following = null;
    this.news.end();
  }

  attributeChangedCallback(name: string, before: string | null, now: string | null): void {
    if (!this.isConnected || before === now) return;
    if (SUBJECTS.some(({ attribute }) => attribute === name) || name === 'server') this.begin();
    else this.draw();
  }

  private get subject(): Subject | undefined {
    return SUBJECTS.find(({ attribute }) => this.hasAttribute(attribute));
  }

  /** Where the script came from, unless it is said. */
  private get server(): string {
    return new URL(this.getAttribute('server') ?? '/', import.meta.url).origin;
  }

  private get isAnnouncing(): boolean {
    return this.getAttribute('announce') !== 'off';
  }

  private begin(): void {
    this.following?.end();
    this.following = null;
    this.snapshot = null;
    const { subject } = this;
    const id = subject && this.getAttribute(subject.attribute);
    if (!subject || !id) return;
    const address = `${this.server}/public/${subject.folder}/${encodeURIComponent(id)}`;
    const events = subject.hasEvents ? ([`${address}/events`, subject.attribute] as const) : null;
    this.following = new Following<Snapshot>(`${address}.json`, events, {
      take: (snapshot) => this.take(snapshot, subject),
      tell: (freshness, asOf) => {
        this.fresh = { freshness, asOf };
        this.draw();
      },
    });
  }

  private take(snapshot: Snapshot, { news }: Subject): void {
    const before = this.snapshot;
    this.snapshot = snapshot;
    this.draw();
    const text = before && news(before as never, snapshot as never, this.wordingFor(snapshot));
    if (text) this.news.tell(text);
  }

  private wordingFor(snapshot: Snapshot): Wording {
    const own = this.closest('[lang]')?.getAttribute('lang');
    return wordingOf(languageOf(own ? [own] : navigator.languages), timeZoneOf(snapshot));
  }

  private draw(): void {
    const { snapshot, subject, server } = this;
    if (!snapshot || !subject) return;
    const wording = this.wordingFor(snapshot);
    const addresses: Addresses = (kind, id) => `${server}/${FOLDERS[kind]}/${id}?lang=${wording.language}`;
    const heading = Number(this.getAttribute('heading')) || 2;
    const board = (this.board ??= this.openBoard());
    board.lang = wording.language;
    patch(board, [...subject.view(snapshot as never, { wording, addresses, heading }), this.foot(wording)]);
  }

  /** From now on what stood inside is not shown: a frame in it would only keep a connection. */
  private openBoard(): HTMLElement {
    const root = this.attachShadow({ mode: 'open' });
    root.adoptedStyleSheets = [STYLE];
    const board = document.createElement('div');
    board.className = 'board';
    board.part.add('board');
    root.append(board);
    root.addEventListener('change', ({ target }) => {
      if (target instanceof HTMLInputElement) this.setAttribute('announce', target.checked ? 'on' : 'off');
    });
    this.replaceChildren();
    return board;
  }

  private foot({ say, time }: Wording): Tree {
    const { freshness, asOf } = this.fresh;
    const at = { time: time(new Date(asOf).toISOString()) };
    const texts = { live: say('live'), asked: say('asOf', at), failing: say('again', at) };
    const isOn = this.isAnnouncing;
    return h(
      'footer',
      { class: 'foot' },
      h('p', { class: 'fresh', 'data-fresh': freshness }, asOf === 0 ? '' : texts[freshness]),
      h('p', { class: 'news', role: 'status', 'aria-live': isOn ? 'polite' : 'off' }, this.said),
      h(
        'label',
        { class: 'announce' },
        h('input', { type: 'checkbox', checked: isOn }),
        ` ${say('announce')}`,
      ),
    );
  }
}

if (!customElements.get('sectorline-results')) customElements.define('sectorline-results', SectorlineResults);
