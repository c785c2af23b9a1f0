import { type Completed, type CompletedCommand, listValueOptions } from './command-tree.ts';

/** Completion for zsh 5, with the help beside each option. */
export function renderZsh(tree: readonly CompletedCommand[]): string {
  const names = tree.map(({ name }) => name);
  const values = tree.flatMap(({ name, options }) =>
    options.flatMap((option) =>
      option.value ? [`    (${name}:${option.name}) ${offer(option.value)} ;;`] : [],
    ),
  );
  const commands = tree.map(
    ({ name, operand, options }) =>
      `    (${name})\n      if [[ $PREFIX == -* ]]; then\n        described=(${options.map((option) => quote(`${option.name}:${option.help}`)).join(' ')})\n        _describe -o option described\n      else ${offer(operand)}; fi ;;`,
  );
  return `#compdef blankcheck
# Completion of blankcheck for zsh. In ~/.zshrc, behind compinit: source <(blankcheck completions zsh)
_blankcheck() {
  local command= prev=$words[CURRENT-1] i
  local -a described
  for ((i = 2; i < CURRENT; i++)); do
    case $words[i] in
    (${listValueOptions(tree).join('|')}) ((i++)) ;;
    (-*) ;;
    (*) command=$words[i]; break ;;
    esac
  done
  if [[ -z $command && $PREFIX != -* && $prev != -* ]]; then
    described=(${tree.map(({ name, help }) => quote(`${name}:${help}`)).join(' ')})
    _describe command described
    _files
    return
  fi
  case $command in
    (${names.join('|')}) ;;
    (help) compadd -- ${names.join(' ')}; return ;;
    (*) command=prepare ;;
  esac
  case $command:$prev in
${values.join('\n')}
    (*) case $command in
${commands.join('\n')}
    esac ;;
  esac
}
if [[ $funcstack[1] == _blankcheck ]]; then _blankcheck "$@"; else compdef _blankcheck blankcheck; fi
`;
}

function offer({ words, paths }: Completed): string {
  const offers = [
    ...(words.length > 0 ? [`compadd -- ${words.join(' ')}`] : []),
    ...(paths === 'files' ? ['_files'] : []),
    ...(paths === 'folders' ? ['_files -/'] : []),
  ];
  return offers.length > 0 ? offers.join('; ') : ':';
}

function quote(text: string): string {
  return `'${text.replaceAll("'", "'\\''")}'`;
}
