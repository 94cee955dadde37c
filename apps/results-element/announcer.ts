import { announcerView, languageOf, wordingOf, type PublicCompetition } from '#scoreboard';
import { Following } from './follow.js';
import { patch } from './patch.js';

/** The announcer's page, kept at the newest version; it draws into itself and takes the style of the page. */
class SectorlineAnnouncer extends HTMLElement {
  private following: Following<PublicCompetition> | null = null;

  connectedCallback(): void {
    const id = this.getAttribute('competition');
    if (id === null) return;
    const address = `/public/competitions/${encodeURIComponent(id)}`;
    this.following = new Following<PublicCompetition>(
      `${address}.json`,
      [`${address}/events`, 'competition'],
      {
        take: (competition) => this.draw(competition),
        tell: (freshness) => this.setAttribute('data-fresh', freshness),
      },
    );
  }

  disconnectedCallback(): void {
    this.following?.end();
  }

  private draw(competition: PublicCompetition): void {
    const wording = wordingOf(languageOf([document.documentElement.lang]), competition.meet.timeZone);
    patch(this, announcerView(competition, { wording, addresses: null, heading: 1 }));
  }
}

customElements.define('sectorline-announcer', SectorlineAnnouncer);
