/** Comparing cells with a value, as spreadsheets do, however often it is asked. */
import { computed, formula } from './bundle';

test('a cell that holds 0 is not equal to an empty text, the second time as the first', async () => {
  const engine = await computed({ name: 'S', cells: [[0, formula('=IF(A1="","blank","kept")'), formula('=IF((A1=""),"blank","kept")'), formula('=OR(A1="")'), formula('=A1=0')]] });
  expect(engine.values('S', 'B1:E1')).toEqual([['kept', 'kept', false, true]]);
});

test('a cell that holds the text 12 is not equal to the number 12, the second time as the first', async () => {
  const engine = await computed({ name: 'S', cells: [['12', formula('=A1=12'), formula('=IF(A1=12,1,0)'), formula('=A1="12"')]] });
  expect(engine.values('S', 'B1:D1')).toEqual([[false, 0, true]]);
});

test('a blank cell is equal to an empty text and to 0', async () => {
  const engine = await computed({ name: 'S', cells: [[null, formula('=A1=""'), formula('=A1=0'), formula('=IF(A1="",1,0)')]] });
  expect(engine.values('S', 'B1:D1')).toEqual([[true, true, 1]]);
});
