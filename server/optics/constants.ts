/** Speed of light in vacuum, m/s. Exact by definition of the metre (SI Brochure, 9th ed., 2019, §2.2). */
export const speedOfLight = 299_792_458;

/** 0 °C in kelvin. Exact by definition of the degree Celsius (SI Brochure, 9th ed., 2019, §2.3.1). */
export const zeroCelsius = 273.15;
