import type { Draw } from './draw.js';
import { emptySheet, finishSeries, markSource, type MarkSource } from './generate-field.js';
import { levelForFirst } from './standing.js';
import { stepsOf } from './marks.js';
import { type Competitor, type JumpOffRound, type Sheet } from './shapes.js';
import { afterRound, isDecided, type JumpOffState } from './vertical-ranking.js';

const EVENTS = ['high-jump', 'pole-vault'];

/** A cell of somebody who has failed `run` times in a row, and whether any may follow it. */
function cell(draw: Draw, run: number): { cell: string; failures: number; isLast: boolean } {
  const kind = draw.below(100);
  if (kind < 15) return { cell: 'XXX'.slice(run), failures: 3, isLast: true };
  const failed = draw.chance(45) ? draw.below(3 - run) : 0;
  const failures = 'X'.repeat(failed);
  if (kind < 80) return { cell: `${failures}O`, failures: 0, isLast: false };
  if (kind < 94) return { cell: `${failures}-`, failures: run + failed, isLast: false };
  if (kind < 97 || failed === 0) return { cell: `${failures}r`, failures: run + failed, isLast: true };
  return { cell: failures, failures: run + failed, isLast: true };
}

function jump(draw: Draw, sheet: Sheet, competitor: Competitor): string[] {
  const series: string[] = [];
  const standard = sheet.qualifying ? stepsOf(sheet.qualifying.standard) : Infinity;
  let run = 0;
  const stopsEarly = competitor.status === 'DQ' || draw.chance(8);
  const heights = sheet.heights ?? [];
  const last = stopsEarly ? draw.below(heights.length + 1) : heights.length;
  if (competitor.status === 'DNS') return series;
  for (const height of heights.slice(0, last)) {
    const taken = cell(draw, run);
    series.push(taken.cell);
    run = taken.failures;
    if (taken.isLast || (taken.cell.endsWith('O') && stepsOf(height) >= standard)) break;
  }
  return series;
}

function jumpOffTries(draw: Draw, remaining: readonly string[]): Record<string, string> {
  if (draw.chance(5)) {
    return { [draw.pick(remaining)]: draw.pick(['r', '-']) };
  }
  return Object.fromEntries(
    remaining.map((bib) => [bib, draw.chance(8) ? draw.pick(['-', 'r']) : draw.pick(['O', 'X'])]),
  );
}

/** Rounds until it is decided, or until the officials or the competitors leave it. */
function jumpOff(draw: Draw, sheet: Sheet, marks: MarkSource): void {
  let state: JumpOffState = { remaining: levelForFirst(sheet), out: [] };
  const rounds: JumpOffRound[] = [];
  const top = sheet.heights?.length ?? 0;
  while (!isDecided(state) && rounds.length < 6 && !draw.chance(8)) {
    const round = { height: marks.at(draw.below(top * 3 + 6)), tries: jumpOffTries(draw, state.remaining) };
    rounds.push(round);
    state = afterRound(state, round);
  }
  if (rounds.length > 0) sheet.jumpOff = rounds;
}

/** A valid sheet of a vertical jump. */
export function verticalSheet(draw: Draw): { sheet: Sheet; marks: MarkSource } {
  const sheet = emptySheet(draw, EVENTS);
  const marks = markSource(draw, true);
  let step = 0;
  sheet.heights = Array.from({ length: 1 + draw.below(draw.chance(60) ? 3 : 8) }, () => {
    step += 1 + draw.below(3);
    return marks.at(step);
  });
  if (sheet.stage === 'qualification') {
    sheet.qualifying = { standard: marks.at(draw.below(step + 3)) };
    if (draw.chance(80)) sheet.qualifying.fill = draw.below(7);
    if (draw.chance(15)) {
      sheet.admitted = sheet.competitors
        .filter((one) => one.status === undefined && one.guest !== true && draw.chance(25))
        .map((one) => ({ bib: one.bib, by: draw.pick(['R', 'J', 'D']) }));
    }
  }
  for (const one of sheet.competitors) one.series = jump(draw, sheet, one);
  if (sheet.stage !== 'qualification' && draw.chance(75)) jumpOff(draw, sheet, marks);
  finishSeries(draw, sheet, sheet.heights.length);
  return { sheet, marks };
}
