/** Bridges typed into the inspection sheet: arms by the add-in and by plain formulas, evidence, shunt, and the resistors that re-zero. */
import { addressOf, rangeOf } from '../../src/hosts/address';
import { engineSheets } from '../../src/hosts/file/engineSheets';
import { type Arms, diagonals } from '../../src/metrology/bridgeArms';
import { bridgeOutput } from '../../src/metrology/bridgeOutput';
import type { SheetPlan } from '../../src/worksheets/plan';
import { readySheets } from '../../src/worksheets/readySheets';
import { CellError, Engine } from './bundle';

const { empty, filled } = readySheets().find(({ id }) => id === 'receiving-inspection')!;

type Typed = Readonly<Record<string, readonly (number | undefined)[]>>;

/** The filled sheet with other values in the cells of some names. */
function typed(values: Typed, plan: SheetPlan = filled): SheetPlan {
  const put = new Map(Object.entries(values).flatMap(([name, column]) => column.map((value, i) => [cell(name, i), value] as const)));
  return { ...plan, cells: plan.cells.map((held) => (put.has(held.at) ? { ...held, value: put.get(held.at) } : held)) };
}

function cell(name: string, below = 0): string {
  const { startRow, startColumn } = rangeOf(filled.names!.find((entry) => entry.name === name)!.range);
  return addressOf({ row: startRow + below, column: startColumn });
}

async function computed(plan: SheetPlan) {
  const engine = new Engine(engineSheets([plan]));
  await engine.calculate();
  const values = new Map(plan.cells.map(({ at }) => [at, engine.value(plan.name, at)]));
  engine.dispose();
  const heading = plan.cells.find(({ role, value }) => role === 'heading' && value === 'What the numbers fit')!;
  const row = Number(heading.at.slice(1));
  const evidence = [2, 4, 6, 8].map((down) => [values.get(`A${row + down}`), values.get(`B${row + down + 1}`)]);
  return { value: (name: string) => values.get(cell(name)), at: (address: string) => values.get(address), evidence: evidence.filter(([found]) => found !== ''), note: values.get(`A${row + 1}`) };
}

/** What an ohmmeter reads at a bridge of these arms, and its zero. */
function bridge(arms: Arms, zero = bridgeOutput(arms)): Typed {
  const sum = arms.reduce((all, arm) => all + arm, 0);
  const { input, output } = diagonals(arms);
  return { corners: arms.map((arm) => (arm * (sum - arm)) / sum), corners_opposite: [input, output], zero_now: [zero] };
}

const ARMS = [1, 2, 3, 4];

describe('arms by the add-in and by plain formulas', () => {
  test.each<[string, Arms]>([
    ['of nearly equal arms', [350.03, 350.01, 349.99, 350]],
    ['of an overloaded cell', [352, 348, 352, 348]],
    ['of one arm a quarter low', [350, 350, 262, 350]],
    ['of a 1000 Ω bridge with scatter', [1003, 998, 1001, 995]],
  ])('%s are those that the corners come from', async (_, arms) => {
    const sheet = await computed(typed(bridge(arms)));
    arms.forEach((arm, i) => {
      expect(sheet.value(`value_arm_${i + 1}`)).toBeCloseTo(arm, 8);
      expect(sheet.value(`plain_arm_${i + 1}`)).toBeCloseTo(arm, 6);
    });
    expect(sheet.value('plain_zero_implied')).toBeCloseTo(bridgeOutput(arms), 6);
    expect(sheet.value('value_diagonal_input')).toBeCloseTo(0, 12);
    expect(sheet.value('value_zero_difference')).toBeCloseTo(0, 12);
  });

  test('where an arm is greater than the other three together, the plain formulas give nothing rather than another number', async () => {
    const sheet = await computed(typed(bridge([5000, 350, 350, 350])));
    expect(sheet.value('value_arm_1')).toBeCloseTo(5000, 6);
    expect(ARMS.map((n) => sheet.value(`plain_arm_${n}`))).toEqual(['', '', '', '']);
  });

  test('corners that no bridge gives are no result, and never within', async () => {
    const sheet = await computed(typed({ corners: [1000, 10, 10, 10] }));
    expect(sheet.value('value_arm_1')).toBeInstanceOf(CellError);
    expect(sheet.value('verdict_diagonal_input')).toBe('no result');
    expect(sheet.value('verdict_overall')).toMatch(/^outside/);
    expect(ARMS.map((n) => sheet.value(`plain_arm_${n}`))).toEqual(['', '', '', '']);
  });
});

describe('evidence', () => {
  test('of an overload is told line by line, and the note says what it cannot tell in the words of the function', async () => {
    const sheet = await computed(typed(bridge([350.2, 349.8, 350.2, 349.8])));
    expect(sheet.evidence).toEqual([
      ['zero +28.6 % of RO, beyond ±5 %', 'fits a set, a lost trim, moisture or a bad joint'],
      ['arms 1 and 3 high, 2 and 4 low', 'fits an overload in tension that left a set'],
    ]);
    const engine = new Engine([{ name: 'S', cells: [[{ formula: '=INDEX(PROVE.BRIDGEEVIDENCE({350;350;350;350},350,0,2,,,,,,FALSE),3,2)' }]] }]);
    await engine.calculate();
    const untold = String(engine.value('S', 'A1'));
    engine.dispose();
    expect(untold).toContain('only a run tells');
    expect(sheet.note).toContain(untold);
  });

  test('of a zero that the arms do not imply, and other gauges, has all four lines', async () => {
    const sheet = await computed(typed(bridge([1000, 1000, 1000, 1000.05], 0.5)));
    expect(sheet.evidence.map(([found]) => found)).toHaveLength(4);
    expect(sheet.value('verdict_zero_difference')).toBe('outside');
  });

  test('waits without a zero', async () => {
    expect((await computed(typed({ zero_now: [undefined] }))).evidence).toEqual([]);
    expect((await computed(empty)).evidence).toEqual([]);
  });
});

describe('shunt and trim', () => {
  test('an inspection without a shunt is not open for it', async () => {
    const sheet = await computed(typed({ shunt_resistor: [undefined], shunt_change: [undefined] }));
    expect([sheet.value('value_shunt'), sheet.value('verdict_shunt')]).toEqual(['', '']);
    expect(sheet.value('verdict_overall')).toBe('outside in 2 of 20 judged');
  });

  test('a change that is shown with the other sign is judged by its size', async () => {
    const [up, down] = [await computed(typed({ shunt_change: [0.88] })), await computed(typed({ shunt_change: [-0.88] }))];
    expect(down.value('value_shunt')).toBe(up.value('value_shunt'));
    expect(up.value('verdict_shunt')).toBe('outside');
  });

  test('no resistor is needed at the zero to reach; else either one comes near it', async () => {
    const heading = filled.cells.find(({ value }) => value === 'Zero to reach')!;
    const row = Number(heading.at.slice(1));
    const [none, some] = [await computed(typed({ zero_now: [0] })), await computed(typed({ zero_now: [0.5] }))];
    expect([none.at(`C${row + 2}`), none.at(`D${row + 2}`) instanceof CellError]).toEqual(['none needed', false]);
    expect([some.at(`C${row + 2}`), some.at(`C${row + 3}`)]).toEqual(['1 or 3', '2 or 4']);
    expect(some.at(`D${row + 2}`)).toBeCloseTo(174_825, 6);
    expect(Math.abs(some.at(`G${row + 2}`) as number)).toBeLessThan(0.005);
  });
});
