/**
 * Physical measurands of a bridge sensor, in the order of their codes, from 0: the unit of the physical values.
 * Source: the list of a public C header that names the same template; not compared with the text of IEEE 1451.4.
 */
export const MEASURANDS = [
  'K', 'degC', 'strain', 'microstrain', 'N', 'lb', 'kgf', 'm/s2', 'g', 'Nm/radian', 'Nm', 'oz-in', 'Pa', 'PSI', 'kg', 'g(mass)',
  'm', 'mm', 'in', 'm/s', 'mph', 'fps', 'rad', 'deg', 'rad/s', 'rpm', 'Hz', 'g/l', 'kg/l', 'mole/m3', 'mole/l', 'm3/m3', 'l/l',
  'kg/s', 'm3/s', 'm3/hr', 'gpm', 'cfm', 'l/min', 'RH', 'percent', 'V', 'Vrms', 'A', 'Arms', 'W',
] as const;
