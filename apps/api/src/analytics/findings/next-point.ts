import {
  chanceOf,
  chanceOfStandard,
  foulCost,
  isRefused,
  median,
  nextToWorkOn,
  oneFocus,
  phaseOrder,
  seedOf,
  type Candidate,
  type HeldBack,
  type Ranked,
} from '#technique';
import type { Found } from './fault-findings.js';
import { byImplement, measured, plainSeries } from './series-of.js';
import { ANALYSIS_VERSION, dayOf, type AnalysisTask } from './task.js';

export interface NextPoint {
  readonly code: string;
  readonly name: string;
  readonly point: string;
  readonly caution: string | null;
  /** From 1; those of one group cannot be told apart. Null: held back. */
  readonly group: number | null;
  readonly heldBack: HeldBack | null;
  /** Centimetres per throw that go with the point. */
  readonly expectedCm: number;
  readonly sdCm: number;
  readonly cautiousCm: number;
  readonly chanceOfTop: number;
}

/** Points with an effect, in the order in which they may be looked at next. */
export function nextPoints(found: readonly Found[], task: AnalysisTask): readonly NextPoint[] {
  return ranking(found, task).map((ranked) => {
    const { definition } = found.find((one) => one.findings.code === ranked.code)!;
    const { name, point, caution } = definition;
    return { ...ranked, name, point, caution };
  });
}

/** For a child one point to try, and no number; null: nothing stands out. */
export function childPoint(
  found: readonly Found[],
  task: AnalysisTask,
): { readonly code: string; readonly point: string } | null {
  const code = oneFocus(ranking(found, task));
  const definition = found.find((one) => one.findings.code === code)?.definition;
  return definition ? { code: definition.code, point: definition.point } : null;
}

function ranking(found: readonly Found[], task: AnalysisTask): readonly Ranked[] {
  const [main] = byImplement(measured(task.throws));
  const candidates = found.flatMap((one) => candidateOf(one, task));
  if (!main || candidates.length === 0) return [];
  const typicalMarkCm = median(main.throws.flatMap(({ markCm }) => markCm ?? []));
  return nextToWorkOn(candidates, {
    chance: chanceOf(seedOf(...task.seed, ANALYSIS_VERSION, 'next')),
    ...{ typicalMarkCm, foulCostCm: foulCostCm(task, main.implement), growing: task.growing },
  });
}

function candidateOf(
  { findings, definition, effect, link, prevalence }: Found,
  task: AnalysisTask,
): Candidate[] {
  if (effect.kind !== 'answer' || prevalence.kind !== 'answer') return [];
  const { code, isTaught: stageReached, isArmOrShoulder: armOrShoulder } = findings;
  const isKnown = link.kind === 'answer' && link.riskDifferenceError !== null;
  return [
    {
      ...{ code, stageReached, armOrShoulder, phase: phaseOrder(task.event, definition.phase) },
      seen: { k: prevalence.k, n: prevalence.n },
      effect: { beta: effect.beta, error: effect.standardError },
      fouls: isKnown ? { riskDifference: link.riskDifference, error: link.riskDifferenceError } : null,
    },
  ];
}

const ONE_IN_TEN = 0.1;

/** What fouling always more would cost, by what one foul in ten more costs. Nothing where competitions are too few. */
function foulCostCm(task: AnalysisTask, implement: string): number {
  const [group] = byImplement(task.throws.filter((one) => one.thrownIn === 'competition')).filter(
    (one) => one.implement === implement,
  );
  if (!group) return 0;
  const best = Math.max(...measured(group.throws).map(({ markCm }) => markCm));
  const question = { standardCm: best, day: dayOf(task.today), trials: 6 };
  const outlook = chanceOfStandard(plainSeries(group.throws, task, 'fouls'), question);
  if (isRefused(outlook)) return 0;
  const { model } = outlook;
  const more = Math.min(0.95, model.foulRate + ONE_IN_TEN);
  return foulCost(model, model.foulRate, more) / (more - model.foulRate);
}
