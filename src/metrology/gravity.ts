/**
 * Normal gravity at a place, m/s²: 9.780327·(1 + 0.0053024·sin²φ − 0.0000058·sin²2φ) − 3.086·10⁻⁶·h.
 * It knows neither mountains nor rock, so a measured value is better. Source: Geodetic Reference System 1980, the series
 * that is good to 1 µm/s² at sea level; free-air decrease with height.
 * @param latitude geographic latitude, degrees, north or south
 * @param height height above sea level, m
 */
export function normalGravity(latitude: number, height = 0): number {
  const phi = (latitude * Math.PI) / 180;
  return 9.780327 * (1 + 0.0053024 * Math.sin(phi) ** 2 - 0.0000058 * Math.sin(2 * phi) ** 2) - 3.086e-6 * height;
}
