import { converter, type Unit, UNITS } from '../../metrology/units';
import { address, fixed, type Formula, formula } from '../planBuilder';
import { type Desk, rounded } from './desk';

/** Conventional density of weights and the air it is meant in, kg/m³, and standard gravity, m/s². Source: OIML R 111. */
const WEIGHT_DENSITY = 8000;
const CONVENTIONAL_AIR = 1.2;
const STANDARD_GRAVITY = 9.80665;
/** Columns: point, mass, force in newtons, force in the unit of the sheet. */
const [POINT, MASS, NEWTONS, FORCE] = [1, 2, 3, 4];

/** Where the forces of dead weights stand. */
export interface WeightsTable {
  readonly nextRow: number;
  /** The force of a point, by its place in the series. */
  readonly force: (point: number) => string;
}

/**
 * Applied forces from dead weights: the masses to type in, and from gravity and the air what they weigh. The masses that
 * stand there at first are what the points would need; the real ones take their place.
 */
export function weightsTable({ sheet, width, item, formats }: Desk, row: number, points: readonly number[]): WeightsTable {
  sheet.wide(1, row, width, 'heading', 'Applied force from dead weights');
  sheet.wide(1, row + 1, width, 'note', 'Type the masses on the hanger at each point, hanger and frame below the cell included. Measured gravity is better; PROVE.GRAVITY(latitude,height) estimates it. Lift and hang weights by the site’s lifting rules.');
  const line = (index: number) => row + 2 + Math.floor(index / 2);
  const cells = AIR.map(({ label, value, format }, i) => {
    const first = i % 2 === 0 ? 1 : 6;
    sheet.put(first, line(i), i % 2 === 0 ? 'label' : 'aside', label).put(first + 3, line(i), 'input', value, format);
    sheet.validate({ range: address(first + 3, line(i)), rule: { kind: 'number', least: i === 2 ? -40 : 0 }, message: `${label}: expected a number.` });
    return fixed(first + 3, line(i));
  });
  const [gravity, density, temperature, pressure, humidity] = cells;
  const conventional = address(9, line(AIR.length));
  sheet.put(6, line(AIR.length), 'aside', 'Masses are conventional').put(9, line(AIR.length), 'input', 'yes');
  sheet.validate({ range: conventional, rule: { kind: 'list', words: ['yes', 'no'] }, message: 'Expected yes or no.' });
  const inNewtons = converter(unitOf(item.unit), unitOf('N'));
  const head = line(AIR.length) + 2;
  sheet.across(1, head, 'header', ['Point', 'Mass', 'Force', 'Force']).across(1, head + 1, 'header', ['%', 'kg', 'N', item.unit]);
  const first = head + 2;
  points.forEach((point, i) => {
    const newtons = inNewtons(rounded((item.capacity * point) / 100));
    const mass = rounded(Number((newtons / STANDARD_GRAVITY / (1 - CONVENTIONAL_AIR / WEIGHT_DENSITY)).toPrecision(6)));
    const [kilograms, force] = [address(MASS, first + i), address(NEWTONS, first + i)];
    const air = `PROVE.AIRDENSITY(${temperature},${pressure},${humidity})`;
    sheet.put(POINT, first + i, 'reference', point, '0.##').put(MASS, first + i, 'input', mass, '0.#####');
    sheet.put(NEWTONS, first + i, 'result', formula(`IF(${kilograms}="","",PROVE.WEIGHTFORCE(${kilograms},${gravity},${air},${density},${fixed(9, line(AIR.length))}="yes"))`), '0.000');
    sheet.put(FORCE, first + i, 'result', formula(`IF(${force}="","",PROVE.UNIT(${force},"N","${item.unit}"))`), `${formats.applied === '0' ? '0.' : formats.applied}0000`);
  });
  sheet.called('masses', `${address(MASS, first)}:${address(MASS, first + points.length - 1)}`);
  sheet.validate({ range: `${address(MASS, first)}:${address(MASS, first + points.length - 1)}`, rule: { kind: 'number', least: 0 }, message: 'Expected a mass in kg, 0 or more.' });
  return { nextRow: first + points.length + 1, force: (point) => address(FORCE, first + point) };
}

function unitOf(symbol: string): Unit {
  const unit = UNITS.find((candidate) => candidate.symbol === symbol && candidate.kind === 'force');
  if (!unit) throw new Error(`found the unit "${symbol}"; expected a unit of force`);
  return unit;
}

const AIR: readonly { readonly label: string; readonly value: number; readonly format: string }[] = [
  { label: 'Local gravity, m/s²', value: STANDARD_GRAVITY, format: '0.00000' },
  { label: 'Density of the weights, kg/m³', value: WEIGHT_DENSITY, format: '0' },
  { label: 'Air temperature, °C', value: 20, format: '0.0' },
  { label: 'Air pressure, hPa', value: 1013.25, format: '0.0' },
  { label: 'Air humidity, %', value: 50, format: '0' },
];

/** The applied force of a point with the sign of its direction, from the table of weights. */
export function appliedByWeights({ force }: WeightsTable, point: number, sign: 1 | -1): Formula {
  return formula(sign === 1 ? force(point) : `-${force(point)}`);
}
