import type { Draw } from './draw.js';
import { emptySheet, finishSeries, markSource, type MarkSource } from './generate-field.js';
import { cutsOf, planOf, roundOfStandard } from './plan.js';
import { hasWind, type Competitor, type Cut, type PlanOverride, type Sheet } from './shapes.js';

const EVENTS = ['discus', 'shot', 'hammer', 'javelin', 'weight', 'long-jump', 'triple-jump'];
const WINDS = ['+0.0', '+1.9', '+2.0', '+2.1', '-0.3', '+10.2', '-12.5'];

/** What is decided about somebody before the first round. Rounds are counted from 1. */
interface Course {
  competitor: Competitor;
  series: (string | null)[];
  retiresIn: number;
  lastRound: number;
  isOver: boolean;
}

function someCuts(draw: Draw, rounds: number): Cut[] {
  if (rounds === 1 || draw.chance(20)) return [];
  const cuts: Cut[] = [];
  let through = 1 + draw.below(9);
  for (let after = 1 + draw.below(rounds - 1); after < rounds; after += 1 + draw.below(rounds)) {
    cuts.push({ after, through });
    through -= draw.below(Math.min(3, through));
  }
  return cuts;
}

function somePlan(draw: Draw, isQualification: boolean): PlanOverride {
  const plan: PlanOverride = {};
  if (draw.chance(50)) plan.rounds = draw.chance(60) ? 2 + draw.below(3) : 1 + draw.below(12);
  const rounds = plan.rounds ?? (isQualification ? 3 : 6);
  if (draw.chance(60)) plan.cuts = someCuts(draw, rounds);
  if (draw.chance(40)) plan.cutTies = draw.pick(['next-best', 'mark']);
  if (draw.chance(50)) {
    plan.reorderAfter = [];
    for (let round = 1; round < rounds; round += 1) if (draw.chance(40)) plan.reorderAfter.push(round);
  }
  if (draw.chance(40)) plan.reorder = draw.pick(['reverse', 'leaders-first']);
  return plan;
}

function courseOf(draw: Draw, competitor: Competitor, rounds: number): Course {
  const stopsEarly = competitor.status === 'DQ' || draw.chance(6);
  return {
    competitor,
    series: (competitor.series = []),
    retiresIn: draw.chance(7) ? 1 + draw.below(rounds) : Infinity,
    lastRound: stopsEarly ? draw.below(rounds + 1) : Infinity,
    isOver: competitor.status === 'DNS',
  };
}

function cell(draw: Draw, sheet: Sheet, marks: MarkSource): string {
  const kind = draw.below(100);
  const windy = hasWind(sheet);
  if (kind < 18) return windy && draw.chance(30) ? `X ${draw.pick(WINDS)}` : 'X';
  if (kind < 23) return '-';
  if (kind < 27) return 'O';
  const mark = marks.mark(draw);
  if (!windy || draw.chance(15)) return mark;
  return `${mark} ${draw.chance(10) ? 'NWI' : draw.pick(WINDS)}`;
}

function takeRound(draw: Draw, sheet: Sheet, courses: Course[], round: number, marks: MarkSource): void {
  for (const course of courses) {
    if (round > course.lastRound) course.isOver = true;
    if (course.isOver) continue;
    course.series.push(course.retiresIn === round ? 'r' : cell(draw, sheet, marks));
    if (course.retiresIn === round || roundOfStandard(sheet, course.competitor) === round)
      course.isOver = true;
  }
}

/** Sometimes the referee, the jury or a draw lets somebody through who is not, or is already. */
function admit(draw: Draw, sheet: Sheet, courses: Course[], after: number, through: number[]): void {
  for (const [index, course] of courses.entries()) {
    const isCut = !through.includes(index);
    if (course.isOver || course.competitor.guest === true || course.competitor.status) continue;
    if (!draw.chance(isCut ? 15 : 1)) continue;
    sheet.admitted ??= [];
    sheet.admitted.push({ bib: course.competitor.bib, after, by: draw.pick(['R', 'J', 'D']) });
  }
}

/**
 * Ends the competition of those who are not through. A disqualified competitor is counted only while his series
 * goes on, so a stand-in for his next trial is there while the cut is computed; where he would not be through his
 * series ends at the cut, and it is computed again without him.
 */
function makeCut(draw: Draw, sheet: Sheet, courses: Course[], cut: Cut): void {
  const through = () => cutsOf(sheet).find((made) => made.after === cut.after)?.through ?? [];
  let goingOn = courses.filter(
    (course) => course.competitor.status === 'DQ' && !course.isOver && course.lastRound > cut.after,
  );
  for (const course of goingOn) course.series.push('X');
  for (;;) {
    const isThrough = through();
    const dropped = goingOn.filter((course) => !isThrough.includes(courses.indexOf(course)));
    if (dropped.length === 0) break;
    for (const course of dropped) {
      course.series.pop();
      course.isOver = true;
    }
    goingOn = goingOn.filter((course) => !dropped.includes(course));
  }
  if (sheet.stage !== 'qualification') admit(draw, sheet, courses, cut.after, through());
  const isThrough = through();
  for (const course of goingOn) course.series.pop();
  for (const [index, course] of courses.entries()) if (!isThrough.includes(index)) course.isOver = true;
}

/** A valid sheet of a throw or a horizontal jump: nobody has a trial that he could not have had. */
export function horizontalSheet(draw: Draw): { sheet: Sheet; marks: MarkSource } {
  const sheet = emptySheet(draw, EVENTS);
  const marks = markSource(draw, false);
  if (sheet.stage === 'qualification') {
    sheet.qualifying = { standard: marks.at(draw.below(marks.spread + 1)) };
    if (draw.chance(80)) sheet.qualifying.fill = draw.below(7);
  }
  if (draw.chance(50)) sheet.plan = somePlan(draw, sheet.stage === 'qualification');
  const plan = planOf(sheet);
  const courses = sheet.competitors.map((one) => courseOf(draw, one, plan.rounds));
  const soFar = draw.chance(10) ? draw.below(plan.rounds + 1) : plan.rounds;
  for (let round = 1; round <= soFar; round += 1) {
    takeRound(draw, sheet, courses, round, marks);
    const cut = plan.cuts.find((one) => one.after === round);
    if (cut && round < soFar) makeCut(draw, sheet, courses, cut);
  }
  if (sheet.stage === 'qualification' && draw.chance(20)) {
    sheet.admitted = sheet.competitors
      .filter((one) => one.status === undefined && one.guest !== true && draw.chance(25))
      .map((one) => ({ bib: one.bib, by: draw.pick(['R', 'J', 'D']) }));
  }
  finishSeries(draw, sheet, plan.rounds);
  return { sheet, marks };
}
