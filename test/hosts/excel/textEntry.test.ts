import { textEntry } from '../../../src/hosts/excel/textEntry';

test.each(['=A1', '+1', '-', '@x', 'TRUE', 'false', '12', '1/2', 'Mar 1', '#N/A', "'a", ' 3', '€5', '', 'Run 1'])('%p is marked as text', (text) => {
  expect(textEntry(text)).toBe(`'${text}`);
});

test.each(['Deviation', 'Force, kN', 'truth', 'Übergang', 'Stand clear of the load train', 'A remark of more than forty letters, of 25 November 2026'])('%p needs no mark', (text) => {
  expect(textEntry(text)).toBe(text);
});
