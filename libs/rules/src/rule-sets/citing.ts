import type { Citation, Cited } from './rule-set.js';

export function cited<T>(value: T, rule: string, basis: Citation['basis'], note?: string): Cited<T> {
  return { value, cite: citation(rule, basis, note) };
}

export function citation(rule: string, basis: Citation['basis'], note?: string): Citation {
  return note === undefined ? { rule, basis } : { rule, basis, note };
}
