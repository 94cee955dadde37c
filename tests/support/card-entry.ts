import type { TestApi } from './api.js';
import { attemptOf, enterInJournal, type StaffedCompetition, type StaffedMeet } from './circle.js';

const ADMITTING: Readonly<Record<string, string>> = { R: 'REFEREE', J: 'JURY', D: 'DRAW' };
const AT_THE_BAR: Readonly<Record<string, string>> = {
  O: 'CLEARED',
  X: 'FAILED',
  '-': 'PASS',
  r: 'RETIRED',
};

const BAR = `query ($id: ID!) { competition(id: $id) { progress { vertical { bar } } } }`;

/** Enters what a card says as it happened, the way officials do it at the circle or the bar. */
export class CardEntry {
  /** What became of each entry: how it stands, or the code of its refusal. */
  private readonly standings: string[] = [];

  constructor(
    private readonly api: TestApi,
    private readonly meet: StaffedMeet,
    private readonly competition: StaffedCompetition,
  ) {}

  async enter(sheet: any): Promise<readonly string[]> {
    for (const { bib, status, series = [] } of sheet.competitors) {
      if (status === 'DNS') await this.absent(bib);
      if (status === 'DQ' && series.every((cell: unknown) => cell === null) && !jumpedOff(sheet, bib))
        await this.disqualify(bib);
    }
    await (sheet.heights ? this.atTheBar(sheet) : this.inRounds(sheet));
    return this.standings;
  }

  /** Round by round, disqualifications when a series ends, then who is admitted. */
  private async inRounds(sheet: any): Promise<void> {
    for (let round = 1; round <= 12; round++) {
      for (const { bib, status, series = [] } of sheet.competitors) {
        const cells = series.filter((cell: string | null) => cell !== null);
        const cell = cells[round - 1];
        if (cell === undefined) continue;
        const trial = { round, ...attemptOf(cell) };
        await this.send(this.competition.official, 'attemptRecord', { ...this.named(bib), ...trial });
        if (status === 'DQ' && cells.length === round) await this.disqualify(bib);
      }
      await this.admitAfter(sheet, round);
    }
  }

  /** Height by height: where the bar does not rise by itself it is set; then all first trials, all second, all third. */
  private async atTheBar(sheet: any): Promise<void> {
    for (const [index, height] of sheet.heights.entries()) {
      const jumping = sheet.competitors.filter(({ series = [] }: any) => series[index] ?? null);
      if (jumping.length > 0) await this.setBar(height);
      for (const trial of [1, 2, 3]) {
        for (const { bib, series, status } of jumping) {
          const letter = series[index][trial - 1];
          if (letter === undefined) continue;
          const input = { ...this.named(bib), height, trial, outcome: AT_THE_BAR[letter] };
          await this.send(this.competition.official, 'jumpRecord', input);
          const isLast = series[index].length === trial && !series[index + 1] && !jumpedOff(sheet, bib);
          if (status === 'DQ' && isLast) await this.disqualify(bib);
        }
      }
    }
    await this.jumpOff(sheet);
    await this.admitAfter(sheet, 12);
  }

  private async jumpOff(sheet: any): Promise<void> {
    const rounds: any[] = (sheet.jumpOff ?? []).filter(({ tries }: any) => Object.keys(tries).length > 0);
    for (const [index, { height, tries }] of rounds.entries()) {
      for (const [bib, letter] of Object.entries<string>(tries)) {
        const input = { ...this.named(bib), height, round: index + 1, outcome: AT_THE_BAR[letter] };
        await this.send(this.competition.official, 'jumpOffRecord', input);
      }
      const isLastOf = (bib: string): boolean => !rounds.slice(index + 1).some((later) => bib in later.tries);
      for (const { bib, status } of sheet.competitors) {
        if (status === 'DQ' && bib in tries && isLastOf(bib)) await this.disqualify(bib);
      }
    }
  }

  private async setBar(height: string): Promise<void> {
    const { competition } = await this.api.data(BAR, { id: this.competition.id }, this.meet.director);
    if (competition.progress.vertical.bar === height) return;
    await this.send(this.competition.official, 'barSet', { height });
  }

  private async absent(bib: string): Promise<void> {
    await this.send(this.competition.official, 'competitorStartSet', { ...this.named(bib), status: 'DNS' });
  }

  private async disqualify(bib: string): Promise<void> {
    const input = { ...this.named(bib), rule: 'TR7.1', reason: 'conduct' };
    await this.send(this.meet.referee, 'competitorDisqualify', input);
  }

  /** Those let through a cut after this round; to the final from a qualification after the last one. */
  private async admitAfter({ admitted = [] }: any, round: number): Promise<void> {
    for (const { bib, after, by } of admitted) {
      if ((after ?? 12) !== round) continue;
      const input = { ...this.named(bib), afterRound: after, by: ADMITTING[by], reason: 'fair' };
      await this.send(this.meet.referee, 'competitorAdmit', input);
    }
  }

  private named(bib: string): object {
    return { competitorId: this.competition.competitors[bib] };
  }

  private async send(token: string, mutation: string, rest: object): Promise<void> {
    const input = { competitionId: this.competition.id, ...rest };
    const { entry, userErrors } = await enterInJournal(this.api, token, mutation, input);
    this.standings.push(entry?.standing ?? userErrors[0].code);
  }
}

function jumpedOff({ jumpOff = [] }: any, bib: string): boolean {
  return jumpOff.some(({ tries }: any) => bib in tries);
}
