import { type Completed, type CompletedCommand, listValueOptions } from './command-tree.ts';

/** Completion for fish 3, with the help beside each option. */
export function renderFish(tree: readonly CompletedCommand[]): string {
  const names = tree.map(({ name }) => name);
  const lines = tree.flatMap(({ name, help, operand, options }) => [
    `complete -c blankcheck -n '__blankcheck_is ""' -a ${name} -d ${quote(help)}`,
    `complete -c blankcheck -n '__blankcheck_is ${name}' ${offer(operand)}`,
    ...options.map(
      (option) =>
        `complete -c blankcheck -n '__blankcheck_is ${name}${name === 'prepare' ? ' ""' : ''}' -l ${option.name.slice(2)}${option.value ? ` -r ${offer(option.value)}` : ''} -d ${quote(option.help)}`,
    ),
  ]);
  return `# Completion of blankcheck for fish. Once: blankcheck completions fish > ~/.config/fish/completions/blankcheck.fish
function __blankcheck_command
    set -l passes no
    set -l typed (commandline -opc)
    for word in $typed[2..-1]
        if test $passes = yes
            set passes no
            continue
        end
        switch $word
            case ${listValueOptions(tree).join(' ')}
                set passes yes
            case '-*'
            case ${names.join(' ')} help
                echo $word
                return
            case '*'
                echo prepare
                return
        end
    end
    echo
end
function __blankcheck_is
    contains -- (__blankcheck_command) $argv
end
complete -c blankcheck -n '__blankcheck_is help' -f -a '${names.join(' ')}'
${lines.join('\n')}
`;
}

function offer({ words, paths }: Completed): string {
  const said = words.length > 0 ? `-a '${words.join(' ')}'` : '';
  if (paths === 'folders') return "-f -a '(__fish_complete_directories)'";
  return `${paths === 'files' ? '-F' : '-f'} ${said}`.trim();
}

function quote(text: string): string {
  return `'${text.replaceAll('\\', '\\\\').replaceAll("'", "\\'")}'`;
}
