import type { CompletedCommand } from './command-tree.ts';
import { listValueOptions } from './command-tree.ts';

/**
 * Completion for PowerShell 5.1 and later, by its Register-ArgumentCompleter; files it completes by itself where nothing is
 * offered. Not run by our tests, which have no PowerShell: they read it as text only.
 */
export function renderPowershell(tree: readonly CompletedCommand[]): string {
  const names = tree.map(({ name }) => name);
  const commands = tree.map(({ name, operand, options }) => {
    const values = options.filter(({ value }) => value && value.words.length > 0);
    return `    ${quote(name)} = @{
      Options = @(${list(options.map((option) => option.name))})
      Operands = @(${list(operand.words)})
      Values = @{ ${values.map((option) => `${quote(option.name)} = @(${list(option.value?.words ?? [])})`).join('; ')} }
    }`;
  });
  return `# Completion of blankcheck for PowerShell (not run by the tests of blankcheck).
# In your profile: blankcheck completions powershell | Out-String | Invoke-Expression
Register-ArgumentCompleter -Native -CommandName blankcheck -ScriptBlock {
  param($wordToComplete, $commandAst, $cursorPosition)
  $tree = @{
${commands.join('\n')}
  }
  $takesValue = @(${list(listValueOptions(tree))})
  $typed = @($commandAst.CommandElements | Where-Object { $_.Extent.EndOffset -lt $cursorPosition } | ForEach-Object { $_.ToString() })
  $name = ''
  for ($i = 1; $i -lt $typed.Count; $i++) {
    if ($takesValue -contains $typed[$i]) { $i++ }
    elseif (-not $typed[$i].StartsWith('-')) { $name = $typed[$i]; break }
  }
  $previous = if ($typed.Count -gt 1) { $typed[-1] } else { '' }
  $command = if ($tree.ContainsKey($name)) { $tree[$name] } else { $tree['prepare'] }
  if ($takesValue -contains $previous) { $offered = $command.Values[$previous] }
  elseif ($wordToComplete.StartsWith('-')) { $offered = $command.Options }
  elseif ($name -eq '') { $offered = @(${list(names)}) }
  else { $offered = $command.Operands }
  $offered | Where-Object { $_ -and $_.StartsWith($wordToComplete) } | ForEach-Object {
    [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_)
  }
}
`;
}

function list(words: readonly string[]): string {
  return words.map(quote).join(', ');
}

function quote(text: string): string {
  return `'${text.replaceAll("'", "''")}'`;
}
