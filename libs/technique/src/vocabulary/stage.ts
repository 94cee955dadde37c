/** How far an athlete is in an event, in order. */
export const STAGES = ['first-weeks', 'basics', 'developing', 'advanced'] as const;
export type Stage = (typeof STAGES)[number];

const WORDS: Readonly<Record<Stage, string>> = {
  'first-weeks': 'First weeks',
  basics: 'Still learning the whole throw',
  developing: 'Developing',
  advanced: 'Advanced',
};

export function stageWords(stage: Stage): string {
  return WORDS[stage];
}

/** Whether a fault that matters from one stage on is taught to an athlete in another; else it is "not taught yet". */
export function isTaught(relevantFrom: Stage, athlete: Stage): boolean {
  return STAGES.indexOf(athlete) >= STAGES.indexOf(relevantFrom);
}

/** Stages as the numbers that `faultEffect` compares. */
export function stageNumber(stage: Stage): number {
  return STAGES.indexOf(stage);
}
