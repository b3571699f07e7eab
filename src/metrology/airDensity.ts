/**
 * Density of moist air, kg/m³: (0.34848·p − 0.009·h·exp(0.061·t))/(273.15 + t). Good to 2·10⁻⁴ of it from 900 to 1100 hPa,
 * 10 to 30 °C and under 80 %. Source: OIML R 111-1, the approximation to the CIPM formula (from memory).
 * @param temperature °C
 * @param pressure hPa
 * @param humidity relative humidity, %
 */
export function airDensity(temperature: number, pressure: number, humidity: number): number {
  return (0.34848 * pressure - 0.009 * humidity * Math.exp(0.061 * temperature)) / (273.15 + temperature);
}
