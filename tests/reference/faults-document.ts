import type { Draw } from './draw.js';
import type { Expected, Fault } from './fault-shapes.js';
import { planOf } from './plan.js';
import { isVertical, type Competitor, type PlanOverride, type Sheet } from './shapes.js';
import { levelForFirst } from './standing.js';
import { afterRound, isDecided } from './vertical-ranking.js';

type Loose = Record<string, unknown>;

function loose(value: object): Loose {
  return value as Loose;
}

/** Somebody of the sheet with his path, or null when there is nobody. */
function somebody(draw: Draw, sheet: Sheet): { one: Competitor; path: string } | null {
  if (sheet.competitors.length === 0) return null;
  const index = draw.below(sheet.competitors.length);
  return { one: sheet.competitors[index] as Competitor, path: `/competitors/${index}` };
}

/** Sets one of several keys of the sheet to one of several values. */
function put(code: string, values: Record<string, readonly unknown[]>): Fault {
  return (draw, sheet) => {
    const key = draw.pick(Object.keys(values));
    loose(sheet)[key] = draw.pick(values[key] ?? []);
    return { code, path: `/${key}` };
  };
}

function putOn(code: string, values: Record<string, readonly unknown[]>): Fault {
  return (draw, sheet) => {
    const found = somebody(draw, sheet);
    if (!found) return null;
    const key = draw.pick(Object.keys(values));
    loose(found.one)[key] = draw.pick(values[key] ?? []);
    return { code, path: `${found.path}/${key}` };
  };
}

const missing: Fault = (draw, sheet) => {
  const keys = ['rules', 'event', 'competitors'];
  if (isVertical(sheet)) keys.push('heights');
  if (sheet.stage === 'qualification') keys.push('qualifying');
  const key = draw.pick(keys);
  // Without the event or with no competitors left other keys lose their sense; only this one is looked for.
  delete loose(sheet)[key];
  return { code: 'MISSING', path: `/${key}` };
};

const missingBib: Fault = (draw, sheet) => {
  const found = sheet.admitted || sheet.jumpOff ? null : somebody(draw, sheet);
  if (!found) return null;
  delete loose(found.one)['bib'];
  return { code: 'MISSING', path: `${found.path}/bib` };
};

const unknownKey: Fault = (draw, sheet) => {
  const key = draw.pick(['colour', 'Rules', 'a/b~c', 'constructor', 'toString']);
  const pointer = key.replaceAll('~', '~0').replaceAll('/', '~1');
  const found = draw.chance(50) ? somebody(draw, sheet) : { one: sheet as object, path: '' };
  if (!found) return null;
  Object.defineProperty(found.one, key, { value: 1, enumerable: true });
  return { code: 'UNKNOWN_KEY', path: `${found.path}/${pointer}` };
};

const outOfPlace: Fault = (draw, sheet) => {
  const vertical = isVertical(sheet);
  const values: [string, unknown][] = [];
  if (vertical) values.push(['plan', { rounds: 4 }]);
  else values.push(['heights', ['1.00', '1.10']], ['jumpOff', []]);
  if (sheet.stage !== 'qualification') values.push(['qualifying', { standard: '0.01' }]);
  else if (vertical) values.push(['jumpOff', []]);
  const [key, value] = draw.pick(values);
  loose(sheet)[key] = value;
  return { code: 'OUT_OF_PLACE', path: `/${key}` };
};

const duplicateBib: Fault = (draw, sheet) => {
  if (sheet.competitors.length < 2 || sheet.admitted || sheet.jumpOff) return null;
  const index = 1 + draw.below(sheet.competitors.length - 1);
  const earlier = sheet.competitors[draw.below(index)] as Competitor;
  (sheet.competitors[index] as Competitor).bib = earlier.bib;
  return { code: 'DUPLICATE', path: `/competitors/${index}/bib` };
};

const unknownAdmitted: Fault = (draw, sheet) => {
  const cut = isVertical(sheet) ? undefined : planOf(sheet).cuts[0];
  if (sheet.stage !== 'qualification' && !cut) return null;
  const after = sheet.stage === 'qualification' ? {} : { after: cut?.after };
  sheet.admitted ??= [];
  sheet.admitted.push({ bib: 'nobody', ...after, by: draw.pick(['R', 'J', 'D']) } as never);
  return { code: 'UNKNOWN_BIB', path: `/admitted/${sheet.admitted.length - 1}/bib` };
};

const unknownJumper: Fault = (_, sheet) => {
  const round = sheet.jumpOff?.[0];
  if (!round) return null;
  round.tries['nobody'] = 'X';
  return { code: 'UNKNOWN_BIB', path: '/jumpOff/0/tries/nobody' };
};

