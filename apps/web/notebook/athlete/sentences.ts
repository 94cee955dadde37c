import { localDecimals } from '../../labels/format.js';
import { n, nCode } from '../../labels/notebook/words.js';
import type { Effect, Fouls, Interval, Refused, SeenShare } from './findings.js';

/* What numbers say, in the language of the page. Everything here goes together; nothing brings anything about. */

function signed(value: number): string {
  const text = localDecimals(Math.abs(value).toFixed(1));
  return value < 0 ? `−${text}` : `+${text}`;
}

export function percentText(share: number): string {
  return `${Math.round(100 * share)} %`;
}

/** Ends without a bound are said. */
export function intervalText({ low, high, level }: Interval, text: (value: number) => string): string {
  return n('answer.interval', {
    level: Math.round(100 * level),
    low: low === null ? n('answer.open') : text(low),
    high: high === null ? n('answer.open') : text(high),
  });
}

/** Why there is nothing yet, and how many throws are missing. */
export function refusedText({ code, missingThrows }: Refused): string {
  const why = nCode('refused', code);
  if (missingThrows === null || missingThrows <= 0) return why;
  if (code === 'SCOPE_COVERAGE' || code === 'NOT_ASSESSED')
    return `${why} ${n('refused.toLookAt', { count: missingThrows })}`;
  return `${why} ${n('refused.missing', { count: missingThrows })}`;
}

export function seenText({ k, n: of, interval, refused }: SeenShare): string {
  if (refused || k === null || of === null) return refused ? refusedText(refused) : n('answer.none');
  const said = n('answer.seen', { k, n: of });
  return interval ? `${said} ${intervalText(interval, percentText)}` : said;
}

export function effectText(effect: Effect): string {
  const { percent, interval, throwsWith, throwsWithout, informativeSeries, refused } = effect;
  if (refused || percent === null) return refused ? refusedText(refused) : n('answer.none');
  const said = n(percent < 0 ? 'answer.shorter' : 'answer.longer', {
    percent: localDecimals(Math.abs(percent).toFixed(1)),
  });
  const from = n('answer.from', {
    series: informativeSeries ?? 0,
    with: throwsWith ?? 0,
    without: throwsWithout ?? 0,
  });
  const sure = effect.notYetKnown
    ? n('answer.couldBeNothing') +
      (effect.furtherThrows === null ? '' : ` ${n('answer.further', { count: effect.furtherThrows })}`)
    : n('answer.worthTesting');
  const range = interval ? intervalText(interval, (value) => `${signed(value)} %`) : '';
  return [said, range, from, sure].filter((part) => part !== '').join(' ');
}

export function foulsText({ riskDifference, throwsWith, throwsWithout, p, refused }: Fouls): string {
  if (refused || riskDifference === null) return refused ? refusedText(refused) : n('answer.none');
  const said = n(riskDifference >= 0 ? 'answer.moreFouls' : 'answer.fewerFouls', {
    count: Math.abs(Math.round(100 * riskDifference)),
    with: throwsWith ?? 0,
    without: throwsWithout ?? 0,
  });
  return `${said} ${n(p !== null && p < 0.05 ? 'answer.worthTesting' : 'answer.couldBeNothing')}`;
}
