/** @jest-environment jsdom */
import type { ErrorFound } from '../../src/hosts/grid/cellErrors';
import { ErrorStrip } from '../../src/workbench/errorStrip';

function offers(error: ErrorFound, selected: string): string[] {
  document.body.innerHTML = '<div id="strip"></div>';
  new ErrorStrip(() => undefined).show('s', [error], undefined, selected);
  return [...document.querySelectorAll('button')].map(({ textContent }) => textContent!);
}

const cell = (address: string): { sheetId: string; sheetName: string; address: string } => ({ sheetId: 's', sheetName: 'S', address });
const failing = { ...cell('H3'), code: '#VALUE!', message: 'found nothing', worded: true };

test('the failing cell and the one to mend are both offered', () => {
  expect(offers({ ...failing, input: cell('B2') }, 'A1')).toEqual(['Go to B2', 'Go to H3']);
});

test('a cell that is both failing and to be mended is offered once', () => {
  expect(offers({ ...failing, input: cell('H3') }, 'A1')).toEqual(['Go to H3']);
});

test('the selected cell is not offered', () => {
  expect(offers({ ...failing, input: cell('B2') }, 'B2')).toEqual(['Go to H3']);
});
