import { formatMark } from '#rules';
import { unitIn } from '../competition/head.js';
import type { RecordClaim } from '../desk-store.js';
import type { KeptCompetition } from './database.js';

const RECORDS: ReadonlySet<string> = new Set(['CLUB_RECORD', 'MEET_RECORD']);

/**
 * The claims for which the next call has to wait: a record that was beaten or equalled. Bests are for later. Where
 * nothing was on record before this competition, whoever leads it beats the one before, over and over; that is no
 * record until one from outside has been beaten here, which `known` tells.
 */
export function recordsToSee(
  claims: readonly RecordClaim[],
  kept: KeptCompetition,
  known: Set<string>,
): readonly RecordClaim[] {
  const here = marksIn(kept);
  return claims.filter(({ kind, relation, of, before }) => {
    if (!RECORDS.has(kind) || (relation !== 'BETTER' && relation !== 'EQUAL')) return false;
    const list = `${kept.id} ${kind} ${of}`;
    if (before !== null && here.has(before) && !known.has(list)) return false;
    known.add(list);
    return true;
  });
}

/** Every mark and every height that was entered in a competition, as the API writes them. */
function marksIn({ head, items }: KeptCompetition): ReadonlySet<string> {
  const unit = unitIn(head);
  return new Set(
    items.flatMap(({ entry }) => {
      if ('mark' in entry && entry.mark !== null) return [formatMark(entry.mark, unit)];
      return 'height' in entry ? [formatMark(entry.height, unit)] : [];
    }),
  );
}
