import type { Draw } from './draw.js';
import type { Expected, Fault } from './fault-shapes.js';
import { cutsOf, isIn, planOf, roundOfStandard } from './plan.js';
import { hasWind, isVertical, trialsOf, type Competitor, type Sheet } from './shapes.js';

/** Indices of the competitors of whom something is true. */
function having(sheet: Sheet, test: (one: Competitor, index: number) => boolean): number[] {
  return sheet.competitors.flatMap((one, index) => (test(one, index) ? [index] : []));
}

function problem(code: string, index: number, cell: number): Expected {
  return { code, path: `/competitors/${index}/series/${cell}` };
}

function mostCells(sheet: Sheet): number {
  return sheet.heights?.length ?? planOf(sheet).rounds;
}

/** Puts a cell after the last trial of somebody of whom `test` is true and who has room for it. */
function next(
  code: string,
  cell: string,
  test: (sheet: Sheet, one: Competitor, index: number) => boolean,
): Fault {
  return (draw, sheet) => {
    const can = having(sheet, (one, at) => trialsOf(one).length < mostCells(sheet) && test(sheet, one, at));
    if (can.length === 0) return null;
    const index = draw.pick(can);
    const competitor = sheet.competitors[index] as Competitor;
    const taken = trialsOf(competitor);
    competitor.series = [...taken, cell];
    return problem(code, index, taken.length);
  };
}

/** Replaces a trial that was taken. */
function replace(code: string, cellFor: (draw: Draw, sheet: Sheet, old: string) => string | null): Fault {
  return (draw, sheet) => {
    const can = having(sheet, (one) => trialsOf(one).length > 0);
    if (can.length === 0) return null;
    const index = draw.pick(can);
    const series = sheet.competitors[index]?.series as string[];
    const at = draw.below(trialsOf(sheet.competitors[index] as Competitor).length);
    const cell = cellFor(draw, sheet, series[at] as string);
    if (cell === null) return null;
    series[at] = cell;
    return problem(code, index, at);
  };
}

const MALFORMED_MARKS = [
  '50.0',
  '50,00',
  '050.00',
  '0.00',
  '1000.00',
  '-5.00',
  '5.000',
  ' 5.00',
  '5.00 ',
  '12-06.20',
];
const MALFORMED_CELLS = [
  '12-6.25',
  '12-12.00',
  '0-00.00',
  '',
  'o',
  'x',
  'R',
  '--',
  'NM',
  'X X',
  '5.00  +1.0',
  '5.00 +1',
];
const MALFORMED = [
  ...MALFORMED_MARKS,
  ...MALFORMED_CELLS,
  '5.00 -0.0',
  '5.00 1.0',
  'X NWI',
  'O +1.0',
  '5.00 nwi',
  '５.00',
];
const MALFORMED_VERTICAL = ['XXXO', 'OO', 'OX', 'XXX-', 'XXXr', '1.85', 'XX XO', 'x', 'o', '-X', ''];

function isMetricSheet(sheet: Sheet): boolean {
  return !/\d-\d\d\./.test(JSON.stringify([sheet.heights, sheet.competitors.map((one) => one.series)]));
}

const hasMark = /\d[.]\d/;

/** Another unit than an earlier mark, so that it is this cell that differs from the first one. */
const otherUnit: Fault = (draw, sheet) => {
  if (isVertical(sheet)) return null;
  const marked = having(sheet, (one) =>
    (one.series ?? []).some((cell) => hasMark.test(cell?.replace(/^X.*/, '') ?? '')),
  );
  const later = having(sheet, (one, at) => at > (marked[0] ?? Infinity) && trialsOf(one).length > 0);
  if (later.length === 0) return null;
  const index = draw.pick(later);
  const series = sheet.competitors[index]?.series as string[];
  const at = draw.below(trialsOf(sheet.competitors[index] as Competitor).length);
  series[at] = isMetricSheet(sheet) ? '1-02.75' : '0.37';
  return problem('UNIT', index, at);
};

