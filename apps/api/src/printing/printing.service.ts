import type { MeetRow } from '#persistence';
import { Injectable } from '@nestjs/common';
import { isKeptBack } from '../platform/competition/visible.js';
import type { Identity } from '../platform/identity/identity.js';
import { MeetsService } from '../meets/meets.service.js';
import { RecordsService } from '../records/records.service.js';
import { ResultsService } from '../results/results.service.js';
import { ClubTableService } from '../scoring/club-table.service.js';
import { BibsService } from '../bibs/bibs.service.js';
import { bibCards, bibList } from './documents/bibs.js';
import { clubList } from './documents/club-list.js';
import { fieldSheet } from './documents/field-sheet.js';
import type { Printed } from './documents/head.js';
import { medalList } from './documents/medal-list.js';
import { claimsToSign, recordForm } from './documents/record-form.js';
import { resultList } from './documents/result-list.js';
import { startList } from './documents/start-list.js';
import { wordingOf, type PrintLanguage, type Wording } from './labels/labels.js';
import type { PrintedDocument } from './printed-document.js';

/** What can be printed of a competition. */
export const COMPETITION_PAPERS = [
  'start-list',
  'field-sheet',
  'filled-sheet',
  'result',
  'record-form',
] as const;
export type CompetitionPaper = (typeof COMPETITION_PAPERS)[number];

/** What can be printed of a meet. */
export const MEET_PAPERS = ['first-three', 'club-table', 'bib-list', 'bib-cards'] as const;
export type MeetPaper = (typeof MEET_PAPERS)[number];

/** Everything that is printed, from the same tables that are read through the API. */
@Injectable()
export class PrintingService {
  constructor(
    private readonly meets: MeetsService,
    private readonly results: ResultsService,
    private readonly clubs: ClubTableService,
    private readonly records: RecordsService,
    private readonly bibs: BibsService,
  ) {}

  /** Null: not there, or not to be seen by the viewer. */
  async competition(
    id: string,
    paper: CompetitionPaper,
    language: PrintLanguage,
    viewer: Identity,
  ): Promise<PrintedDocument | null> {
    const staged = await this.meets.findCompetition(id, viewer);
    if (!staged) return null;
    const wording = wordingOf(language, staged.meet.timeZone);
    const printed: Printed = { ...staged, wording };
    const { loaded, table, audience } = await this.results.shown(staged.competition, viewer);
    const whole = audience === 'crew';
    switch (paper) {
      case 'start-list':
        return startList(printed, loaded.roster, whole);
      case 'field-sheet':
        return fieldSheet(printed, loaded, null, whole);
      case 'filled-sheet':
        return fieldSheet(printed, loaded, table, whole);
      case 'result':
        return resultList(printed, loaded, table);
      case 'record-form': {
        const claims = whole ? claimsToSign(await this.records.claims(staged.competition, viewer)) : [];
        return claims.length > 0 ? recordForm(printed, loaded, claims) : null;
      }
    }
  }

  /** Null: not there, not to be seen by the viewer, or the clubs are not scored. */
  async meet(
    id: string,
    paper: MeetPaper,
    language: PrintLanguage,
    viewer: Identity,
  ): Promise<PrintedDocument | null> {
    const meet = await this.meets.find(id, viewer);
    if (!meet) return null;
    const wording = wordingOf(language, meet.timeZone);
    if (paper === 'first-three') return medalList(meet, await this.finalsOf(meet, viewer), wording);
    if (paper !== 'club-table') return this.bibPaper(meet, paper, wording, viewer);
    const table = await this.clubs.of(meet);
    return table && clubList(meet, table, wording);
  }

  private async bibPaper(
    meet: MeetRow,
    paper: 'bib-list' | 'bib-cards',
    wording: Wording,
    viewer: Identity,
  ): Promise<PrintedDocument> {
    const [rows = []] = await this.meets.competitionsOf([meet]);
    const competitions = rows.filter((row) => !isKeptBack(row, viewer));
    const printed = { meet, competitions, bibs: await this.bibs.of(meet, competitions), wording };
    return paper === 'bib-list' ? bibList(printed, viewer.mayDirect(meet.id)) : bibCards(printed);
  }

  private async finalsOf(meet: MeetRow, viewer: Identity) {
    const [rows = []] = await this.meets.competitionsOf([meet]);
    const finals = rows.filter((row) => row.stage === 'final' && !isKeptBack(row, viewer));
    return Promise.all(
      finals.map(async (competition) => ({
        competition,
        table: (await this.results.shown(competition, viewer)).table,
      })),
    );
  }
}
