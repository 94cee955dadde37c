/** Why a question about a flight has no answer, in order of precedence. */
export const FLIGHT_REFUSAL_CODES = [
  'NOT_MODELLED',
  'IMPLEMENT_UNKNOWN',
  'RELEASE_OUT_OF_RANGE',
  'NO_WIND',
  'WIND_TOO_STRONG',
  'SPEED_OUT_OF_RANGE',
] as const;
export type FlightRefusalCode = (typeof FLIGHT_REFUSAL_CODES)[number];

export interface FlightRefusal {
  readonly kind: 'refused';
  readonly code: FlightRefusalCode;
  /** Why, and what can be done about it, in plain words. */
  readonly sentence: string;
}

const SENTENCES: Readonly<Record<FlightRefusalCode, string>> = {
  NOT_MODELLED:
    'What the air does to this implement is not modelled here. Discus, shot and hammer are; for a javelin only the ' +
    'speed without air can be given.',
  IMPLEMENT_UNKNOWN:
    'The rules list no implement of this mass. Give its diameter, or choose a mass of the rules.',
  RELEASE_OUT_OF_RANGE:
    'The release is outside what a throw can be: 5–80° upwards, 0–300 cm high, a disc tilted by less than 90°.',
  NO_WIND: 'No wind was measured at this throw, so nothing can be said of what it was worth.',
  WIND_TOO_STRONG:
    'Above 5 m/s, gusts and the height of the gauge decide more than the model knows. The mark stands as it is.',
  SPEED_OUT_OF_RANGE:
    'No release speed between 5 and 40 m/s gives this mark with this release. Read the mark and the release again.',
};

export function flightRefused(code: FlightRefusalCode): FlightRefusal {
  return { kind: 'refused', code, sentence: SENTENCES[code] };
}
