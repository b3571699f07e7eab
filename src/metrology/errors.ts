/** Why a quantity could not be computed: the input is wrong, or it is sound but the quantity does not exist for it. */
export type FailureKind = 'input' | 'no answer';

/** A failure worded for the person at the bench: what was found, where, and what was expected. */
export class MetrologyError extends Error {
  constructor(readonly kind: FailureKind, message: string) {
    super(message);
    this.name = 'MetrologyError';
  }
}

/** The input is wrong: say what was found and what was expected. */
export function badInput(message: string): MetrologyError {
  return new MetrologyError('input', message);
}

/** The input is sound but no answer exists: say why. */
export function noAnswer(message: string): MetrologyError {
  return new MetrologyError('no answer', message);
}
