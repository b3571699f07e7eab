import { acceptedFoot, acceptedList, acceptedMessage, acceptedSheetName } from '../../src/hosts/excelLimits';

test.each(['Run 1', "Bench 1's run", 'x'.repeat(31), 'Größe in mV·V'])('the sheet name %p is taken', (name) => {
  expect(acceptedSheetName(name)).toBe(name);
});

test.each(['', '  ', 'x'.repeat(32), 'a/b', 'a\\b', 'a:b', 'a*b', 'a?b', '[a', 'a]', "'a", "a'", 'History'])('the sheet name %p is refused with what was expected', (name) => {
  expect(() => acceptedSheetName(name)).toThrow(/^The name of the sheet: found “.*”; expected /);
});

test('a message of 225 letters is taken, and one more is refused', () => {
  expect(acceptedMessage('A1', 'm'.repeat(225))).toHaveLength(225);
  expect(() => acceptedMessage('A1', 'm'.repeat(226))).toThrow('A1: found a message of 226 letters; Excel takes 225 at most');
});

test('a list of 255 letters with its commas is taken, and one more is refused', () => {
  expect(acceptedList('A1', ['x'.repeat(200), 'y'.repeat(54)])).toHaveLength(255);
  expect(() => acceptedList('A1', ['x'.repeat(200), 'y'.repeat(55)])).toThrow('A1: found a list of 256 letters');
});

test.each(['a,b', 'a"b'])('the word %p is refused in a list', (word) => {
  expect(() => acceptedList('A1', ['plain', word])).toThrow(`A1: found "${word}" in a list`);
});

test('the foot of a page is the sheet’s name and its pages if the plan says nothing, else the plan’s words, an & among them doubled', () => {
  expect(acceptedFoot('Run 1')).toEqual({ left: '&A', right: '&P / &N' });
  expect(acceptedFoot('Run 1', 'Certificate 7, Marsh & Co')).toEqual({ left: 'Certificate 7, Marsh && Co', right: 'page &P of &N' });
});

test('a foot of 255 letters with its marks is taken, and one more is refused', () => {
  const room = 255 - '&L&Rpage &P of &N'.length;
  expect(acceptedFoot('Run 1', 'x'.repeat(room)).left).toHaveLength(room);
  expect(() => acceptedFoot('Run 1', 'x'.repeat(room + 1))).toThrow('Run 1: found a foot of the page of 256 letters; Excel takes 255 at most');
});
