import { difference, inPlaceOrder, marksAfter, placesOf, type Marks } from './horizontal-ranking.js';
import { stepsOf, validTrials } from './marks.js';
import { trialsOf, type Competitor, type Cut, type PlanOverride, type Sheet } from './shapes.js';

/** A cut in force: indices of the competitors who are through, in ranking order, then the admitted. */
export interface CutMade {
  after: number;
  through: number[];
}

/** The plan of the rule set with the parts that the sheet replaces. Source: the table of plans in the sheet format. */
export function planOf(sheet: Sheet): Required<PlanOverride> {
  const own = sheet.plan ?? {};
  const american = sheet.rules === 'NFHS' || sheet.rules === 'NCAA';
  const final: Required<PlanOverride> = {
    rounds: 6,
    cuts: [{ after: 3, through: american ? 9 : 8 }],
    cutTies: american ? 'mark' : 'next-best',
    reorderAfter: [3],
    reorder: 'reverse',
  };
  const qualification: Required<PlanOverride> = {
    rounds: 3,
    cuts: [],
    cutTies: 'next-best',
    reorderAfter: [],
    reorder: 'reverse',
  };
  const usual = sheet.stage === 'qualification' ? qualification : final;
  const plan = { ...usual, ...own };
  return {
    ...plan,
    cuts: plan.cuts.filter((cut) => cut.after < plan.rounds),
    reorderAfter: plan.reorderAfter.filter((round) => round < plan.rounds),
  };
}

/** A disqualified competitor stays in the competition as long as there are trials of his. */
function endedBy(competitor: Competitor, round: number): boolean {
  return competitor.status === 'DQ' && trialsOf(competitor).length <= round;
}

function fieldAfter(sheet: Sheet, indices: readonly number[], round: number): (Marks | null)[] {
  return indices.map((index) => marksAfter(sheet.competitors[index]?.series ?? [], round));
}

/** Indices with a valid mark, best first, equals in the original order. */
function ranked(sheet: Sheet, indices: readonly number[], round: number): number[] {
  const places = placesOf(fieldAfter(sheet, indices, round));
  return inPlaceOrder(places).map((position) => indices[position] as number);
}

/** Everybody who is at least level with the last who may go through, by the tie rule of the cut. */
function throughByMark(sheet: Sheet, counted: number[], cut: Cut, ties: 'next-best' | 'mark'): number[] {
  const order = ranked(sheet, counted, cut.after);
  const lastOne = order[cut.through - 1];
  if (lastOne === undefined) return order;
  const field = fieldAfter(sheet, counted, cut.after);
  const last = field[counted.indexOf(lastOne)] as Marks;
  return order.filter((index) => {
    const one = field[counted.indexOf(index)] as Marks;
    if (ties === 'mark') return (one.measured[0] ?? 0) >= (last.measured[0] ?? 0);
    return difference(last, one, field).sign <= 0;
  });
}

function throughOneCut(
  sheet: Sheet,
  inIt: readonly number[],
  cut: Cut,
  ties: 'next-best' | 'mark',
): number[] {
  const counted = inIt.filter((index) => !endedBy(sheet.competitors[index] as Competitor, cut.after));
  if (counted.length > cut.through) return throughByMark(sheet, counted, cut, ties);
  const order = ranked(sheet, counted, cut.after);
  return [...order, ...counted.filter((index) => !order.includes(index))];
}

/** Every cut of the plan, computed from the trials there are up to its round. */
export function cutsOf(sheet: Sheet): CutMade[] {
  const plan = planOf(sheet);
  let inIt = sheet.competitors.flatMap((one, index) =>
    one.status === 'DNS' || one.guest === true ? [] : [index],
  );
  return plan.cuts.map((cut) => {
    const through = throughOneCut(sheet, inIt, cut, plan.cutTies);
    for (const admission of sheet.admitted ?? []) {
      const index = sheet.competitors.findIndex((one) => one.bib === admission.bib);
      if (admission.after === cut.after && !through.includes(index)) through.push(index);
    }
    inIt = [...through].sort((a, b) => a - b);
    return { after: cut.after, through };
  });
}

/** The round in which the standard of a qualification was reached; infinite when it was not. */
export function roundOfStandard(sheet: Sheet, competitor: Competitor): number {
  if (sheet.qualifying === undefined) return Infinity;
  const standard = stepsOf(sheet.qualifying.standard);
  const cells = competitor.series ?? [];
  const reached = cells.findIndex((cell) =>
    validTrials([cell]).some((trial) => (trial.steps ?? 0) >= standard),
  );
  return reached < 0 ? Infinity : reached + 1;
}

/** Whether somebody is in the competition in a round, by everything the sheet holds. */
export function isIn(sheet: Sheet, cuts: readonly CutMade[], index: number, round: number): boolean {
  const competitor = sheet.competitors[index] as Competitor;
  if (competitor.status === 'DNS' || endedBy(competitor, round - 1)) return false;
  const retired = (competitor.series ?? []).indexOf('r');
  if (retired >= 0 && round > retired + 1) return false;
  if (round > roundOfStandard(sheet, competitor)) return false;
  const made = cuts.filter((cut) => cut.after < round);
  if (competitor.guest === true) return made.length === 0;
  return made.every((cut) => cut.through.includes(index));
}

/** The new order after a round: the ranking at that moment, with the guests who are still in it. */
function newOrder(sheet: Sheet, cuts: readonly CutMade[], after: number): number[] {
  const everybody = sheet.competitors.flatMap((one, index) => {
    if (one.status === 'DNS' || endedBy(one, after)) return [];
    return one.guest === true && !isIn(sheet, cuts, index, after + 1) ? [] : [index];
  });
  const places = placesOf(fieldAfter(sheet, everybody, after));
  const without = everybody.filter((_, position) => places[position] === null);
  const backwards = planOf(sheet).reorder === 'reverse';
  const groups = places.map((_, above) => everybody.filter((__, position) => places[position] === above + 1));
  return backwards ? [...without, ...groups.reverse().flat()] : [...groups.flat(), ...without];
}

/** For every round of the plan the indices of those who are in it, in the order in which they are called. */
export function orderOf(sheet: Sheet): Map<number, number[]> {
  const plan = planOf(sheet);
  const cuts = cutsOf(sheet);
  const order = new Map<number, number[]>();
  let sequence = sheet.competitors.map((_, index) => index);
  for (let round = 1; round <= plan.rounds; round += 1) {
    if (plan.reorderAfter.includes(round - 1)) sequence = newOrder(sheet, cuts, round - 1);
    order.set(
      round,
      sequence.filter((index) => isIn(sheet, cuts, index, round)),
    );
  }
  return order;
}
