import metadata from '@generated/functions.json';
import { associateFunctions, type CustomFunctionsApi, type Outcome } from '../../src/functions/associate';
import { callFunction } from '../../src/functions/call';
import { CellFault } from '../../src/functions/faults';

jest.mock('../../src/functions/call', () => ({ callFunction: jest.fn() }));
const called = jest.mocked(callFunction);

/** Like Excel's own: its fields are what Excel sends for an error in a cell. */
class StandInError {
  readonly basicType = 'Error';
  constructor(readonly code: string, readonly message?: string) {}
}

function associated(outcomes: Outcome[] = []): Map<string, (...args: unknown[]) => unknown> {
  const functions = new Map<string, (...args: unknown[]) => unknown>();
  const api = {
    associate: (id: string, implementation: (...args: unknown[]) => unknown) => functions.set(id, implementation),
    Error: StandInError,
  };
  associateFunctions(api as unknown as CustomFunctionsApi, (outcome) => outcomes.push(outcome));
  return functions;
}

/** What a call of NET (two ranges and an option) throws to Excel. */
function thrownBy(...args: unknown[]): unknown {
  try {
    associated().get('NET')?.(...args);
  } catch (error) {
    return error;
  }
  return undefined;
}

const INVOCATION = { functionName: 'NET', address: 'Run 1!B4', parameterAddresses: undefined };

beforeEach(() => called.mockReset().mockReturnValue([[1]]));

test('every function of the metadata is associated, and no other', () => {
  expect([...associated().keys()].sort()).toEqual(metadata.functions.map(({ id }) => id).sort());
});

test('each id calls the function of that id', () => {
  for (const [id, implementation] of associated()) {
    implementation(1);
    expect(called).toHaveBeenLastCalledWith(id, [1]);
  }
});

test('numbers, text, booleans and ranges pass as they are, and the result comes back', () => {
  called.mockReturnValue([[7], [8]]);
  expect(associated().get('NET')?.([[0], [1.5]], [['x'], [true]], 'average')).toEqual([[7], [8]]);
  expect(called).toHaveBeenCalledWith('NET', [[[0], [1.5]], [['x'], [true]], 'average']);
});

test('blank cells and omitted arguments become null', () => {
  associated().get('NET')?.([['', null, undefined]], null, undefined);
  expect(called).toHaveBeenCalledWith('NET', [[[null, null, null]], null, null]);
});

test('the invocation object that Excel appends is dropped', () => {
  associated().get('NET')?.([[1]], [[2]], null, INVOCATION);
  expect(called).toHaveBeenCalledWith('NET', [[[1]], [[2]], null]);
});

test('a data type in the place of the last argument is not taken for the invocation', () => {
  associated().get('NET')?.([[1]], [[2]], { type: 'FormattedNumber', basicType: 'Double', basicValue: 3 });
  expect(called).toHaveBeenCalledWith('NET', [[[1]], [[2]], 3]);
});

test('an argument too many is passed on, so that the function can say so', () => {
  associated().get('NET')?.([[1]], [[2]], null, 5);
  expect(called).toHaveBeenCalledWith('NET', [[[1]], [[2]], null, 5]);
});

test.each(['#VALUE!', '#N/A', '#DIV/0!', '#NUM!', '#NAME?', '#REF!', '#NULL!'])('an input cell with %s arrives as that error', (code) => {
  associated().get('NET')?.([[new StandInError(code, 'why')]], [[2]]);
  const cell = (called.mock.calls[0][1][0] as unknown[][])[0][0];
  expect(cell).toBeInstanceOf(CellFault);
  expect(cell).toMatchObject({ code, message: 'why' });
});

test('an error of a kind unknown here arrives as #VALUE! that names it', () => {
  associated().get('NET')?.([[new StandInError('#BUSY!')]]);
  expect((called.mock.calls[0][1][0] as unknown[][])[0][0]).toMatchObject({ code: '#VALUE!', message: expect.stringContaining('#BUSY!') });
});

