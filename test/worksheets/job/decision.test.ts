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

describe('with a comparison', () => {
  const run = () => sheet().single('verdict_overall', 'D40', 'within specification in all 5 judged').single('decision', 'D60', 'pass').single('decision_rule', 'D59', 'simple').read();
  const comparison = (outcome: string, { found = 'Sample', left = 'no adjustment made' } = {}) =>
    ({ ...sheet().single('comparison_found', 'D1', found).single('comparison_left', 'D2', left).single('outcome_after', 'D3', outcome).read(), name: 'Comparison' });

  test('its words lead, and the limits of the run follow', () => {
    expect(proposedDecision(run(), comparison('outside in 2 of 12 judged')))
      .toBe("outside the tolerance in 2 of 12 points; the run's own limits: within specification in all 5 judged; with the uncertainty (simple): pass");
    expect(proposedDecision(run(), comparison('within specification in all 12 judged', { found: 'Before', left: 'Sample' })))
      .toBe("within the tolerance in all 12 points; the run's own limits: within specification in all 5 judged; with the uncertainty (simple): pass");
  });

  test('that judged nothing, or judges another run last, the run speaks alone', () => {
    const alone = proposedDecision(run());
    expect(alone).toMatch(/^within specification/);
    expect(proposedDecision(run(), comparison('nothing was judged: no limits'))).toBe(alone);
    expect(proposedDecision(run(), comparison('outside in 2 of 12 judged', { left: 'Another run' }))).toBe(alone);
    expect(proposedDecision(run(), comparison('outside in 2 of 12 judged', { found: 'Another run' }))).toBe(alone);
  });

  test('that cannot judge yet, nothing is proposed', () => {
    expect(proposedDecision(run(), comparison('open: readings are missing'))).toBeUndefined();
    expect(proposedDecision(run(), comparison('not judged: U is not computed'))).toBeUndefined();
  });
});
