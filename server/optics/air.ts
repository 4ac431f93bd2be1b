import { zeroCelsius } from './constants.ts';
import { nearestWithin, type Range } from './range.ts';

/** Wavelengths that the index of air is known for, m. */
export const airWavelengths: Range = { from: 0.3e-6, to: 1.7e-6 };

/** Air temperatures, K: −40 to 100 °C. */
export const airTemperatures: Range = { from: zeroCelsius - 40, to: zeroCelsius + 100 };

/** Air pressures, Pa. Ciddor checked 80 to 120 kPa; the published reference cases reach down to 60 kPa. */
export const airPressures: Range = { from: 60e3, to: 120e3 };

/** Relative humidities as a share of saturation, 0 to 1. */
export const relativeHumidities: Range = { from: 0, to: 1 };

/** Shares of carbon dioxide in the air by number of molecules: 0 to 2000 ppm. */
export const carbonDioxideShares: Range = { from: 0, to: 2000e-6 };

/** A room where nothing was measured: 20 °C, 101.325 kPa, 50 % humidity, 450 ppm carbon dioxide. Common practice. */
export const roomAir = { temperature: zeroCelsius + 20, pressure: 101_325, relativeHumidity: 0.5, carbonDioxide: 450e-6 } as const;

/**
 * Refractive index n of moist air, for phases, 1.
 *
 * @param vacuumWavelength m; see `airWavelengths`
 * @param temperature K; see `airTemperatures`
 * @param pressure Pa; see `airPressures`
 * @param relativeHumidity 0 to 1; see `relativeHumidities`. Wet heat where vapour alone would exceed the pressure counts as pure vapour.
 * @param carbonDioxide 0 to 2000e-6, usually 450e-6; see `carbonDioxideShares`
 *
 * Validity: about 2e-8 to 5e-8 within Ciddor's conditions (his estimate, from memory).
 * Source: Ciddor, Appl. Opt. 35, 1566 (1996), with the saturation pressure of `saturationPressure`, as the
 * NIST Engineering Metrology Toolbox (Stone & Zimmerman) does.
 */
export function airIndex(
  vacuumWavelength: number,
  temperature: number,
  pressure: number,
  relativeHumidity: number,
  carbonDioxide: number,
): number {
  const kelvin = nearestWithin(airTemperatures, temperature);
  const pascal = nearestWithin(airPressures, pressure);
  const share = nearestWithin(carbonDioxideShares, carbonDioxide);
  const vapour = vapourShare(kelvin, pascal, nearestWithin(relativeHumidities, relativeHumidity));
  const sigma2 = (1e-6 / nearestWithin(airWavelengths, vacuumWavelength)) ** 2;

  const dry = standardDryRefractivity(sigma2) * (1 + 0.534 * (share - 450e-6));
  const now = densities(kelvin, pascal, vapour);
  const standardDry = densities(15 + zeroCelsius, 101_325, 0).dry;
  const standardVapour = densities(20 + zeroCelsius, 1333, 1).vapour;
  return 1 + dry * (now.dry / standardDry) + standardVapourRefractivity(sigma2) * (now.vapour / standardVapour);
}

/** The wavelength in air, m, of light with a wavelength in vacuum: λ/n. Arguments, validity and source as `airIndex`. */
export function wavelengthInAir(
  vacuumWavelength: number,
  temperature: number,
  pressure: number,
  relativeHumidity: number,
  carbonDioxide: number,
): number {
  const lambda = nearestWithin(airWavelengths, vacuumWavelength);
  return lambda / airIndex(lambda, temperature, pressure, relativeHumidity, carbonDioxide);
}

/**
 * The wavelength in vacuum, m, of light with a wavelength in air (m; see `airWavelengths`): the inverse of `wavelengthInAir`.
 * The other arguments, validity and source as `airIndex`.
 */
export function wavelengthInVacuum(
  airWavelength: number,
  temperature: number,
  pressure: number,
  relativeHumidity: number,
  carbonDioxide: number,
): number {
  const lambda = nearestWithin(airWavelengths, airWavelength);
  let vacuum = lambda;
  // Each round gains at least five digits, since the index hardly changes over the shift.
  for (let round = 0; round < 3; round++) vacuum = lambda * airIndex(vacuum, temperature, pressure, relativeHumidity, carbonDioxide);
  return vacuum;
}

/**
 * Pressure of saturated water vapour, Pa, over water, below the triple point over ice.
 *
 * @param temperature K; see `airTemperatures`
 * Source: over water IAPWS-IF97, region 4; over ice Wagner, Saul & Pruß, J. Phys. Chem. Ref. Data 23, 515 (1994)
 * (IAPWS, 1993); both as the NIST Engineering Metrology Toolbox uses them.
 */
export function saturationPressure(temperature: number): number {
  const kelvin = nearestWithin(airTemperatures, temperature);
  if (kelvin < 273.16) {
    const theta = kelvin / 273.16;
    return 611.657 * Math.exp(-13.928169 * (1 - theta ** -1.5) + 34.7078238 * (1 - theta ** -1.25));
  }
  const theta = kelvin - 0.23855557567849 / (kelvin - 650.17534844798);
  const a = theta ** 2 + 1167.0521452767 * theta - 724213.16703206;
  const b = -17.073846940092 * theta ** 2 + 12020.82470247 * theta - 3232555.0322333;
  const c = 14.91510861353 * theta ** 2 - 4823.2657361591 * theta + 405113.40542057;
  return 1e6 * ((2 * c) / (-b + Math.sqrt(b ** 2 - 4 * a * c))) ** 4;
}

/** Share of water vapour by number of molecules; the enhancement factor is that of air in contact with water. */
function vapourShare(kelvin: number, pascal: number, humidity: number): number {
  const celsius = kelvin - zeroCelsius;
  const enhancement = 1.00062 + 3.14e-8 * pascal + 5.6e-7 * celsius ** 2;
  return Math.min(1, (enhancement * humidity * saturationPressure(kelvin)) / pascal);
}

/** n − 1 of dry air at 15 °C, 101.325 kPa, 450 ppm; sigma2 = 1/λ² in µm⁻². */
function standardDryRefractivity(sigma2: number): number {
  return 0.05792105 / (238.0185 - sigma2) + 0.00167917 / (57.362 - sigma2);
}

/** n − 1 of pure water vapour at 20 °C, 1333 Pa. */
function standardVapourRefractivity(sigma2: number): number {
  return 1.022e-8 * (295.235 + 2.6422 * sigma2 - 0.03238 * sigma2 ** 2 + 0.004028 * sigma2 ** 3);
}

/**
 * Densities of the dry part and of the vapour in moist air, each in a unit of its own that holds the gas constant and
 * the molar mass: only ratios of like densities are used (BIPM equation of 1981/91: Davis, Metrologia 29, 67, 1992).
 */
function densities(kelvin: number, pascal: number, vapour: number): { dry: number; vapour: number } {
  const total = pascal / (compressibility(kelvin, pascal, vapour) * kelvin);
  return { dry: total * (1 - vapour), vapour: total * vapour };
}

function compressibility(kelvin: number, pascal: number, vapour: number): number {
  const celsius = kelvin - zeroCelsius;
  const ratio = pascal / kelvin;
  const first =
    1.58123e-6 - 2.9331e-8 * celsius + 1.1043e-10 * celsius ** 2 +
    (5.707e-6 - 2.051e-8 * celsius) * vapour +
    (1.9898e-4 - 2.376e-6 * celsius) * vapour ** 2;
  return 1 - ratio * first + ratio ** 2 * (1.83e-11 - 0.765e-8 * vapour ** 2);
}
