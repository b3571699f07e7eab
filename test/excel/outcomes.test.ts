import { CellFault } from '../../src/functions/faults';
import { Outcomes } from '../../src/hosts/excel/outcomes';

const fault = new CellFault('#N/A', 'the class is not met');

test('the message of a failed cell is given with the name of its function', () => {
  const outcomes = new Outcomes();
  outcomes.record({ id: 'LOWERLIMIT', address: 'Sheet1!B4', fault });
  expect(outcomes.messageAt('Sheet1!B4', ['LOWERLIMIT'])).toBe('PROVE.LOWERLIMIT: the class is not met');
});

test('other cells, sheets and functions have no message', () => {
  const outcomes = new Outcomes();
  outcomes.record({ id: 'FIT', address: 'Sheet1!B4', fault });
  expect(outcomes.messageAt('Sheet1!B5', ['FIT'])).toBe('');
  expect(outcomes.messageAt('Sheet2!B4', ['FIT'])).toBe('');
  expect(outcomes.messageAt('Sheet1!B4', ['NET'])).toBe('');
});

test.each(["'Run 1'!$B$4", '[Book1.xlsx]Run 1!B4', "'[Book1.xlsx]Run 1'!B4", 'run 1!b4'])('%s is the same cell as Run 1!B4', (spelling) => {
  const outcomes = new Outcomes();
  outcomes.record({ id: 'FIT', address: 'Run 1!B4', fault });
  expect(outcomes.messageAt(spelling, ['FIT'])).not.toBe('');
});

test('a result wipes the message of an earlier failure', () => {
  const outcomes = new Outcomes();
  outcomes.record({ id: 'FIT', address: 'Sheet1!B4', fault });
  outcomes.record({ id: 'FIT', address: 'Sheet1!B4' });
  expect(outcomes.messageAt('Sheet1!B4', ['FIT'])).toBe('');
});

test('clearing forgets every message', () => {
  const outcomes = new Outcomes();
  outcomes.record({ id: 'FIT', address: 'Sheet1!B4', fault });
  outcomes.clear();
  expect(outcomes.messageAt('Sheet1!B4', ['FIT'])).toBe('');
});