function plan(code: string, make: (rounds: number) => PlanOverride[]): Fault {
  return (draw, sheet) => {
    if (isVertical(sheet)) return null;
    sheet.plan = draw.pick(make(sheet.stage === 'qualification' ? 3 : 6));
    return { code, path: '/plan', below: true };
  };
}

const notRisingHeights: Fault = (draw, sheet) => {
  if ((sheet.heights?.length ?? 0) < 2) return null;
  const heights = sheet.heights as string[];
  const at = 1 + draw.below(heights.length - 1);
  heights[at] = heights[at - 1] as string;
  return { code: 'NOT_RISING', path: `/heights/${at}` };
};

function jumpOffProblem(round: number): Expected {
  return { code: 'JUMP_OFF', path: `/jumpOff/${round}`, below: true };
}

/** An entry of somebody whom the heights did not leave level for first. */
const notLevel: Fault = (draw, sheet) => {
  const others = sheet.competitors.filter(
    (one) => !levelForFirst(sheet).includes(one.bib) && one.status !== 'DQ',
  );
  const round = sheet.jumpOff?.[0];
  if (!round || others.length === 0) return null;
  round.tries[draw.pick(others).bib] = 'X';
  return jumpOffProblem(0);
};

const afterDecision: Fault = (_, sheet) => {
  const rounds = sheet.jumpOff;
  if (!rounds) return null;
  const bibs = levelForFirst(sheet);
  const state = rounds.reduce(afterRound, { remaining: bibs, out: [] });
  const [winner] = state.remaining;
  if (!isDecided(state) || winner === undefined) return null;
  rounds.push({ height: rounds[0]?.height as string, tries: { [winner]: 'O' } });
  return jumpOffProblem(rounds.length - 1);
};

/** One of those still in it is left out although another one jumps. */
const withoutEntry: Fault = (draw, sheet) => {
  const bibs = sheet.jumpOff ? levelForFirst(sheet) : [];
  const [first] = sheet.jumpOff ?? [];
  if (!first || bibs.length < 2) return null;
  first.tries = Object.fromEntries(bibs.slice(1).map((bib) => [bib, draw.pick(['O', 'X'])]));
  sheet.jumpOff = [first];
  return jumpOffProblem(0);
};

const badScoring: Fault = (draw, sheet) => {
  const places = draw.pick([[-1], [10_001], [1.2345], [5, 3, -0.5], [1e-7]]);
  sheet.scoring = { places };
  return { code: 'SCORING', path: '/scoring', below: true };
};

export const DOCUMENT_FAULTS: Record<string, Fault> = {
  'a key missing': missing,
  'a bib missing': missingBib,
  'a key of a wrong type': put('WRONG_TYPE', {
    rules: [7, null, []],
    competitors: [{}, 'none'],
    indoor: ['yes', 1],
    stage: [1],
    implementGrams: ['800', 7.5],
    category: ['W', []],
  }),
  'a key of a competitor of a wrong type': putOn('WRONG_TYPE', {
    name: [5, {}],
    club: [7],
    guest: ['true', 0],
    series: ['X', {}],
    written: ['1.', []],
    flight: [1],
  }),
  'an unknown key': unknownKey,
  'an unknown value': put('UNKNOWN_VALUE', {
    rules: ['wa', 'XY', ''],
    event: ['Discus', 'high jump', '__proto__'],
    stage: ['heat', 'FINAL'],
    edition: ['1066'],
  }),
  'an unknown status': putOn('UNKNOWN_VALUE', { status: ['NM', 'dns', 'toString'] }),
  'a key out of place': outOfPlace,
  'a bib twice': duplicateBib,
  'an unknown bib admitted': unknownAdmitted,
  'an unknown bib in the jump-off': unknownJumper,
  'heights that do not rise': notRisingHeights,
  'cuts that do not rise': plan('NOT_RISING', () => [
    {
      cuts: [
        { after: 2, through: 3 },
        { after: 2, through: 3 },
      ],
    },
    {
      cuts: [
        { after: 2, through: 3 },
        { after: 1, through: 2 },
      ],
    },
    {
      cuts: [
        { after: 1, through: 3 },
        { after: 2, through: 4 },
      ],
    },
  ]),
  'values that make no plan': plan('PLAN', (rounds) => [
    { rounds: 0 },
    { rounds: 13 },
    { cuts: [{ after: rounds, through: 4 }] },
    { cuts: [{ after: 0, through: 4 }] },
    { reorderAfter: [rounds] },
    { rounds: 2, reorderAfter: [2] },
  ]),
  'somebody in the jump-off who is not level for first': notLevel,
  'a round after the jump-off was decided': afterDecision,
  'a jump-off without one who is still in it': withoutEntry,
  'a scoring that is none': badScoring,
};
