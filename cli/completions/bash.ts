import { type Completed, type CompletedCommand, listValueOptions } from './command-tree.ts';

/** Completion for bash 3.2 and later; where nothing is offered, bash offers files by itself, rightly quoted. */
export function renderBash(tree: readonly CompletedCommand[]): string {
  const names = tree.map(({ name }) => name);
  const values = tree.flatMap(({ name, options }) =>
    options.flatMap((option) =>
      option.value ? [`    ${name}:${option.name}) ${offer(option.value)} ;;`] : [],
    ),
  );
  const commands = tree.map(
    ({ name, operand, options }) =>
      `    ${name})\n      if [[ $cur == -* ]]; then words='${options.map((option) => option.name).join(' ')}'\n      else ${offer(operand)}; fi ;;`,
  );
  return `# Completion of blankcheck for bash. In ~/.bashrc: eval "$(blankcheck completions bash)"
_blankcheck() {
  local cur=\${COMP_WORDS[COMP_CWORD]} prev=\${COMP_WORDS[COMP_CWORD-1]} command= words= paths=none i
  COMPREPLY=()
  if [[ $cur == = ]]; then cur=
  elif [[ $prev == = ]]; then prev=\${COMP_WORDS[COMP_CWORD-2]}; fi
  for ((i = 1; i < COMP_CWORD; i++)); do
    case \${COMP_WORDS[i]} in
    ${listValueOptions(tree).join('|')})
      ((i++)); if [[ \${COMP_WORDS[i]} == = ]]; then ((i++)); fi ;;
    -*) ;;
    *) command=\${COMP_WORDS[i]}; break ;;
    esac
  done
  case $command in
    '') command=prepare; if [[ $cur != -* && $prev != -* ]]; then words='${names.join(' ')} help'; fi ;;
    ${names.join('|')}) ;;
    help) COMPREPLY=($(compgen -W '${names.join(' ')}' -- "$cur")); return ;;
    *) command=prepare ;;
  esac
  case $command:$prev in
${values.join('\n')}
    *)
    if [[ -n $words ]]; then paths=files; else case $command in
${commands.join('\n')}
    esac; fi ;;
  esac
  COMPREPLY=($(compgen -W "$words" -- "$cur"))
  if [[ $paths == folders ]]; then compopt -o dirnames 2>/dev/null; fi
  if [[ $paths != files ]]; then compopt +o default 2>/dev/null; fi
  if [[ $paths == files && $cur == */* ]]; then COMPREPLY=(); fi
}
complete -o default -F _blankcheck blankcheck
`;
}

function offer({ words, paths }: Completed): string {
  return `words='${words.join(' ')}' paths=${paths}`;
}
