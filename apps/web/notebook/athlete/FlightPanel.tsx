import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { dayText, localDecimals } from '../../labels/format.js';
import { n } from '../../labels/notebook/words.js';
import { Bars } from '../plots/Bars.jsx';
import { useNotebook } from '../notebook.js';
import { centimetres, type HistoryThrow } from './findings.js';

interface Flight {
  readonly speedMps: number | null;
  readonly speedRefused: { readonly sentence: string } | null;
  readonly tradeOff: {
    readonly perMetrePerSecondM: number;
    readonly perDegreeM: number;
    readonly perTenCentimetresM: number;
  } | null;
  readonly stillAir: { readonly isNegligible: boolean; readonly low: string; readonly high: string } | null;
}

const FLIGHT = `query NotebookFlight($event: EventCode!, $implementGrams: Int!, $mark: Mark!, $wind: WindReading) {
  throwFlight(event: $event, implementGrams: $implementGrams, mark: $mark, wind: $wind) {
    speedMps speedRefused { sentence }
    tradeOff { perMetrePerSecondM perDegreeM perTenCentimetresM }
    stillAir { isNegligible low high }
  }
}`;

/** What a little more of speed, angle or height is worth around the best throw: to learn from. */
export function FlightPanel({
  event,
  history,
}: {
  readonly event: string;
  readonly history: readonly HistoryThrow[];
}) {
  const notebook = useNotebook();
  const flight = useSignal<Flight | null>(null);
  const best = history
    .filter(({ mark, isMeasured, implementGrams }) => mark !== null && isMeasured && implementGrams !== null)
    .reduce<HistoryThrow | null>(
      (most, one) => (most === null || centimetres(one.mark!) > centimetres(most.mark!) ? one : most),
      null,
    );
  useEffect(() => {
    if (!best || event.endsWith('JUMP')) return;
    const { implementGrams, mark, wind } = best;
    void notebook
      .read<{ throwFlight: Flight }>(FLIGHT, { event, implementGrams, mark, wind })
      .then((answer) => (flight.value = answer?.throwFlight ?? null));
  }, [best?.id, event]);
  if (!best || !flight.value) return null;
  const { speedMps, speedRefused, tradeOff, stillAir } = flight.value;
  const metresText = (value: number): string => `${localDecimals(value.toFixed(2))} m`;
  return (
    <section>
      <h3>{n('flight.title')}</h3>
      <p>
        {speedMps === null
          ? (speedRefused?.sentence ?? '')
          : n('flight.speed', {
              mark: localDecimals(best.mark!),
              date: dayText(best.onDate),
              speed: localDecimals(speedMps.toFixed(1)),
            })}
      </p>
      {tradeOff && (
        <Bars
          rows={[
            {
              label: n('flight.perSpeed'),
              value: tradeOff.perMetrePerSecondM / 2,
              text: metresText(tradeOff.perMetrePerSecondM / 2),
            },
            {
              label: n('flight.perHeight'),
              value: tradeOff.perTenCentimetresM,
              text: metresText(tradeOff.perTenCentimetresM),
            },
            {
              label: n('flight.perDegree'),
              value: tradeOff.perDegreeM,
              text: metresText(tradeOff.perDegreeM),
            },
          ]}
        />
      )}
      {stillAir && (
        <p>
          {stillAir.isNegligible
            ? n('flight.windNothing')
            : n('flight.stillAir', { low: localDecimals(stillAir.low), high: localDecimals(stillAir.high) })}
        </p>
      )}
      <p class="hint">{n('flight.how')}</p>
    </section>
  );
}
