import { Drafts } from '../../src/taskpane/drafts';
import { fakeMemory } from './fakes';

test('words and answers are there for the next page, until they are dropped', () => {
  const memory = fakeMemory();
  new Drafts(memory).keep('reason', 'half a sen');
  new Drafts(memory).keepAnswers('form', { capacity: '20', unit: '' });
  const later = new Drafts(memory);
  expect(later.words('reason')).toBe('half a sen');
  expect(later.answers('form')).toEqual({ capacity: '20', unit: '' });
  later.drop('reason');
  later.drop('form');
  expect(new Drafts(memory).words('reason')).toBe('');
  expect(new Drafts(memory).answers('form')).toBeUndefined();
});

test.each(['', 'no JSON', '[1]', 'null', '7'])('what cannot be read as answers counts as none: %s', (held) => {
  const memory = fakeMemory();
  memory.set('draft.form', held);
  expect(new Drafts(memory).answers('form')).toBeUndefined();
});

test('of answers only texts are taken', () => {
  const memory = fakeMemory();
  memory.set('draft.form', '{"capacity":"20","points":7}');
  expect(new Drafts(memory).answers('form')).toEqual({ capacity: '20' });
});
