import { phaseOrder } from '../vocabulary/phases.js';
import { definitionOf, isActive, type Vocabulary } from '../vocabulary/vocabulary.js';
import type { FaultMark, Observation } from './observation.js';
import type { Thrown } from './thrown.js';

/** What can be wrong with an observation, in order of precedence. */
export const OBSERVATION_PROBLEM_CODES = [
  'NOTHING_THROWN',
  'SCOPE_EMPTY',
  'CODE_UNKNOWN',
  'CODE_OF_OTHER_EVENT',
  'CODE_RETIRED',
  'NOTED_TWICE',
  'NOT_IN_SCOPE',
  'SEVERITY_OUT_OF_RANGE',
  'OPPOSITES',
  'CAUSE_NOT_PRESENT',
  'CAUSE_LATER',
  'CAUSES_IN_A_CIRCLE',
] as const;
export type ObservationProblemCode = (typeof OBSERVATION_PROBLEM_CODES)[number];

export interface ObservationProblem {
  readonly code: ObservationProblemCode;
  /** The field, as `marks.2.severity`. */
  readonly path: string;
  readonly sentence: string;
}

const SENTENCES: Readonly<Record<ObservationProblemCode, string>> = {
  NOTHING_THROWN: 'The athlete passed, so there was no throw to look at.',
  SCOPE_EMPTY: 'Say what was looked at: at least one point, or only what was noticed.',
  CODE_UNKNOWN: 'The vocabulary has no such point.',
  CODE_OF_OTHER_EVENT: 'The point belongs to another event.',
  CODE_RETIRED: 'The point is retired; note what took its place.',
  NOTED_TWICE: 'The point is noted twice. Note it once.',
  NOT_IN_SCOPE: 'The point was noted, so it was looked at. Put it into the scope.',
  SEVERITY_OUT_OF_RANGE: 'Severity is 0 (not there), 1 (slight), 2 (clear) or 3 (breaks the throw).',
  OPPOSITES: 'The two points cannot both be present in one throw.',
  CAUSE_NOT_PRESENT: 'What it seemed to come from is not noted as present in this throw.',
  CAUSE_LATER: 'What it seemed to come from happens later in the throw.',
  CAUSES_IN_A_CIRCLE: 'Each of these points seems to come from the other.',
};

/** Every problem of an observation before it is kept; none when it may be. Fouls may be observed, passes may not. */
export function observationProblems(
  observation: Observation,
  thrown: Pick<Thrown, 'event' | 'outcome'>,
  vocabulary: Vocabulary,
): readonly ObservationProblem[] {
  const scope = observation.scope.kind === 'noticed' ? null : observation.scope.codes;
  const found: ObservationProblem[] = [];
  const add = (code: ObservationProblemCode, path: string): void => {
    found.push({ code, path, sentence: SENTENCES[code] });
  };
  if (thrown.outcome === 'pass') add('NOTHING_THROWN', 'throwId');
  if (scope?.length === 0) add('SCOPE_EMPTY', 'scope');
  const codes = [
    ...(scope ?? []).map((code, at) => ({ code, path: `scope.codes.${at}` })),
    ...observation.marks.map(({ code }, at) => ({ code, path: `marks.${at}.code` })),
  ];
  for (const { code, path } of codes) {
    const problem = codeProblem(code, thrown, vocabulary);
    if (problem) add(problem, path);
  }
  observation.marks.forEach((mark, at) => {
    for (const [problem, field] of markProblems(mark, at, observation, scope, vocabulary)) {
      add(problem, `marks.${at}.${field}`);
    }
  });
  return found.sort((a, b) => order(a.code) - order(b.code));
}

function order(code: ObservationProblemCode): number {
  return OBSERVATION_PROBLEM_CODES.indexOf(code);
}

function codeProblem(
  code: string,
  { event }: Pick<Thrown, 'event'>,
  vocabulary: Vocabulary,
): ObservationProblemCode | null {
  const definition = definitionOf(vocabulary, code);
  if (definition === null) return 'CODE_UNKNOWN';
  if (definition.event !== event) return 'CODE_OF_OTHER_EVENT';
  return isActive(vocabulary, code) ? null : 'CODE_RETIRED';
}

type Found = readonly [ObservationProblemCode, keyof FaultMark];

function markProblems(
  mark: FaultMark,
  at: number,
  { marks }: Observation,
  scope: readonly string[] | null,
  vocabulary: Vocabulary,
): readonly Found[] {
  const found: Found[] = [];
  if (marks.findIndex(({ code }) => code === mark.code) !== at) found.push(['NOTED_TWICE', 'code']);
  if (scope !== null && !scope.includes(mark.code)) found.push(['NOT_IN_SCOPE', 'code']);
  if (![0, 1, 2, 3].includes(mark.severity)) found.push(['SEVERITY_OUT_OF_RANGE', 'severity']);
  const present = marks.filter(({ severity }) => severity > 0);
  if (isSecondOfOpposites(mark, at, marks, vocabulary)) found.push(['OPPOSITES', 'code']);
  const cause = causeProblem(mark, present, vocabulary);
  if (cause) found.push([cause, 'causedBy']);
  return found;
}

/** Named once, at the later of the two. */
function isSecondOfOpposites(
  { code, severity }: FaultMark,
  at: number,
  marks: readonly FaultMark[],
  vocabulary: Vocabulary,
): boolean {
  const opposite = definitionOf(vocabulary, code)?.opposite;
  if (severity === 0 || opposite === undefined) return false;
  return marks.slice(0, at).some((other) => other.code === opposite && other.severity > 0);
}

function causeProblem(
  { code, causedBy }: FaultMark,
  present: readonly FaultMark[],
  vocabulary: Vocabulary,
): ObservationProblemCode | null {
  if (causedBy === null) return null;
  const isPresent = (one: string): boolean => present.some((mark) => mark.code === one);
  if (!isPresent(causedBy) || !isPresent(code)) return 'CAUSE_NOT_PRESENT';
  const [own, cause] = [definitionOf(vocabulary, code), definitionOf(vocabulary, causedBy)];
  const later = own && cause && phaseOrder(cause.event, cause.phase) > phaseOrder(own.event, own.phase);
  if (later) return 'CAUSE_LATER';
  const causeOf = (one: string): string | null => present.find((mark) => mark.code === one)?.causedBy ?? null;
  let current: string | null = causedBy;
  for (let steps = 0; current !== null && steps <= present.length; steps++) {
    if (current === code) return 'CAUSES_IN_A_CIRCLE';
    current = causeOf(current);
  }
  return null;
}

/** Faults that seemed to come from no other of the same throw: where to look first. */
export function rootsOf(observation: Observation): readonly FaultMark[] {
  return observation.marks.filter(({ severity, causedBy }) => severity > 0 && causedBy === null);
}
