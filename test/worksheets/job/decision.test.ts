import { proposedDecision } from '../../../src/worksheets/job/decision';
import { SampleSheet } from '../sampleSheet';

const sheet = () => new SampleSheet();

test('a run with an outcome alone proposes it', () => {
  expect(proposedDecision(sheet().single('verdict_overall', 'D40', 'within specification in all 6 judged').read())).toBe('within specification in all 6 judged');
});

test('each decision with the uncertainty follows, with its rule', () => {
  const both = sheet().single('verdict_overall', 'D40', 'outside in 1 of 6 judged')
    .single('decision_tension', 'D60', 'pass').single('decision_rule_tension', 'D59', 'guarded').single('decision_compression', 'D80', 'conditional fail').single('decision_rule_compression', 'D79', 'guarded');
  expect(proposedDecision(both.read())).toBe('outside in 1 of 6 judged; with the uncertainty (guarded), tension: pass; with the uncertainty (guarded), compression: conditional fail');
  const one = sheet().single('verdict_overall', 'D40', 'within specification in all 6 judged').single('decision', 'D60', 'pass').single('decision_rule', 'D59', 'simple');
  expect(proposedDecision(one.read())).toBe('within specification in all 6 judged; with the uncertainty (simple): pass');
});

test('of a sheet with both stages the one as left counts, and as found if as left was not run', () => {
  const stages = (left: string) => sheet().single('verdict_overall_as_found', 'D40', 'outside in 2 of 9 judged').single('verdict_overall_as_left', 'D41', left)
    .single('decision_as_found', 'D60', 'fail').single('decision_rule_as_found', 'D59', 'simple').single('decision_as_left', 'D80', 'pass').single('decision_rule_as_left', 'D79', 'simple').read();
  expect(proposedDecision(stages('within specification in all 9 judged'))).toBe('within specification in all 9 judged; with the uncertainty (simple), as left: pass');
  expect(proposedDecision(stages('not run: without adjustment, as found is final'))).toBe('outside in 2 of 9 judged; with the uncertainty (simple), as found: fail');
  expect(proposedDecision(stages('open: readings are missing'))).toBeUndefined();
});

test('nothing is proposed while readings are missing, from an error, or from a sheet without an outcome', () => {
  expect(proposedDecision(sheet().single('verdict_overall', 'D40', 'open: readings are missing').read())).toBeUndefined();
  expect(proposedDecision(sheet().single('verdict_overall', 'D40', { error: '#VALUE!' }).read())).toBeUndefined();
  expect(proposedDecision(sheet().read())).toBeUndefined();
});
