import { eventOf } from '#rules';
import { localDecimals, timeText } from '../../labels/format.js';
import { t } from '../../labels/languages.js';
import { eventIn } from '../competition/head.js';
import type { Person } from '../competition/people.js';
import { useOpen } from '../desk-context.js';

/** What those at the circle have to know of whoever is up, beside the name. */
export function Beside({ person }: { readonly person: Person }) {
  const { open } = useOpen();
  const event = eventOf(eventIn(open.kept.head));
  const away = open.folded.state.away.get(person.key);
  const { implementGrams: grams, alsoEntered } = person;
  const hasGates = event.code === 'discus' || event.code === 'hammer';
  return (
    <>
      {person.isLeftHanded && <p class="notice warning">{t(hasGates ? 'hand.leftGates' : 'hand.left')}</p>}
      {away && (
        <p class="notice held">
          {t('away.to', { to: away.to })}
          {away.until !== null && ` · ${t('away.until', { time: timeText(away.until) })}`}
        </p>
      )}
      {person.isUnmatched && <p class="hint">{t('late.unmatched')}</p>}
      {(alsoEntered.length > 0 || (event.kind === 'throw' && grams !== null)) && (
        <p class="hint">
          {[
            event.kind === 'throw' && grams !== null ? gramsText(grams) : null,
            alsoEntered.length > 0 ? t('away.alsoIn', { what: alsoEntered.map(whereText).join(', ') }) : null,
          ]
            .filter((text) => text !== null)
            .join(' · ')}
        </p>
      )}
    </>
  );
}

function whereText({ title, startsAt }: Person['alsoEntered'][number]): string {
  return startsAt === null ? title : `${title} ${timeText(Date.parse(startsAt))}`;
}

/** `800 g`, `7.26 kg`. */
export function gramsText(grams: number): string {
  return grams < 1000
    ? `${grams} g`
    : `${localDecimals((grams / 1000).toFixed(3).replace(/0{1,2}$/, ''))} kg`;
}
