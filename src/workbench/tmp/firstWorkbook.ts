import type { PlanCell, SheetPlan } from '../../worksheets/plan';

const runs: PlanCell[] = [];
const forces = [0, 50, 100, 150, 200, 0];
const read = [[0.0003, 0.0004, 0.0001], [0.5007, 0.5009, 0.5006], [1.0012, 1.0014, 1.0011], [1.5013, 1.5015, 1.5012], [2.001, 2.0013, 2.0009], [0.0005, 0.0006, 0.0003]];
forces.forEach((force, i) => {
  runs.push({ at: `A${9 + i}`, role: 'input', value: force, format: '0' });
  ['B', 'C', 'D'].forEach((c, j) => runs.push({ at: `${c}${9 + i}`, role: 'input', value: read[i][j], format: '0.0000' }));
  ['F', 'G', 'H'].forEach((c) => runs.push({ at: `${c}${9 + i}`, role: 'result', format: '0.0000', ...(i === 0 && c === 'F' ? { formula: '=PROVE.NET(A9:A14,B9:D14)' } : {}) }));
});

/** Stand-in until the real one lands. */
export function firstWorkbook(): readonly SheetPlan[] {
  return [
    {
      name: 'Start',
      columns: [14, 12, 12, 12, 4, 12, 12, 12],
      merges: ['A1:H1', 'A2:H2', 'A4:H4', 'A5:H5'],
      frozenRows: 0,
      cells: [
        { at: 'A1', role: 'title', value: 'Net readings of three runs' },
        { at: 'A2', role: 'subtitle', value: 'Type readings into the yellow cells; green cells are computed as you type.' },
        { at: 'A4', role: 'text', value: 'Each reading less the zero of its run. The net readings spill from one formula in F9 over six rows and three columns. Select F9 and look at the pane at the right to see what the function does, its formula and its source.' },
        { at: 'A5', role: 'caution', value: 'These are made-up readings to try things with. Replace them with your own before you use a result.' },
        { at: 'A7', role: 'heading', value: 'Readings' }, { at: 'B7', role: 'heading' }, { at: 'C7', role: 'heading' }, { at: 'D7', role: 'heading' },
        { at: 'F7', role: 'heading', value: 'Net readings' }, { at: 'G7', role: 'heading' }, { at: 'H7', role: 'heading' },
        { at: 'A8', role: 'header', value: 'Force, kN' }, { at: 'B8', role: 'header', value: 'Run 1, mV/V' }, { at: 'C8', role: 'header', value: 'Run 2, mV/V' }, { at: 'D8', role: 'header', value: 'Run 3, mV/V' },
        { at: 'F8', role: 'header', value: 'Run 1, mV/V' }, { at: 'G8', role: 'header', value: 'Run 2, mV/V' }, { at: 'H8', role: 'header', value: 'Run 3, mV/V' },
        ...runs,
        { at: 'A16', role: 'label', value: 'Mean at the greatest force' },
        { at: 'F16', role: 'result', formula: '=AVERAGE(F13:H13)', format: '0.00000' },
        { at: 'A17', role: 'note', value: 'Values for reference' },
        { at: 'F17', role: 'reference', value: 2.00063, format: '0.00000' },
      ],
    },
    { name: 'Second', columns: [20, 20], cells: [{ at: 'A1', role: 'title', value: 'Second' }, { at: 'A2', role: 'formula', formula: '=Start!F16*2', format: '0.0000' }] },
  ];
}
