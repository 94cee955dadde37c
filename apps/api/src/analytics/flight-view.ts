import { speedNeeded, stillAirEquivalent, tradeOff, type FlightRefusal, type ThrowSetting } from '#flight';
import { formatMark, parseMark, parseWind } from '#rules';
import type { FlightArgs, FlightRefused, ThrowFlight } from './flight.types.js';

/** Null: the mark is not in metres. */
export function flightOf(args: FlightArgs): ThrowFlight | null {
  const mark = parseMark(args.mark);
  if (mark?.unit !== 'cm') return null;
  const read = typeof args.wind === 'string' ? parseWind(args.wind) : null;
  const wind = typeof read === 'number' ? read : null;
  const setting: ThrowSetting = {
    ...{ event: args.event, massG: args.implementGrams, heightCm: args.heightCm },
    angleDeg: args.angleTenths / 10,
    ...(typeof args.attitudeTenths === 'number' && { attitudeDeg: args.attitudeTenths / 10 }),
  };
  const speed = speedNeeded(mark.value, setting, wind ?? 0);
  const trade = speed.kind === 'speed' ? tradeOff(speed.speedMps, setting, wind ?? 0) : speed;
  const still = stillAirEquivalent(mark.value, wind, setting);
  return {
    speedMps: speed.kind === 'speed' ? round(speed.speedMps, 2) : null,
    speedRefused: refused(speed),
    tradeOff:
      trade.kind === 'trade-off'
        ? {
            perMetrePerSecondM: round(trade.perMetrePerSecondM, 2),
            perDegreeM: round(trade.perDegreeM, 2),
            perTenCentimetresM: round(trade.perTenCentimetresM, 2),
            perDegreeOfAttitudeM:
              trade.perDegreeOfAttitudeM === null ? null : round(trade.perDegreeOfAttitudeM, 2),
          }
        : null,
    tradeOffRefused: refused(trade),
    stillAir:
      still.kind === 'refused'
        ? null
        : {
            isNegligible: still.kind === 'negligible',
            low: formatMark(still.lowCm, 'cm'),
            high: formatMark(still.highCm, 'cm'),
          },
    stillAirRefused: refused(still),
    model: speed.kind === 'speed' ? speed.model : null,
  };
}

function round(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}

function refused(answer: { readonly kind: string } | FlightRefusal): FlightRefused | null {
  if (answer.kind !== 'refused') return null;
  const { code, sentence } = answer as FlightRefusal;
  return { code, sentence };
}
