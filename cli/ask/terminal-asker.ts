import { autocomplete, isCancel } from '@clack/prompts';
import type { Asker } from './asker.ts';

/** Lines of the list that are seen at once: few enough for a small window (own choice). */
const LINES_AT_ONCE = 8;
/** What terminals are wide of old. */
const DEFAULT_COLUMNS = 80;

/** Asks at the terminal of this process; on standard error, since standard output carries data only. */
export function createTerminalAsker(interrupt: AbortSignal): Asker {
  return {
    async choose(message, search, otherwise) {
      // A terminal that does not know its size says 0: the list would be laid out in lines of no letters.
      process.stderr.columns ||= DEFAULT_COLUMNS;
      const answer = await autocomplete<string>({
        message,
        // Found and ordered by us for what is typed; its own filter has nothing to add.
        options() {
          return search(this.userInput.trim()).map((choice) => ({ ...choice }));
        },
        filter: () => true,
        validate: (value) => (value === undefined ? otherwise : undefined),
        maxItems: LINES_AT_ONCE,
        input: process.stdin,
        output: process.stderr,
        signal: interrupt,
      });
      if (!isCancel(answer)) return answer;
      // While keys are read one by one, Ctrl-C is a key and no signal: it is handed on as the one that it stands for.
      if (!interrupt.aborted) process.emit('SIGINT', 'SIGINT');
      interrupt.throwIfAborted();
      throw new Error('Expected an interrupt after a cancelled question.');
    },
  };
}
