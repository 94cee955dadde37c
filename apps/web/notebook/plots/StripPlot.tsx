import { scaleLinear, scalePoint } from 'd3-scale';
import { dayText, localDecimals } from '../../labels/format.js';
import { locale } from '../../labels/languages.js';
import { n } from '../../labels/notebook/words.js';
import { centimetres, type HistoryThrow } from '../athlete/findings.js';
import { metres } from './AttemptsPlot.jsx';
import { Plot } from './Plot.jsx';
import { Shape } from './Shape.jsx';

const HEIGHT = 220;
const MARGIN = { top: 12, right: 14, bottom: 52, left: 46 };
const MOST = 8;

interface Meet {
  readonly occasion: string;
  readonly name: string;
  readonly onDate: string;
  readonly cms: readonly number[];
  readonly fouls: number;
}

/** The newest competitions, the oldest of them first. */
export function meetsOf(history: readonly HistoryThrow[]): readonly Meet[] {
  const meets = new Map<string, HistoryThrow[]>();
  for (const one of history.filter(({ thrownIn }) => thrownIn === 'COMPETITION'))
    meets.set(one.occasion, [...(meets.get(one.occasion) ?? []), one]);
  return [...meets.values()]
    .map((all) => ({
      ...{ occasion: all[0]!.occasion, name: all[0]!.occasionName, onDate: all[0]!.onDate },
      cms: all.flatMap(({ mark }) => (mark === null ? [] : [centimetres(mark)])),
      fouls: all.filter(({ outcome }) => outcome === 'FOUL').length,
    }))
    .slice(-MOST);
}

/** The marks of each competition side by side, with how many fouls there were. */
export function StripPlot({ history }: { readonly history: readonly HistoryThrow[] }) {
  const meets = meetsOf(history);
  const cms = meets.flatMap((meet) => meet.cms);
  if (cms.length === 0) return null;
  const day = new Intl.DateTimeFormat(locale.value, { day: 'numeric', month: 'short', timeZone: 'UTC' });
  return (
    <Plot
      title={n('plot.strips')}
      desc={n('plot.stripsDesc', { count: meets.length })}
      height={HEIGHT}
      draw={(width) => {
        const x = scalePoint(
          meets.map(({ occasion }) => occasion),
          [MARGIN.left, width - MARGIN.right],
        ).padding(0.5);
        const y = scaleLinear(
          [Math.min(...cms), Math.max(...cms)],
          [HEIGHT - MARGIN.bottom - 8, MARGIN.top + 6],
        ).nice(4);
        return (
          <>
            {y.ticks(4).map((cm) => (
              <g key={cm}>
                <line class="grid" x1={MARGIN.left} x2={width - MARGIN.right} y1={y(cm)} y2={y(cm)} />
                <text class="tick" x={MARGIN.left - 6} y={y(cm) + 4} text-anchor="end">
                  {metres(cm)}
                </text>
              </g>
            ))}
            {meets.map((meet) => (
              <g key={meet.occasion}>
                {meet.cms.map((cm, at) => (
                  <Shape key={at} kind="competition" x={x(meet.occasion)!} y={y(cm)} />
                ))}
                <text class="tick" x={x(meet.occasion)} y={HEIGHT - 30} text-anchor="middle">
                  {day.format(Date.parse(meet.onDate))}
                </text>
                <text class="tick" x={x(meet.occasion)} y={HEIGHT - 12} text-anchor="middle">
                  {meet.fouls > 0 ? `× ${meet.fouls}` : '–'}
                </text>
              </g>
            ))}
          </>
        );
      }}
      legend={<p class="hint">{n('plot.stripsLegend')}</p>}
      table={{
        head: [n('list.date'), n('list.where'), n('list.mark'), n('list.fouls')],
        rows: meets.map((meet) => [
          dayText(meet.onDate),
          meet.name,
          meet.cms.map(metres).join('  '),
          localDecimals(String(meet.fouls)),
        ]),
      }}
    />
  );
}
