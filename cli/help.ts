import { COMMANDS, type CommandName } from './command-table.ts';
import { EXIT_CODE_HELP, optionsOf } from './options.ts';

const TITLE =
  'Looks at art before a dye-sublimation transfer is printed, says what would go wrong on the blank, and writes the mirrored, padded print-ready file.';

/** The text of `--help`: about everything, or about one command. Its tables are made from those of options.ts. */
export async function renderHelp(about: CommandName | null, width: number): Promise<string> {
  const { Command, Option } = await import('commander');
  const shown = COMMANDS.find(({ name }) => name === (about ?? 'prepare'))!;
  const command = new Command(about === null ? 'blankcheck' : `blankcheck ${about}`)
    .helpOption('-h, --help', 'this text')
    .configureHelp({ helpWidth: Math.min(width, 100) })
    .configureOutput({ getOutHelpWidth: () => Math.min(width, 100) })
    .description(about === null ? TITLE : `${sentence(shown.help)}`);
  command.usage(usageOf(about, shown.takes));
  if (about === null) {
    command.version('', '-V, --version', 'the version of the program').helpCommand(false);
    for (const { name, takes, help } of COMMANDS) command.command(`${name} ${takes}`).description(help);
  } else {
    if (shown.takes !== '') command.argument(shown.takes, shown.takesHelp);
  }
  for (const { flags, help, choices, byDefault, hidden } of optionsOf(shown.name)) {
    const offered = choices?.filter((choice) => choice !== 'pdf');
    const told =
      offered && !offered.every((choice) => help.includes(choice)) ? `${help}: ${offered.join(', ')}` : help;
    const option = new Option(flags, byDefault === undefined ? told : `${told} (default: ${byDefault})`);
    command.addOption(option.hideHelp(hidden ?? false));
  }
  const examples = (about === null ? COMMANDS : [shown]).flatMap((row) => row.examples);
  return [
    command.helpInformation(),
    `Examples:\n${examples.map((example) => `  ${example}\n`).join('')}`,
    ...(about === null ? ['Lengths carry their unit: mm, cm, in (or "), pt.\n', `${EXIT_CODE_HELP}\n`] : []),
  ].join('\n');
}

function usageOf(about: CommandName | null, takes: string): string {
  if (about === null) return '[command] <artwork...> --blank <blank> [options]';
  return about === 'prepare' || about === 'check'
    ? '<artwork...> --blank <blank> [options]'
    : `${takes} [options]`;
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
