import { locale } from '../../labels/languages.js';
import { localDecimals, timeText } from '../../labels/format.js';
import { o, oCode } from '../../labels/office/words.js';
import { saidInEntry } from '../said-in-entry.js';

export interface TrailEntry {
  readonly id: string;
  readonly at: string;
  readonly kind: string;
  readonly bib: string | null;
  readonly competitorName: string | null;
  readonly standing: string | null;
  readonly actor: string;
  readonly name: string | null;
  readonly authority: string | null;
  readonly device: string | null;
  readonly reason: string | null;
  readonly before: unknown;
  readonly after: unknown;
  readonly competition: { readonly id: string; readonly title: string; readonly unit: string } | null;
}

/** One line: when and what; whom it is about and what it changed; who, on what, why. */
export function TrailLine({ entry }: { readonly entry: TrailEntry }) {
  const { at, kind, bib, competitorName, competition, standing, name, actor, authority, device, reason } =
    entry;
  const [before, after] = [
    contentOf(entry.before, competition?.unit),
    contentOf(entry.after, competition?.unit),
  ];
  const time = new Intl.DateTimeFormat(locale.value, { dateStyle: 'short', timeStyle: 'medium' }).format(
    Date.parse(at),
  );
  return (
    <>
      <p>
        <time dateTime={at}>{time}</time> <strong>{kindText(kind)}</strong>
        {standing === 'held' && ` (${oCode('about', 'held')})`}
        {competition && ` · ${competition.title}`}
        {bib !== null && ` · ${bib} ${competitorName ?? ''}`}
      </p>
      {(before || after) && (
        <p>
          {before && <del>{before}</del>} {before && after && '→ '}
          {after}
        </p>
      )}
      {reason !== null && <p>“{reason}”</p>}
      <p class="hint">
        {name ?? (actor.length > 20 ? `${actor.slice(0, 8)}…` : actor)}
        {authority !== null && ` · ${oCode('authority', authority)}`}
        {device !== null && ` · ${device}`}
      </p>
    </>
  );
}

const COMBINED = 'combined-';

function kindText(kind: string): string {
  if (!kind.startsWith(COMBINED)) return oCode('kind', kind);
  return `${o('kind.combined')}: ${oCode('kind', kind.slice(COMBINED.length))}`;
}

/** An entry of a journal as it is read aloud; of anything else its values, without ids. */
function contentOf(content: unknown, unit: string | undefined): string {
  if (typeof content !== 'object' || content === null) return '';
  if (
    'kind' in content &&
    unit !== undefined &&
    !('revision' in content) &&
    !('despite' in content && 'mark' in content)
  )
    return saidInEntry(content, unit);
  return Object.entries(content)
    .filter(([key]) => key !== 'kind')
    .map(([key, value]) => valueText(key, value))
    .filter((text) => text !== '')
    .join(' · ');
}

const UUID = /^[0-9a-f]{8}-[0-9a-f-]{27}$/;
/** Milliseconds since the epoch, and no measure. */
const A_LONG_TIME = 1e11;
const INSTANT = /^\d{4}-\d\d-\d\dT/;
/** Words of ours, by what they say. */
const WORDS: Readonly<Record<string, string>> = {
  form: 'form',
  ground: 'ground',
  timeliness: 'timeliness',
  outcome: 'protest',
};

function valueText(key: string, value: unknown): string {
  if (value === true) return key;
  if (Array.isArray(value)) return value.map(itemText).filter(Boolean).join(', ');
  if (typeof value === 'object' && value !== null) return itemText(value);
  if (key === 'hundredths' && typeof value === 'number') return localDecimals((value / 100).toFixed(2));
  if (typeof value === 'number') return String(value);
  if (typeof value !== 'string' || UUID.test(value) || INSTANT.test(value)) return '';
  return key in WORDS ? oCode(WORDS[key]!, value.toUpperCase().replaceAll(' ', '_')) : value;
}

function itemText(item: unknown): string {
  if (typeof item !== 'object' || item === null) return String(item);
  const { post, name } = item as { readonly post?: string; readonly name?: string };
  if (post !== undefined && name !== undefined)
    return `${oCode('post', post.toUpperCase().replaceAll('-', '_'))}: ${name}`;
  return Object.values(item)
    .filter((one) => (typeof one === 'string' || typeof one === 'number') && !UUID.test(String(one)))
    .map((one) => (typeof one === 'number' && one > A_LONG_TIME ? timeText(one) : String(one)))
    .join(' ');
}
