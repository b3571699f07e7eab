import help from '@generated/help.json';
import type { SheetPlan } from './plan';
import { PlanBuilder } from './planBuilder';

const FUNCTION = 1;
const PURPOSE = 2;
const RETURNS = 3;

/** The first sheet: what this is, how to type a function, and every function with one line of help. */
export function startSheet(): SheetPlan {
  const sheet = new PlanBuilder('Start', [28, 54, 38]);
  sheet.wide(1, 1, 3, 'title', 'Provingsheet');
  sheet.wide(1, 2, 3, 'subtitle', 'Calibration of force and torque transducers in worksheet cells: functions for the bench’s arithmetic, and the sheets of its runs.');

  sheet.wide(1, 4, 3, 'heading', 'The sheets of this workbook');
  const sheets: [string, string][] = [
    ['Load cell study', 'Public readings of a load cell, with results computed live beside the values that NIST certifies.'],
    ['Five-point run', 'Invented readings in tension and compression, up and down: every static characteristic, and a warm run corrected to 23 °C.'],
    ['Your own run', 'Build, in the pane beside the sheet, makes the worksheet of a run from a template: pick the procedure, answer a few questions, type the readings.'],
  ];
  sheets.forEach(([name, text], i) => sheet.put(1, 5 + i, 'label', name).wide(2, 5 + i, 2, 'text', text));

  sheet.wide(1, 9, 3, 'heading', 'Typing a function');
  const steps: [string, string][] = [
    ['1  Readings', 'Put the forces in a column, in the order applied, with the zeros; put the readings beside them, a column a run. Leave a missed reading blank.'],
    ['2  Formula', 'Type =PROVE. in a free cell and choose a function; the arguments are explained as you type. Example: =PROVE.SENSITIVITY(\'Five-point run\'!A8:A18,\'Five-point run\'!B8:C18)'],
    ['3  Result', 'A table spills into the cells below and to the right: keep them free. Performance figures are fractions: format them as percentages.'],
    ['If it is wrong', 'The cell shows #VALUE! (the input is wrong) or #N/A (no answer exists). Select it: the message names the row, what was found and what was expected.'],
    ['Conventions', 'Tension +, compression −; one direction in a range. Zero rows take no part in a fit. Options are words, in any case. Words in [ ] may be left out.'],
  ];
  steps.forEach(([name, text], i) => sheet.put(1, 10 + i, 'label', name).wide(2, 10 + i, 2, 'text', text));

  sheet.wide(1, 16, 3, 'caution', CAUTION);

  let row = 18;
  for (const group of new Set(help.map((entry) => entry.group))) {
    sheet.wide(1, row, 3, 'heading', group);
    sheet.across(1, row + 1, 'header', ['Function', 'What it computes', 'What it gives']);
    row += 2;
    for (const entry of help.filter((candidate) => candidate.group === group)) {
      sheet.put(FUNCTION, row, 'label', entry.name).put(PURPOSE, row, 'text', entry.summary).put(RETURNS, row, 'note', entry.returns);
      row += 1;
    }
    row += 1;
  }
  return sheet.plan(2);
}

const CAUTION =
  'Loading a transducer stores energy: stand clear of the load train, use guards, never exceed the safe overload of cell, adapters or frame. ' +
  'Local rules, the current edition of the standard and the accredited laboratory’s own procedure prevail over this tool.';
