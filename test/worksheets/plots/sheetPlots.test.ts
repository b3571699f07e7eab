import { sheetPlots } from '../../../src/worksheets/plots/sheetPlots';
import { SampleSheet } from '../sampleSheet';

const column = (values: readonly (number | string | null)[]) => values.map((value) => [value]);

/** Two runs in tension, 0 to 10 kN and back, the units named. */
function tension(): SampleSheet {
  return new SampleSheet()
    .single('unit', 'A1', 'kN').single('output_unit', 'B1', 'mV/V')
    .range('forces_tension', 1, 5, column([0, 5, 10, 5, 0]))
    .range('readings_tension', 2, 5, [[0.1, 0.2], [1.1, 1.2], [2.1, 2.2], [1.1, null], [0.1, 0.2]])
    .range('net_tension', 4, 5, [[0, 0], [1, 1.002], [2, 2.002], [1, null], [0, 0]], '=PROVE.NET()');
}

const plot = (sheet: SampleSheet, id: string) => sheetPlots(sheet.read()).find((one) => one.id === id);

describe('the plots of a sheet', () => {
  test('are none without names, and none of what is still blank', () => {
    expect(sheetPlots({ name: 'Notes', cells: [{ at: 'A1', value: 1 }], names: [] })).toEqual([]);
    const blank = new SampleSheet().range('forces_tension', 1, 5, column([0, 5, 10])).range('readings_tension', 2, 5, column([null, null, null]))
      .range('net_tension', 3, 5, column([null, null, null])).range('deviations_tension', 4, 5, column(['', '', ''])).range('errors_tension', 5, 5, column([null, null, null]))
      .range('tolerances_tension', 6, 5, column([1, 1, 1])).range('times_loaded', 7, 5, column([0, 1])).range('readings_loaded', 8, 5, column([null, null]));
    expect(sheetPlots(blank.read())).toEqual([]);
  });

  test('show the curve: the mean of the runs at each row, up and down, with units', () => {
    expect(sheetPlots(tension().read())).toEqual([{
      id: 'curve', title: 'Net output', x: 'Force, kN', y: 'Net output, mV/V',
      series: [{ name: 'Tension', x: [0, 5, 10, 5, 0], y: [0, 1.001, 2.001, 1, 0], drawn: 'both' }],
    }]);
  });

  test('show the curve from the readings less their zero where net readings are not computed', () => {
    const sheet = new SampleSheet().range('forces_b', 1, 5, column([0, 5, 10])).range('readings_b', 2, 5, column([0.5, 1.5, 2.5]));
    expect(plot(sheet, 'curve')).toEqual({
      id: 'curve', title: 'Net output', x: 'Applied', y: 'Net output', series: [{ name: 'B', x: [0, 5, 10], y: [0, 1, 2], drawn: 'both' }],
    });
  });

  test('show deviations in per cent, with one pair of limits for all blocks that share it', () => {
    const sheet = tension().range('deviations_tension', 6, 5, column([0, 0.0005, 0, '', { error: '#N/A' } as never]))
      .range('forces_compression', 1, 15, column([0, -5, -10])).range('readings_compression', 2, 15, column([0, -1, -2])).range('deviations_compression', 6, 15, column([0, -0.0002, 0]));
    expect(plot(sheet, 'deviations')?.series.map(({ name }) => name)).toEqual(['Tension', 'Compression']);
    sheet.single('limit_nonlinearity', 'H1', 0.001);
    expect(plot(sheet, 'deviations')).toEqual({
      id: 'deviations', title: 'Deviation from the terminal line', x: 'Force, kN', y: 'Deviation, % of rated output',
      series: [
        { name: 'Tension', x: [0, 5, 10], y: [0, 0.05, 0], drawn: 'both' },
        { name: 'Compression', x: [0, -5, -10], y: [0, -0.02, 0], drawn: 'both' },
        { name: 'Limit, upper', x: [-10, 10], y: [0.1, 0.1], drawn: 'limit' },
        { name: 'Limit, lower', x: [-10, 10], y: [-0.1, -0.1], drawn: 'limit' },
      ],
    });
  });

  test('show no deviations of a two-point run, whose line passes through both points', () => {
    const sheet = new SampleSheet().range('forces_tension', 1, 5, column([0, 10, 0])).range('readings_tension', 2, 5, column([0, 2, 0])).range('deviations_tension', 6, 5, column([0, 0, 0.0001]));
    expect(plot(sheet, 'deviations')).toBeUndefined();
  });

  test('draw limits of their own beside blocks that have such', () => {
    const sheet = tension().range('deviations_tension', 6, 5, column([0, 0.0005, 0, 0, 0])).single('limit_nonlinearity_tension', 'H1', 0.002).single('limit_nonlinearity', 'H2', 0.001);
    expect(plot(sheet, 'deviations')?.series[1]).toEqual({ name: 'Limit, upper', x: [0, 10], y: [0.2, 0.2], drawn: 'limit' });
  });

  test('show residuals, a plot a block and a series a run, with ± 2.4 s', () => {
    const sheet = tension().range('residuals_tension', 8, 5, [['', ''], [1e-4, -1e-4], [2e-4, 0], [-1e-4, null], ['', '']]);
    expect(plot(sheet, 'residuals_tension')?.series).toHaveLength(2);
    sheet.single('residual_limit', 'H3', 3e-4);
    expect(plot(sheet, 'residuals_tension')).toEqual({
      id: 'residuals_tension', title: 'Residuals, tension', x: 'Force, kN', y: 'Residual, mV/V',
      series: [
        { name: 'Run 1', x: [5, 10, 5], y: [1e-4, 2e-4, -1e-4], drawn: 'points' },
        { name: 'Run 2', x: [5, 10], y: [-1e-4, 0], drawn: 'points' },
        { name: '2.4 s, upper', x: [5, 10], y: [3e-4, 3e-4], drawn: 'limit' },
        { name: '2.4 s, lower', x: [5, 10], y: [-3e-4, -3e-4], drawn: 'limit' },
      ],
    });
  });

  test('take 2.4 s of a block before that of the sheet, and of its s if nothing else is named', () => {
    const sheet = tension().range('residuals_tension', 8, 5, [[0, 0], [1e-4, 1e-4], [0, 0], [0, 0], [0, 0]]).single('value_residual_sd', 'H5', 1e-4);
    const limit = () => plot(sheet, 'residuals_tension')?.series.find(({ name }) => name === '2.4 s, upper')?.y[0];
    expect(limit()).toBeCloseTo(2.4e-4, 12);
    sheet.single('residual_limit', 'H6', 5e-4);
    expect(limit()).toBe(5e-4);
    sheet.single('residual_limit_tension', 'H7', 6e-4);
    expect(limit()).toBe(6e-4);
  });

  test('show errors as found and as left, with tolerances from the least to the greatest force, drawn once if equal', () => {
    const sheet = new SampleSheet().single('unit', 'A1', 'N·m').single('output_unit', 'B1', 'N·m');
    [['as_found', 5], ['as_left', 15]].forEach(([id, row]) => sheet
      .range(`forces_${id}`, 1, row as number, column([0, 50, 100, 50])).range(`readings_${id}`, 2, row as number, column([0, 50.1, 100.1, 50]))
      .range(`errors_${id}`, 4, row as number, column([0, 0.1, 0.1, 0])).range(`tolerances_${id}`, 5, row as number, column([0.05, 0.1, 0.2, 0.1])));
    expect(plot(sheet, 'errors')).toEqual({
      id: 'errors', title: 'Error', x: 'Torque, N·m', y: 'Error, N·m',
      series: [
        { name: 'As found', x: [0, 50, 100, 50], y: [0, 0.1, 0.1, 0], drawn: 'both' },
        { name: 'As left', x: [0, 50, 100, 50], y: [0, 0.1, 0.1, 0], drawn: 'both' },
        { name: 'Tolerance, upper', x: [0, 50, 100], y: [0.05, 0.1, 0.2], drawn: 'limit' },
        { name: 'Tolerance, lower', x: [0, 50, 100], y: [-0.05, -0.1, -0.2], drawn: 'limit' },
      ],
    });
    sheet.put('E6', 0.3).put('E8', 0.3);
    expect(plot(sheet, 'errors')?.series.slice(2).map(({ name, y }) => [name, y])).toEqual([
      ['Tolerance as found, upper', [0.05, 0.3, 0.2]], ['Tolerance as found, lower', [-0.05, -0.3, -0.2]],
      ['Tolerance as left, upper', [0.05, 0.1, 0.2]], ['Tolerance as left, lower', [-0.05, -0.1, -0.2]],
    ]);
  });

  test('join the tolerances of both directions in one pair of lines', () => {
    const sheet = new SampleSheet();
    [['positive', 5, 1], ['negative', 15, -1]].forEach(([id, row, sign]) => sheet
      .range(`forces_${id}`, 1, row as number, column([0, Number(sign) * 50])).range(`readings_${id}`, 2, row as number, column([0, 1]))
      .range(`errors_${id}`, 4, row as number, column([0, 0.1])).range(`tolerances_${id}`, 5, row as number, column([0.05, 0.1])));
    expect(plot(sheet, 'errors')?.series.slice(2)).toEqual([
      { name: 'Tolerance, upper', x: [-50, 0, 50], y: [0.1, 0.05, 0.1], drawn: 'limit' },
      { name: 'Tolerance, lower', x: [-50, 0, 50], y: [-0.1, -0.05, -0.1], drawn: 'limit' },
    ]);
  });

  test('call what a simulator stands for expected, in output units', () => {
    const sheet = new SampleSheet().single('unit', 'A1', 'mV/V').single('output_unit', 'B1', 'kN').single('scale', 'C1', 10)
      .range('forces_as_found', 1, 5, column([0, 10, 20])).range('readings_as_found', 2, 5, column([0, 10, 20])).range('errors_as_found', 3, 5, column([0, 0.1, 0.1]));
    expect(plot(sheet, 'errors')).toMatchObject({ x: 'Expected, kN', y: 'Error, kN' });
    expect(plot(sheet.unname('scale'), 'curve')?.x).toBe('Signal, mV/V');
  });

  test('show creep as the change since the first reading against time, blank readings left out', () => {
    const sheet = new SampleSheet().single('output_unit', 'B1', 'mV/V')
      .range('times_loaded', 1, 5, column([0, 1, 5, 30])).range('readings_loaded', 2, 5, column([2, 2.25, null, 2.5]))
      .range('times_unloaded', 4, 5, column([0, 1])).range('readings_unloaded', 5, 5, column([null, 0.1]));
    expect(sheetPlots(sheet.read())).toEqual([{
      id: 'creep', title: 'Change since the first reading', x: 'Time, min', y: 'Change, mV/V',
      series: [{ name: 'Loaded', x: [0, 1, 30], y: [0, 0.25, 0.5], drawn: 'both' }],
    }]);
  });

  test('have as many y as x in every series', () => {
    const sheet = tension().range('deviations_tension', 6, 5, column([0, 'x', null, 0.1, 0])).range('residuals_tension', 8, 5, [[0, 0], [0, 'x'], [null, 0], [0, 0], [0, 0]])
      .range('errors_tension', 11, 5, column([0, 0.1, null, 0.1, 0])).range('tolerances_tension', 12, 5, column([1, null, 1, 1, 1]));
    const all = sheetPlots(sheet.read()).flatMap(({ series }) => series);
    expect(all.length).toBeGreaterThan(4);
    all.forEach(({ x, y }) => expect(y).toHaveLength(x.length));
  });

  test('show zero and span against temperature in per cent, each with its line', () => {
    const sheet = new SampleSheet().range('typed_temperature', 1, 5, column([-10, 23, 50]))
      .range('zero_changes', 2, 5, column([-0.0001, 0, 0.0002])).range('zero_line', 3, 5, column([-0.0001, 0, 0.0001])).range('span_changes', 4, 5, column(['', '', '']));
    expect(sheetPlots(sheet.read())).toEqual([{
      id: 'thermal_zero', title: 'Zero against temperature', x: 'Temperature, °C', y: 'Change, % of rated output',
      series: [{ name: 'Change', x: [-10, 23, 50], y: [-0.01, 0, 0.02], drawn: 'points' }, { name: 'Fitted line', x: [-10, 23, 50], y: [-0.01, 0, 0.01], drawn: 'line' }],
    }]);
  });

  test('show a history by years since its first calibration, with the band and the limits of the sheet', () => {
    const sheet = new SampleSheet().single('output_unit', 'A1', 'mV/V').range('typed_date', 1, 5, column([45_000, 45_365.25, null])).range('typed_output', 2, 5, column([2, 2.1, null]))
      .range('band_day', 4, 5, column([45_000, 45_730.5])).range('band_upper', 5, 5, column([2.1, 2.3])).range('band_upper_limit', 6, 5, column([2.4, 2.4]));
    expect(sheetPlots(sheet.read())).toEqual([{
      id: 'history', title: 'Output at capacity by date', x: 'Years since the first calibration', y: 'Output, mV/V',
      series: [
        { name: 'Calibrations', x: [0, 1], y: [2, 2.1], drawn: 'points' }, { name: 'Band, upper', x: [0, 2], y: [2.1, 2.3], drawn: 'line' },
        { name: 'Limit, upper', x: [0, 2], y: [2.4, 2.4], drawn: 'limit' },
      ],
    }]);
  });
});