const tooMany: Fault = (draw, sheet) => {
  if (sheet.competitors.length === 0) return null;
  const index = draw.below(sheet.competitors.length);
  const competitor = sheet.competitors[index] as Competitor;
  const most = mostCells(sheet);
  competitor.series = [...trialsOf(competitor)];
  while (competitor.series.length <= most) competitor.series.push(null);
  return { code: 'TOO_MANY', path: `/competitors/${index}/series`, below: true };
};

const gap: Fault = (draw, sheet) => {
  const can = having(sheet, (one) => trialsOf(one).length >= 2 && !one.series?.includes('r'));
  if (can.length === 0) return null;
  const index = draw.pick(can);
  const series = sheet.competitors[index]?.series as (string | null)[];
  const last = trialsOf(sheet.competitors[index] as Competitor).length - 1;
  series[last - 1] = null;
  return problem('GAP', index, last);
};

function reachedStandard(sheet: Sheet, one: Competitor): boolean {
  if (isVertical(sheet)) return false;
  return roundOfStandard(sheet, one) <= trialsOf(one).length;
}

function missedCut(sheet: Sheet, one: Competitor, index: number): boolean {
  if (isVertical(sheet) || one.status === 'DNS' || one.status === 'DQ' || one.series?.includes('r'))
    return false;
  if (reachedStandard(sheet, one)) return false;
  const round = trialsOf(one).length + 1;
  const wasIn = round > 1 && isIn(sheet, cutsOf(sheet), index, round - 1);
  return (
    wasIn &&
    planOf(sheet).cuts.some((cut) => cut.after === round - 1) &&
    !isIn(sheet, cutsOf(sheet), index, round)
  );
}

function failedOut(sheet: Sheet, one: Competitor): boolean {
  if (!isVertical(sheet)) return false;
  const tried = trialsOf(one).join('').replaceAll('-', '');
  return tried.endsWith('XXX');
}

/** A height after three failures in a row would be the other fault: the run is broken off here before it is full. */
const openHeight: Fault = (draw, sheet) => {
  if (!isVertical(sheet)) return null;
  const can = having(
    sheet,
    (one) => /^O?-?$/.test(trialsOf(one).join('')) && mostCells(sheet) >= trialsOf(one).length + 2,
  );
  const able = can.filter((index) => sheet.competitors[index]?.status !== 'DNS' && !sheet.qualifying);
  if (able.length === 0 || sheet.jumpOff) return null;
  const index = draw.pick(able);
  const competitor = sheet.competitors[index] as Competitor;
  const taken = trialsOf(competitor);
  competitor.series = [...taken, draw.pick(['X', 'XX']), draw.pick(['O', '-', 'r'])];
  return problem('OPEN_HEIGHT', index, taken.length);
};

export const CELL_FAULTS: Record<string, Fault> = {
  'a malformed cell': replace('CELL', (draw, sheet) =>
    draw.pick(isVertical(sheet) ? MALFORMED_VERTICAL : MALFORMED),
  ),
  'a cell of the other kind of event': replace('CELL', (draw, sheet) => (isVertical(sheet) ? '1.80' : 'XO')),
  'another unit': otherUnit,
  'wind where there is none': replace('WIND_NOT_MEASURED', (draw, sheet, old) => {
    if (isVertical(sheet) || hasWind(sheet) || !hasMark.test(old)) return null;
    return `${old} ${draw.pick(['+1.0', '-0.2', 'NWI'])}`;
  }),
  'wind of a failure where there is none': replace('WIND_NOT_MEASURED', (_, sheet) =>
    isVertical(sheet) || hasWind(sheet) ? null : 'X +1.0',
  ),
  'too many cells': tooMany,
  'a cell after one not taken': gap,
  'a trial after retiring': next('AFTER_RETIRING', 'X', (_, one) => one.series?.includes('r') === true),
  'a trial of who did not start': next('AFTER_DNS', 'O', (_, one) => one.status === 'DNS'),
  'a trial after the cut': next('AFTER_CUT', '-', missedCut),
  'a trial after the standard': next('AFTER_STANDARD', 'X', (sheet, one) => {
    return reachedStandard(sheet, one) && one.guest !== true && planOf(sheet).cuts.length === 0;
  }),
  'a height after three failures': next('AFTER_THREE_FAILURES', 'O', failedOut),
  'a height left open': openHeight,
};