test('an error as a data type arrives as that error, not as text', () => {
  associated().get('NET')?.([[{ type: 'Error', basicType: 'Error', basicValue: '#DIV/0!', errorType: 'Div0' }]]);
  expect((called.mock.calls[0][1][0] as unknown[][])[0][0]).toMatchObject({ code: '#DIV/0!' });
});

test('data types arrive as their plain value, an empty one as blank', () => {
  associated().get('NET')?.([[{ type: 'FormattedNumber', basicValue: 2.5 }, { type: 'Empty', basicType: 'Empty', basicValue: '' }]]);
  expect(called.mock.calls[0][1][0]).toEqual([[2.5, null]]);
});

test('a data type without a plain value arrives as an error, not as an object', () => {
  associated().get('NET')?.([[{ type: 'Entity', text: 'a thing' }]]);
  expect((called.mock.calls[0][1][0] as unknown[][])[0][0]).toBeInstanceOf(CellFault);
});

test.each(['#VALUE!', '#N/A'] as const)('%s goes out with its message', (code) => {
  called.mockImplementation(() => { throw new CellFault(code, 'readings row 3: found nothing'); });
  const thrown = thrownBy([[1]], [[2]]);
  expect(thrown).toBeInstanceOf(StandInError);
  expect(thrown).toMatchObject({ code, message: 'readings row 3: found nothing' });
});

test.each(['#DIV/0!', '#NUM!', '#NULL!'] as const)('%s goes out bare, as Excel shows no message beside it', (code) => {
  called.mockImplementation(() => { throw new CellFault(code, 'some words'); });
  expect(thrownBy([[1]], [[2]])).toMatchObject({ code, message: undefined });
});

test.each(['#NAME?', '#REF!'] as const)('%s, which no function can return, goes out as #VALUE! that names it', (code) => {
  called.mockImplementation(() => { throw new CellFault(code, 'forces row 2'); });
  expect(thrownBy([[1]], [[2]])).toMatchObject({ code: '#VALUE!', message: `${code}: forces row 2` });
  called.mockImplementation(() => { throw new CellFault(code, `forces: the cell holds ${code}`); });
  expect(thrownBy([[1]], [[2]])).toMatchObject({ code: '#VALUE!', message: `forces: the cell holds ${code}` });
});

test.each([['an exception', new TypeError('x is undefined')], ['a thrown string', 'oops'], ['a thrown nothing', undefined]])('%s does not escape raw', (_, raw) => {
  called.mockImplementation(() => { throw raw; });
  const thrown = thrownBy([[1]], [[2]]);
  expect(thrown).toBeInstanceOf(StandInError);
  expect(thrown).toMatchObject({ code: '#VALUE!', message: expect.stringContaining('PROVE.NET failed inside') });
});

test('the outcome of each calculation is told with its cell', () => {
  const outcomes: Outcome[] = [];
  const net = associated(outcomes).get('NET');
  net?.([[1]], [[2]], null, INVOCATION);
  const fault = new CellFault('#N/A', 'no root');
  called.mockImplementation(() => { throw fault; });
  expect(() => net?.([[1]], [[2]], null, INVOCATION)).toThrow(expect.objectContaining({ code: '#N/A' }));
  expect(outcomes).toEqual([
    { id: 'NET', address: 'Run 1!B4', fault: undefined },
    { id: 'NET', address: 'Run 1!B4', fault },
  ]);
});

test('a value preview while typing, or a call without a cell, tells no outcome', () => {
  const outcomes: Outcome[] = [];
  const net = associated(outcomes).get('NET');
  net?.([[1]], [[2]], null, { ...INVOCATION, isInValuePreview: true });
  net?.([[1]], [[2]], null, { functionName: 'NET' });
  net?.([[1]], [[2]], null);
  expect(outcomes).toEqual([]);
});
