import type { FaultEffect } from '../faults/fault-effect.js';
import type { FoulLink } from '../faults/foul-link.js';
import type { Prevalence } from '../faults/prevalence.js';

/** One decimal, with the sign that marks a change: +0.7, −2.0. */
function signed(percent: number): string {
  if (!Number.isFinite(percent)) return percent < 0 ? 'any loss' : 'any gain';
  const rounded = Math.abs(percent).toFixed(1);
  return `${percent < 0 && rounded !== '0.0' ? '−' : '+'}${rounded} %`;
}

function levelOf(level: number): string {
  return `${Math.round(100 * level)} % interval`;
}

/** What goes with a fault, in one sentence; never what it does to a throw. */
export function effectSentence(effect: FaultEffect): string {
  const size = `${Math.abs(effect.percent).toFixed(1)} %`;
  const way = effect.percent < 0 ? 'shorter' : 'longer';
  const { low, high, level } = effect.interval;
  const known = effect.notYetKnown ? 'not yet known: it could be nothing' : 'worth testing in practice';
  return (
    `In the same series, throws with this point were associated with marks about ${size} ${way} ` +
    `(${levelOf(level)} ${signed(low)} to ${signed(high)}; ${effect.informativeSeries} series, ` +
    `${effect.throwsWith} throws with it and ${effect.throwsWithout} without): ${known}.` +
    (effect.exact || effect.draws >= 20_000 ? '' : ' A first answer; a more exact one follows.')
  );
}

export function foulSentence(link: FoulLink): string {
  const more = link.riskDifference >= 0 ? 'more' : 'fewer';
  const per = Math.abs(100 * link.riskDifference).toFixed(0);
  const known = link.decidingP < 0.05 ? 'worth testing in practice' : 'not yet known: it could be nothing';
  return (
    `Throws with this point were associated with ${per} ${more} fouls in a hundred ` +
    `(${link.throwsWith} throws with it and ${link.throwsWithout} without): ${known}.`
  );
}

export function prevalenceSentence({ k, n, interval }: Prevalence): string {
  const seen = `Seen in ${k} of ${n} throws that were looked at for it`;
  if (interval === null) return `${seen}, all in one series.`;
  const percent = (share: number): string => (100 * share).toFixed(0);
  return `${seen} (${levelOf(interval.level)} ${percent(interval.low)}–${percent(interval.high)} %).`;
}
