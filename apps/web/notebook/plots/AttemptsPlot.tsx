import { scaleLinear, scaleUtc } from 'd3-scale';
import { area, line } from 'd3-shape';
import { dayText, localDecimals } from '../../labels/format.js';
import { locale } from '../../labels/languages.js';
import { n, nCode } from '../../labels/notebook/words.js';
import { centimetres, type HistoryThrow, type ImplementFindings } from '../athlete/findings.js';
import { massText } from '../practice/ThrownForm.jsx';
import { Plot } from './Plot.jsx';
import { Shape, type ShapeKind } from './Shape.jsx';
import { trendBand } from './trend-band.js';

interface AttemptsPlotProps {
  readonly history: readonly HistoryThrow[];
  readonly implements: readonly ImplementFindings[];
}

const HEIGHT = 280;
const MARGIN = { top: 12, right: 14, bottom: 44, left: 46 };
/** Told apart by the stroke, which a printer keeps. */
const DASHES = ['', '7 4', '2 4', '10 3 2 3'];

export function metres(cm: number): string {
  return localDecimals((cm / 100).toFixed(2));
}

export function implementText({
  implementGrams,
  variant,
}: Pick<HistoryThrow, 'implementGrams' | 'variant'>): string {
  const mass = implementGrams === null ? [] : [massText(implementGrams)];
  return [...mass, nCode('variant', variant)].join(', ');
}

/** Every attempt over time; the best of each day is joined for one implement, and a change of implement breaks the line. */
export function AttemptsPlot({ history, implements: found }: AttemptsPlotProps) {
  const marked = history.filter(({ mark }) => mark !== null);
  if (marked.length === 0) return <p>{n('plot.noMarks')}</p>;
  const fouls = history.filter(({ outcome }) => outcome === 'FOUL');
  const best = marked.reduce((a, b) => (centimetres(b.mark!) > centimetres(a.mark!) ? b : a));
  const desc = n('plot.attemptsDesc', {
    count: marked.length,
    fouls: fouls.length,
    best: localDecimals(best.mark!),
    date: dayText(best.onDate),
  });
  return (
    <Plot
      title={n('plot.attempts')}
      desc={desc}
      height={HEIGHT}
      draw={(width) => <Drawing width={width} marked={marked} fouls={fouls} found={found} />}
      legend={<Legend found={found} hasTrend={found.some((one) => trendBand(one) !== null)} />}
      table={{
        head: [n('list.date'), n('list.where'), n('list.implement'), n('list.mark')],
        rows: history.map((one) => [
          dayText(one.onDate),
          one.occasionName,
          implementText(one),
          one.mark === null ? nCode('outcome', one.outcome) : localDecimals(one.mark),
        ]),
      }}
    />
  );
}

interface DrawingProps {
  readonly width: number;
  readonly marked: readonly HistoryThrow[];
  readonly fouls: readonly HistoryThrow[];
  readonly found: readonly ImplementFindings[];
}

function Drawing({ width, marked, fouls, found }: DrawingProps) {
  const days = [...marked, ...fouls].map(({ onDate }) => Date.parse(onDate));
  const cms = marked.map(({ mark }) => centimetres(mark!));
  const x = scaleUtc(
    [Math.min(...days), Math.max(...days, Math.min(...days) + 86_400_000)],
    [MARGIN.left + 8, width - MARGIN.right - 8],
  );
  const y = scaleLinear(
    [Math.min(...cms), Math.max(...cms)],
    [HEIGHT - MARGIN.bottom - 18, MARGIN.top + 6],
  ).nice(5);
  const base = HEIGHT - MARGIN.bottom;
  const path = line<readonly [number, number]>(
    ([day]) => x(day),
    ([, cm]) => y(cm),
  );
  const band = area<readonly [number, number, number]>(
    ([day]) => x(day),
    ([, low]) => y(low),
    ([, , high]) => y(high),
  );
  const month = new Intl.DateTimeFormat(locale.value, { day: 'numeric', month: 'short', timeZone: 'UTC' });
  return (
    <>
      {y.ticks(5).map((cm) => (
        <g key={cm}>
          <line class="grid" x1={MARGIN.left} x2={width - MARGIN.right} y1={y(cm)} y2={y(cm)} />
          <text class="tick" x={MARGIN.left - 6} y={y(cm) + 4} text-anchor="end">
            {metres(cm)}
          </text>
        </g>
      ))}
      {ticksOf(x.ticks(6), Math.floor(width / 90)).map((day) => (
        <text key={+day} class="tick" x={x(day)} y={HEIGHT - 14} text-anchor="middle">
          {month.format(day)}
        </text>
      ))}
      <line class="axis" x1={MARGIN.left} x2={width - MARGIN.right} y1={base} y2={base} />
      {found.map((one, at) => {
        const trend = trendBand(one);
        const points = one.progress.map(({ onDate, bestCm }) => [Date.parse(onDate), bestCm] as const);
        return (
          <g key={one.implement}>
            {trend && <path class="band" d={band(trend.band) ?? ''} />}
            {trend && <path class="trend" d={path(trend.middle) ?? ''} />}
            <path class="best-line" d={path(points) ?? ''} stroke-dasharray={DASHES[at % DASHES.length]} />
          </g>
        );
      })}
      {marked.map(({ id, onDate, mark, thrownIn, isMeasured }) => (
        <Shape
          key={id}
          kind={shapeOf(thrownIn, isMeasured)}
          x={x(Date.parse(onDate))}
          y={y(centimetres(mark!))}
        />
      ))}
      {fouls.map(({ id, onDate }) => (
        <Shape key={id} kind="foul" x={x(Date.parse(onDate))} y={base - 9} />
      ))}
    </>
  );
}

/** Every second or third, where there is no room for all. */
function ticksOf(ticks: readonly Date[], most: number): readonly Date[] {
  const step = Math.ceil(ticks.length / Math.max(1, most));
  return ticks.filter((_, at) => at % step === 0);
}

function shapeOf(thrownIn: HistoryThrow['thrownIn'], isMeasured: boolean): ShapeKind {
  if (!isMeasured) return 'estimated';
  return thrownIn === 'COMPETITION' ? 'competition' : 'practice';
}

const KINDS = ['competition', 'practice', 'estimated', 'foul'] as const;

function Legend({
  found,
  hasTrend,
}: {
  readonly found: readonly ImplementFindings[];
  readonly hasTrend: boolean;
}) {
  return (
    <ul class="legend">
      {KINDS.map((kind) => (
        <li key={kind}>
          <svg width={16} height={16} aria-hidden="true">
            <Shape kind={kind} x={8} y={8} />
          </svg>
          {n(`shape.${kind}`)}
        </li>
      ))}
      {found.map((one, at) => (
        <li key={one.implement}>
          <svg width={30} height={16} aria-hidden="true">
            <path class="best-line" d="M0 8H30" stroke-dasharray={DASHES[at % DASHES.length]} />
          </svg>
          {n('plot.bestOf', { implement: implementText(one) })}
        </li>
      ))}
      {hasTrend && (
        <li>
          <svg width={30} height={16} aria-hidden="true">
            <path class="band" d="M0 3H30V13H0Z" />
            <path class="trend" d="M0 8H30" />
          </svg>
          {n('plot.trend')}
        </li>
      )}
    </ul>
  );
}
