import { n } from '../../labels/notebook/words.js';
import { IntervalBar } from '../plots/IntervalBar.jsx';
import { said } from '../practice/words.js';
import type { HistoryThrow, PointFindings } from './findings.js';
import { Opened } from './Opened.jsx';
import { effectText, foulsText, seenText } from './sentences.js';

interface PointListProps {
  readonly points: readonly PointFindings[];
  readonly history: readonly HistoryThrow[];
}

/** How often each point is seen, in the order of the throw. */
export function SeenList({ points, history }: PointListProps) {
  return (
    <section>
      <h3>{n('seen.title')}</h3>
      <p class="hint">{n('seen.how')}</p>
      <ul class="findings">
        {points.map(({ code, name, seen, caution }) => (
          <li key={code} class="finding">
            <h4>{said(name)}</h4>
            {seen.share !== null && (
              <IntervalBar
                value={100 * seen.share}
                interval={seen.interval && hundred(seen.interval)}
                domain={[0, 100]}
                zero={null}
                label={seenText(seen)}
              />
            )}
            <p>{seenText(seen)}</p>
            {caution && <p class="caution">{n('caution.pain')}</p>}
            <Opened about={said(name)} attempts={seen.attempts} history={history} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function hundred({ low, high, level }: NonNullable<PointFindings['seen']['interval']>) {
  return { low: low === null ? null : 100 * low, high: high === null ? null : 100 * high, level };
}

/** What goes with longer and shorter marks in the same series, and what nobody can say yet. */
export function EffectList({ points, history }: PointListProps) {
  const withAnswer = points.filter(({ distance }) => distance);
  const ends = withAnswer.flatMap(({ distance }) => [
    distance!.percent ?? 0,
    ...[distance!.interval?.low, distance!.interval?.high].filter((end) => typeof end === 'number'),
  ]);
  const reach = Math.min(20, Math.max(4, ...ends.map((end) => Math.abs(end))));
  return (
    <section>
      <h3>{n('effect.title')}</h3>
      <p class="hint">{n('effect.how')}</p>
      <ul class="findings">
        {withAnswer.map(({ code, name, distance, fouls }) => (
          <li key={code} class="finding" data-known={distance!.refused ? 'no' : 'yes'}>
            <h4>{said(name)}</h4>
            {distance!.refused ? (
              <p class="not-yet">
                <strong>{n('effect.notYet')}</strong> {effectText(distance!)}
              </p>
            ) : (
              <>
                <IntervalBar
                  value={distance!.percent ?? 0}
                  interval={distance!.interval}
                  domain={[-reach, reach]}
                  zero={0}
                  label={effectText(distance!)}
                />
                <p>{effectText(distance!)}</p>
              </>
            )}
            {fouls && !fouls.refused && <p>{foulsText(fouls)}</p>}
            <Opened about={said(name)} attempts={distance!.attempts} history={history} />
          </li>
        ))}
      </ul>
    </section>
  );
}
