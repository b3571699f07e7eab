import { CustomCommandExecutionError, ICommandService, type Injector } from '@univerjs/core';

/** The command that the editor of a cell runs after a blank was typed. Written out, since its package does not export it. */
const AFTER_BLANK = 'doc.command.after-space';

/**
 * Keeps text as it is typed: the editor would make a list of what begins like one, and take the beginning away, so that
 * "A. Smith" and "1. zero trimmed" became "Smith" and "zero trimmed".
 */
export function keepTypingPlain(injector: Injector): void {
  injector.get(ICommandService).beforeCommandExecuted(({ id }) => {
    // The grid takes this error for "do nothing".
    if (id === AFTER_BLANK) throw new CustomCommandExecutionError('what is typed stays as it is');
  });
}
