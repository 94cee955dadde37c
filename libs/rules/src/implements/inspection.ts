import type { Citation } from '../rule-sets/rule-set.js';
import type { Implement } from './implement-for.js';
import type { Dimension } from './specification.js';

/** What the official weighed and measured. */
export interface Measured {
  /** `null`: not weighed. */
  readonly grams: number | null;
  /** In whole millimetres; what was not measured is left away. */
  readonly mm: Readonly<Partial<Record<Dimension, number>>>;
}

export type FindingVerdict = 'passes' | 'too small' | 'too large' | 'not measured';

/** One thing that was looked at. Limits are included; `null`: none. */
export interface Finding {
  readonly what: 'mass' | Dimension;
  readonly unit: 'g' | 'mm';
  readonly measured: number | null;
  readonly min: number | null;
  readonly max: number | null;
  readonly verdict: FindingVerdict;
  readonly cite: Citation;
}

/**
 * `failed`: something is outside its limits. `incomplete`: nothing is, but the implement was not weighed. `passed`:
 * it was, and whatever was measured is within its limits; what was not is among the findings.
 */
export type InspectionOutcome = 'passed' | 'failed' | 'incomplete';

export interface Inspection {
  readonly outcome: InspectionOutcome;
  readonly findings: readonly Finding[];
}

/** A reading that no scale or tape shows. */
export interface MeasuredProblem {
  readonly field: 'grams' | Dimension;
  readonly code: 'READING';
  readonly message: string;
}

/** Everything in the readings that cannot be. */
export function measuredProblems({ grams, mm }: Measured): MeasuredProblem[] {
  const readings = [['grams', grams] as const, ...(Object.entries(mm) as [Dimension, number][])];
  return readings
    .filter(([, value]) => value !== null && !(Number.isSafeInteger(value) && value > 0 && value < 100_000))
    .map(([field, value]) => {
      const unit = field === 'grams' ? 'grams' : 'millimetres';
      const message = `${field}: a whole number of ${unit} above 0 and below 100000, not ${value}. Read it again.`;
      return { field, code: 'READING', message };
    });
}

/** Holds an implement against the rules: every limit with what was measured, the mass first. */
export function inspect(measured: Measured, implement: Implement): Inspection {
  const mass = finding('mass', 'g', measured.grams, implement.grams, null, implement.cite);
  const dimensions = (implement.limits?.value ?? []).map(({ what, minMm, maxMm }) =>
    finding(what, 'mm', measured.mm[what] ?? null, minMm, maxMm, implement.limits!.cite),
  );
  const findings = [mass, ...dimensions];
  const isOutside = findings.some(({ verdict }) => verdict === 'too small' || verdict === 'too large');
  const outcome = isOutside ? 'failed' : measured.grams === null ? 'incomplete' : 'passed';
  return { outcome, findings };
}

function finding(
  what: Finding['what'],
  unit: Finding['unit'],
  measured: number | null,
  min: number | null,
  max: number | null,
  cite: Citation,
): Finding {
  return { what, unit, measured, min, max, verdict: verdictOn(measured, min, max), cite };
}

function verdictOn(measured: number | null, min: number | null, max: number | null): FindingVerdict {
  if (measured === null) return 'not measured';
  if (min !== null && measured < min) return 'too small';
  return max !== null && measured > max ? 'too large' : 'passes';
}

/** A finding in words: `mass 1998 g, at least 2000 g (WA TR32, table of implements)`. */
export function findingSentence({ what, unit, measured, min, max, cite }: Finding): string {
  const found = measured === null ? 'not measured' : `${measured} ${unit}`;
  return `${what} ${found}, ${limitWords(min, max, unit)} (${cite.rule})`;
}

function limitWords(min: number | null, max: number | null, unit: string): string {
  if (min !== null && max !== null) return `${min} to ${max} ${unit}`;
  if (min !== null) return `at least ${min} ${unit}`;
  return max === null ? 'no limit' : `at most ${max} ${unit}`;
}
