import { useSignal } from '@preact/signals';
import { a } from '../../labels/account/words.js';
import { localDecimals } from '../../labels/format.js';
import { tCode } from '../../labels/languages.js';
import { n } from '../../labels/notebook/words.js';
import { addressOf, route } from '../../ui/route.js';
import { useNotebook } from '../notebook.js';
import { AttemptsPlot, implementText, metres } from '../plots/AttemptsPlot.jsx';
import { Bars } from '../plots/Bars.jsx';
import { StripPlot } from '../plots/StripPlot.jsx';
import { thrownBy } from '../practice/practice-day.js';
import { said } from '../practice/words.js';
import type { AthleteNotes } from '../shapes.js';
import { FilterBar } from './FilterBar.jsx';
import type { Analysis, Filter, HistoryThrow } from './findings.js';
import { FlightPanel } from './FlightPanel.jsx';
import { Opened } from './Opened.jsx';
import { EffectList, SeenList } from './PointList.jsx';
import { useFindings } from './reading.js';
import { intervalText, refusedText, seenText } from './sentences.js';

/** One athlete: what was thrown, what was seen, what goes with what, and what nobody can say yet. */
export function AthleteScreen() {
  const notebook = useNotebook();
  const athlete = notebook.athlete(route.value.id);
  return athlete ? <Athlete key={athlete.athleteId} athlete={athlete} /> : <p>{n('athlete.none')}</p>;
}

function Athlete({ athlete }: { readonly athlete: AthleteNotes }) {
  const notebook = useNotebook();
  const filter = useSignal<Filter>({
    ...{
      event: thrownBy(notebook, athlete).event,
      implementGrams: null,
      from: null,
      to: null,
      thrownIn: null,
    },
  });
  const { analysis, history } = useFindings(athlete.athleteId, filter.value);
  const masses = [...new Set((history.value ?? []).flatMap((one) => one.implementGrams ?? []))].sort(
    (x, y) => x - y,
  );
  return (
    <section class="athlete">
      <h2>{athlete.name}</h2>
      <p class="links">
        <a href={addressOf('review', athlete.athleteId)}>{n('section.review')}</a>
        <a href={addressOf('own', athlete.athleteId)}>{n('section.own')}</a>
      </p>
      <FilterBar filter={filter} masses={masses} />
      {history.value === null || analysis.value === null ? (
        <p class="hint">{a('reading')}</p>
      ) : history.value.length === 0 ? (
        <p>{n('athlete.nothing')}</p>
      ) : (
        <Found
          analysis={analysis.value}
          history={history.value}
          event={filter.value.event}
          isGrowing={athlete.isGrowing}
        />
      )}
    </section>
  );
}

interface FoundProps {
  readonly analysis: Analysis;
  readonly history: readonly HistoryThrow[];
  readonly event: string;
  readonly isGrowing: boolean;
}

function Found({ analysis, history, event, isGrowing }: FoundProps) {
  const { kind, points, tryNext } = analysis;
  const isWhole = kind === 'AthleteAnalysis';
  return (
    <>
      {analysis.askHowTheAthleteFeels && <p class="notice held">{n('athlete.ask')}</p>}
      {analysis.isFirstAnswer && <p class="hint">{n('athlete.first')}</p>}
      {!isWhole && (
        <p class="notice done">
          {tryNext ? n('own.tryNext', { point: said(tryNext.point) }) : n('own.justThrow')}
        </p>
      )}
      <AttemptsPlot history={history} implements={analysis.implements} />
      <Levels analysis={analysis} history={history} />
      <StripPlot history={history} />
      {isWhole && <Reasons analysis={analysis} history={history} />}
      {points.length > 0 ? <SeenList points={points} history={history} /> : <p>{n('athlete.unassessed')}</p>}
      {isWhole && points.length > 0 && <EffectList points={points} history={history} />}
      {isWhole && <NextPoints analysis={analysis} isGrowing={isGrowing} />}
      {isWhole && <FlightPanel event={event} history={history} />}
    </>
  );
}

