/** Metres per second squared. One value for the whole project; 9.81 would change a 22 m put by 7 mm. */
export const STANDARD_GRAVITY = 9.80665;

/** Kilograms per cubic metre at sea level and 15 °C, dry: the air that still-air equivalents refer to. */
export const STANDARD_AIR_DENSITY = 1.225;

/** Pascal-seconds, at about 18 °C. It only enters the Reynolds number, where a few per cent do not matter. */
export const AIR_VISCOSITY = 1.81e-5;

const GAS_CONSTANT_DRY_AIR = 287.05;
const GAS_CONSTANT_VAPOUR = 461.495;
const CELSIUS_ZERO_KELVIN = 273.15;

export interface Weather {
  /** Pressure at the place itself, not reduced to sea level, in pascals. */
  readonly pressurePa: number;
  readonly temperatureC: number;
  /** From 0 (dry) to 1. */
  readonly humidity: number;
}

/** Pressure of saturated water vapour in pascals (Magnus form with the constants 17.62 and 243.12 °C). */
function saturationPa(temperatureC: number): number {
  return 611.2 * Math.exp((17.62 * temperatureC) / (243.12 + temperatureC));
}

/** Kilograms per cubic metre, as a mixture of dry air and water vapour, both ideal gases. */
export function airDensity({ pressurePa, temperatureC, humidity }: Weather): number {
  const kelvin = temperatureC + CELSIUS_ZERO_KELVIN;
  const vapourPa = humidity * saturationPa(temperatureC);
  return (
    (pressurePa - vapourPa) / (GAS_CONSTANT_DRY_AIR * kelvin) + vapourPa / (GAS_CONSTANT_VAPOUR * kelvin)
  );
}

/** Pascals in the ISA standard atmosphere, for a place whose pressure nobody read. Valid up to 11,000 m. */
export function standardPressure(altitudeM: number): number {
  return 101_325 * (1 - 2.25577e-5 * altitudeM) ** 5.25588;
}

/** Metres per second squared at a latitude and an altitude (international gravity formula 1967, free-air term). */
export function gravityAt(latitudeDeg: number, altitudeM: number): number {
  const latitude = (latitudeDeg * Math.PI) / 180;
  const sine = Math.sin(latitude) ** 2;
  const sineOfDouble = Math.sin(2 * latitude) ** 2;
  return 9.780327 * (1 + 0.0053024 * sine - 0.0000058 * sineOfDouble) - 3.086e-6 * altitudeM;
}
