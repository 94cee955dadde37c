import type { TestApi } from './api.js';
import { Circle } from './at-the-circle.js';

const READ = `query ($id: ID!) { competition(id: $id) {
  version status plan { rounds } vertical { heights isCombined passGivesUp tieForFirst }
  table {
    isDisputed
    rows {
      bib place isEqual mark status decidedBy reason reasonRule qualified series { entry }
      vertical {
        heights { height cell trials { entry height trial cell foul incident isProtested behindZeroCm } }
        jumpOff { height trial cell } failuresAtBest failuresToBest failuresInARow condition atBar behindZeroCm
      }
    }
    rowsIfProtestsSucceed { bib place }
    vertical { heights jumpOff { round height tries { competitor cell } } }
  }
  progress {
    phase round remaining
    up { bib round height isJumpOff isUnderProtest } next { bib } then { bib }
    vertical {
      bar nextHeight awaits behindZeroCm left calls { bib } outstanding { bib height round }
      timeAllowed { seconds because left startsWhen rule }
      winner { competitor isChoosingHeight }
      jumpOff { phase round height ruleHeight remaining inRound toJump }
    }
  }
  needed {
    bib place round barrier places { place mark trial isShared rival }
    vertical { next { height trial } standard { height trial } fill { height trial } }
  }
  orders { round }
  questions { entry about holdCode body }
} }`;

const OUTCOMES: Readonly<Record<string, string>> = { O: 'CLEARED', X: 'FAILED', '-': 'PASS', r: 'RETIRED' };

/** A high jump under the newest edition of the open rules, with competitors 1, 2, … */
export function highJumpSheet(count: number, heights: readonly string[], changes: object = {}): object {
  const competitors = Array.from({ length: count }, (_, at) => ({ bib: String(at + 1) }));
  return { format: 'sectorline-sheet/1', rules: 'WA', event: 'high-jump', heights, competitors, ...changes };
}

/** One high jump or pole vault and what those who work at it do and read there, over HTTP. */
export class Bar {
  private constructor(readonly circle: Circle) {}

  static async open(api: TestApi, sheet: object): Promise<Bar> {
    return new Bar(await Circle.open(api, sheet));
  }

  /** A bar that somebody has made already. */
  static at(circle: Circle): Bar {
    return new Bar(circle);
  }

  /** Makes one entry, as the official unless a token says otherwise; the whole payload. */
  enter(mutation: string, input: object, token?: string): Promise<any> {
    return this.circle.enter(mutation, input, token);
  }

  /** One trial: `O`, `X`, `-` or `r`. */
  jump(bib: number, height: string, trial: number, letter: string, more: object = {}): Promise<any> {
    const turn = { competitorId: this.circle.competitorOf(bib), height, trial };
    return this.enter('jumpRecord', { ...turn, outcome: OUTCOMES[letter], ...more });
  }

  jumpOff(bib: number, height: string, round: number, letter: string, more: object = {}): Promise<any> {
    const turn = { competitorId: this.circle.competitorOf(bib), height, round };
    return this.enter('jumpOffRecord', { ...turn, outcome: OUTCOMES[letter], ...more });
  }

  /** All trials at one height in their order: `cells[0]` is of bib 1, `""` of somebody who does not jump there. */
  async height(height: string, ...cells: readonly string[]): Promise<void> {
    for (const trial of [1, 2, 3]) {
      for (const [index, cell] of cells.entries()) {
        const letter = cell[trial - 1];
        if (letter === undefined) continue;
        const { entry, userErrors } = await this.jump(index + 1, height, trial, letter);
        if (entry?.standing !== 'ACCEPTED') throw new Error(JSON.stringify({ entry, userErrors }));
      }
    }
  }

  /** Everything that is shown of the competition. */
  async read(token: string | null = this.circle.official): Promise<any> {
    return (await this.circle.api.data(READ, { id: this.circle.competition.id }, token)).competition;
  }

  /** Bib, place, mark and cells of every row, e.g. `"2 1. 1.88 O XO XXX"`. */
  async rows(): Promise<string[]> {
    const { table } = await this.read();
    return table.rows.map(({ bib, place, mark, status, vertical }: any) => {
      const cells = vertical.heights.map(({ cell }: any) => cell ?? '.');
      return [bib, place === null ? '-' : `${place}.`, mark ?? status ?? 'none', ...cells].join(' ');
    });
  }

  idOf(bib: number): string {
    return this.circle.competitorOf(bib);
  }
}
