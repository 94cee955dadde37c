import {
  countCard,
  editionsOf,
  parseMark,
  parseWind,
  resolvePlan,
  ruleSet,
  type Card,
  type CardCompetitor,
  type PlanOverrides,
  type Series,
  type Trial,
} from '#rules';

type Parts = Partial<Omit<Card, 'plan'>> & { plan?: PlanOverrides };

/**
 * A discus final under WA in words, by bib: `{ A: '61.20 X - r' }`. A wind follows its mark after a stroke:
 * `7.60/+3.1`, `7.60/NWI`; `.` is a trial not taken. A competitor who is more than a series is given as
 * `{ A: ['61.20 X', { guest: true }] }`.
 */
export function card(
  competitors: Readonly<Record<string, string | readonly [string, Partial<CardCompetitor>]>>,
  { plan, ...parts }: Parts = {},
): Card {
  const rules = parts.rules ?? 'WA';
  const stage = parts.stage ?? 'final';
  const resolved = resolvePlan(ruleSet(rules), stage, plan);
  if (!resolved.ok) throw new Error(resolved.problems.map(({ message }) => message).join(' '));
  return {
    rules,
    edition: editionsOf(rules).at(-1)!,
    event: 'discus',
    indoor: false,
    stage,
    qualifying: null,
    plan: resolved.plan,
    unit: 'cm',
    competitors: Object.entries(competitors).map(([bib, given]) => {
      const [cells, more] = typeof given === 'string' ? [given, {}] : given;
      return competitor(bib, cells, more);
    }),
    admitted: [],
    ...parts,
  };
}

function competitor(bib: string, cells: string, parts: Partial<CardCompetitor>): CardCompetitor {
  return {
    bib,
    name: null,
    club: null,
    flight: null,
    status: null,
    guest: false,
    series: series(cells),
    ...parts,
  };
}

export function series(cells: string): Series {
  return cells.split(' ').filter(Boolean).map(trial);
}

const SIGNS: Readonly<Record<string, Trial['outcome']>> = {
  X: 'foul',
  '-': 'pass',
  r: 'retired',
  O: 'unmeasured',
};

function trial(cell: string): Trial | null {
  if (cell === '.') return null;
  const [sign = '', wind] = cell.split('/');
  const outcome = SIGNS[sign];
  const read = wind === 'pending' ? wind : wind === undefined ? null : parseWind(wind);
  if (outcome) return { outcome, mark: null, wind: read };
  const mark = parseMark(sign);
  if (!mark) throw new Error(`${cell} is no trial.`);
  return { outcome: 'valid', mark: mark.value, wind: read };
}

/** The same card after one more trial of one competitor. */
export function withTrial(before: Card, bib: string, added: Trial): Card {
  return {
    ...before,
    competitors: before.competitors.map((one) =>
      one.bib === bib ? { ...one, series: [...one.series, added] } : one,
    ),
  };
}

export function valid(mark: number): Trial {
  return { outcome: 'valid', mark, wind: null };
}

/** The place of each by bib. */
export function placesOn(counted: Card): ReadonlyMap<string, number | null> {
  return new Map(countCard(counted).results.map(({ bib, place }) => [bib, place]));
}

/** The result in words, one for each row: place (`=` when shared) or status, bib, mark, what decided. */
export function resultOf(counted: Card): string[] {
  return countCard(counted).results.map(({ bib, place, equal, mark, status, decidedBy }) => {
    const where = place === null ? status! : `${place}${equal ? '=' : ''}`;
    return [where, bib, mark ?? '–', decidedBy].filter(Boolean).join(' ');
  });
}
