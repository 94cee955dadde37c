import { bodyText } from '../desk/entry/body-text.js';
import type { Body } from '../desk/competition/request.js';
import { markText } from '../labels/format.js';
import { t, tCode } from '../labels/languages.js';
import { oCode } from '../labels/office/words.js';

/** What some kinds of entries say beside. */
interface Trial {
  readonly round?: number;
  readonly foul?: string | null;
  readonly protested?: number | boolean | null;
}

/** What an entry of a journal says; of a kind that is newer than this page, its name. */
export function saidInEntry(body: unknown, unit: string): string {
  if (typeof body !== 'object' || body === null) return '';
  const entry = body as Body & Trial;
  const own = unit === 'CM' ? 'cm' : 'qin';
  if (entry.kind === 'sign-off') return [entry.incomplete, entry.despite].filter(Boolean).join(' · ');
  const text = bodyText(entry, own);
  const word = text === entry.kind ? oCode('kind', entry.kind) : text;
  const foul = entry.foul ? ` (${tCode('foul', entry.foul)})` : '';
  const held = typeof entry.protested === 'number' ? ` (${markText(entry.protested, own)})` : '';
  const round = typeof entry.round === 'number' ? ` · ${t('standing.round', { round: entry.round })}` : '';
  return word + foul + held + round;
}