/** Best, trend, spread and fouls with each implement. */
function Levels({ analysis, history }: Pick<FoundProps, 'analysis' | 'history'>) {
  return (
    <ul class="cards">
      {analysis.implements.map((one) => (
        <li key={one.implement} class="card">
          <h3>{implementText(one)}</h3>
          {one.best && (
            <p>
              {n('level.best')} <strong>{metres(one.best.cm)}</strong>{' '}
              <Opened about={n('level.best')} attempts={[one.best.attempt]} history={history} />
            </p>
          )}
          {one.trend && (
            <p>
              {n('level.trend')}{' '}
              {one.trend.cmPer30Days === null || !one.trend.interval
                ? one.trend.refused && refusedText(one.trend.refused)
                : `${cmText(one.trend.cmPer30Days)} ${intervalText(one.trend.interval, cmText)}`}{' '}
              <Opened about={n('level.trend')} attempts={one.trend.attempts} history={history} />
            </p>
          )}
          {one.consistency && (
            <p>
              {n('level.spread')}{' '}
              {one.consistency.cvPercent === null
                ? one.consistency.refused && refusedText(one.consistency.refused)
                : `${localDecimals(one.consistency.cvPercent.toFixed(1))} %`}{' '}
              <Opened about={n('level.spread')} attempts={one.consistency.attempts} history={history} />
            </p>
          )}
          {one.foulRate && (
            <p>
              {n('level.fouls')} {foulRateText(one.foulRate)}{' '}
              <Opened about={n('level.fouls')} attempts={one.foulRate.attempts} history={history} />
            </p>
          )}
        </li>
      ))}
    </ul>
  );
}

function foulRateText(rate: NonNullable<Analysis['implements'][number]['foulRate']>): string {
  if (rate.k === null || rate.n === null) return seenText(rate);
  const said = n('level.foulsOf', { k: rate.k, n: rate.n });
  return rate.interval
    ? `${said} ${intervalText(rate.interval, (share) => `${Math.round(100 * share)} %`)}`
    : said;
}

function cmText(cm: number): string {
  return `${cm < 0 ? '−' : '+'}${Math.abs(Math.round(cm))} cm`;
}

function Reasons({ analysis, history }: Pick<FoundProps, 'analysis' | 'history'>) {
  const reasons = analysis.foulsByReason ?? [];
  if (reasons.length === 0) return null;
  return (
    <section>
      <h3>{n('fouls.title')}</h3>
      <Bars
        rows={reasons.map(({ reason, count, attempts }) => {
          const label = reason === 'unknown' ? n('mark.whyUnsaid') : tCode('foul', reason);
          return {
            label,
            value: count,
            text: String(count),
            more: <Opened about={label} attempts={attempts} history={history} />,
          };
        })}
      />
    </section>
  );
}

/** Points with something to say, as they may be looked at next; those that cannot be told apart share a place. */
function NextPoints({ analysis, isGrowing }: { readonly analysis: Analysis; readonly isGrowing: boolean }) {
  const next = (analysis.next ?? []).filter(({ group }) => group !== null);
  const held = (analysis.next ?? []).filter(({ group }) => group === null);
  return (
    <section>
      <h3>{n('next.title')}</h3>
      {next.length === 0 && <p>{n('next.none')}</p>}
      <ol class="next-points">
        {next.map(({ code, name, point, caution, group }) => (
          <li key={code}>
            <strong>
              {group}. {said(name)}
            </strong>
            : {said(point)}
            {caution && <p class="caution">{n('caution.pain')}</p>}
          </li>
        ))}
      </ol>
      {held.length > 0 && (
        <p class="hint">
          {n(isGrowing ? 'next.heldGrowing' : 'next.held', {
            names: held.map(({ name }) => said(name)).join(', '),
          })}
        </p>
      )}
      <p class="hint">{n('next.how')}</p>
    </section>
  );
}
