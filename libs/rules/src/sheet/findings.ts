import type { Problem } from '../result/result-document.js';
import { comparePlaces, pointerOf, type Place } from './place.js';
import { PROBLEM_CODES, type ProblemCode } from './problem-codes.js';

interface Finding {
  readonly place: Place;
  readonly code: ProblemCode;
  readonly message: string;
  readonly rule: string | null;
}

const PRECEDENCE = new Map(PROBLEM_CODES.map((code, index) => [code, index]));

/** Collects what is wrong with one file: for each place the problem that takes precedence. */
export class Findings {
  private readonly byPointer = new Map<string, Finding>();

  report(place: Place, code: ProblemCode, message: string, rule: string | null = null): void {
    const pointer = pointerOf(place);
    const known = this.byPointer.get(pointer);
    if (!known || precedence(code) < precedence(known.code)) {
      this.byPointer.set(pointer, { place, code, message, rule });
    }
  }

  get count(): number {
    return this.byPointer.size;
  }

  hasAt(place: Place): boolean {
    return this.count > 0 && this.byPointer.has(pointerOf(place));
  }

  /** In document order. */
  problems(): Problem[] {
    return [...this.byPointer]
      .sort(([, a], [, b]) => comparePlaces(a.place, b.place))
      .map(([path, { code, message, rule }]) => ({ path, code, message, rule }));
  }
}

function precedence(code: ProblemCode): number {
  return PRECEDENCE.get(code) ?? PROBLEM_CODES.length;
}
