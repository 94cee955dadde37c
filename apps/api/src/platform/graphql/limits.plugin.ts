import { parse, type DocumentNode, type ValidationRule } from 'graphql';
import type { Plugin } from 'graphql-yoga';
import { Cost } from './document-cost.js';
import { Amounts, Depth, OneCredential, OneOperation } from './document-limits.js';
import { NoHostileLiterals, refuseHostileVariables } from './hostile-text.js';
import { LIMITS } from './limits.js';

export const RULES: readonly ValidationRule[] = [
  OneOperation,
  OneCredential,
  Amounts,
  Depth,
  Cost,
  NoHostileLiterals,
];

/** Holds every document and its variables to the limits, before anything is executed. */
export function useLimits(): Plugin {
  return {
    onParse({ setParseFn }) {
      setParseFn(
        (source: Parameters<typeof parse>[0]): DocumentNode => parse(source, { maxTokens: LIMITS.tokens }),
      );
    },
    onValidate({ addValidationRule }) {
      for (const rule of RULES) addValidationRule(rule);
    },
    onParams({ params }) {
      if (params.variables) refuseHostileVariables(params.variables);
    },
  };
}
