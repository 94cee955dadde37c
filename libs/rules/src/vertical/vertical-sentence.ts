import { ordinal } from '../ranking/decision.js';
import type { NoPlaceReason } from '../result/reason.js';
import type { Countback, VerticalPlaceReason, VerticalReason } from './vertical-reason.js';

/** A reason in words, e.g. `2nd: equal height 1.99; 2 failures at it against 1`. The rule is not in it. */
export function verticalSentenceOf(reason: VerticalReason): string {
  if (reason.place === null) return `No place: ${withoutPlace(reason)}`;
  const { place, shared, own, mark } = reason;
  const better = mark === own.height ? '' : `; cleared ${mark} in the jump-off`;
  return `${ordinal(place)}${shared ? ', shared' : ''}: ${grounds(reason)}${better}`;
}

function withoutPlace({ status, mark }: NoPlaceReason): string {
  switch (status) {
    case 'NM':
      return 'no height cleared';
    case 'DQ':
      return 'disqualified';
    case 'DNS':
      return 'did not start';
    case 'GUEST':
      return mark === null ? 'guest' : `guest, cleared ${mark}`;
  }
}

function grounds({ decidedBy, shared, own, other, jumpedOff }: VerticalPlaceReason): string {
  const inJumpOff = !jumpedOff ? '' : shared ? '; level in the jump-off' : '; best in the jump-off';
  switch (decidedBy) {
    case 'first':
      return `cleared ${own.height}${inJumpOff}`;
    case 'height':
      return `cleared ${own.height}${other ? ` against ${other.height}` : ''}`;
    case 'failures at height':
      return `equal height ${own.height}; ${failures(own.failuresAtHeight)} at it${against(other?.failuresAtHeight)}`;
    case 'total failures':
      return `equal height ${own.height} and ${failures(own.failuresAtHeight)} at it; ${failures(own.totalFailures)} up to it${against(other?.totalFailures)}`;
    case 'jump-off':
      return `${level(own)}; decided in the jump-off`;
    case 'equal':
      return `${level(own)}${inJumpOff}`;
  }
}

function level({ height, failuresAtHeight, totalFailures }: Countback): string {
  return `equal height ${height}, ${failures(failuresAtHeight)} at it and ${totalFailures} up to it`;
}

function against(count: number | undefined): string {
  return count === undefined ? '' : ` against ${count}`;
}

function failures(count: number): string {
  return `${count} ${count === 1 ? 'failure' : 'failures'}`;
}
