import type { RuleSetCode } from '../codes.js';
import { cited } from '../rule-sets/citing.js';
import { ruleSet } from '../rule-sets/index.js';
import type { Cited } from '../rule-sets/rule-set.js';

/** Whether marks made indoors stand in lists of their own. */
export type Roof = 'apart' | 'together';

/** What decides in which lists a mark stands and how it counts there. */
export interface RecordTerms {
  /** Whole tenths of m/s, at most. */
  readonly windLimitTenths: number;
  readonly roof: Roof;
  /** The first day of a season, `MM-DD`. */
  readonly seasonStarts: string;
}

/** By rule set. World Athletics keeps one list of field events, with a roof or without, since about November 2023. */
export const ROOF: Readonly<Record<RuleSetCode, Cited<Roof>>> = {
  WA: cited('together', 'WA CR31, since 2023', 'memory'),
  WMA: cited('apart', 'WMA, records', 'memory'),
  USATF: cited('apart', 'USATF, records', 'memory'),
  NCAA: cited('apart', 'NCAA, records', 'memory'),
  NFHS: cited('apart', 'NFHS, records', 'memory'),
};

/** The terms of a rule set in one edition; the season is the calendar year unless the club says otherwise. */
export function recordTerms(
  rules: RuleSetCode,
  edition: string,
  own: Partial<RecordTerms> = {},
): RecordTerms {
  const windLimitTenths = ruleSet(rules, edition).windLimit.value;
  return { windLimitTenths, roof: ROOF[rules].value, seasonStarts: '01-01', ...own };
}
