# A drop target for one blank: drag art on to it, and its print-ready file lies beside it in print-ready.
#
#   1. Set the blank: an id that "blankcheck blanks" lists, a size such as 200x150mm, or the full path of a
#      JSON file with one blank.
$Blank = 'tile-ceramic-8in'
#   2. Right-click this file, "Run with PowerShell". It puts a shortcut on your desktop and into "Send to".
#   3. Drag files, folders or ZIP archives on to the shortcut. For very many files drag their folder.
#
# The shortcut starts node itself: a .cmd file in between would break names with & or ^ apart.

$ErrorActionPreference = 'Stop'

$node = (Get-Command node.exe -CommandType Application | Select-Object -First 1).Source
$program = Join-Path $PSScriptRoot '..\..\..\dist\cli\bin.js'
if (-not (Test-Path -LiteralPath $program)) {
  $program = Join-Path (npm root --global) 'blankcheck\dist\cli\bin.js'
}
$program = (Resolve-Path -LiteralPath $program).ProviderPath

$name = 'Blankcheck ' + ($Blank -replace '[\\/:*?"<>|]', '_') + '.lnk'
$shell = New-Object -ComObject WScript.Shell
foreach ($place in 'Desktop', 'SendTo') {
  $link = $shell.CreateShortcut((Join-Path ([Environment]::GetFolderPath($place)) $name))
  $link.TargetPath = $node
  # What is dropped is written behind this.
  $link.Arguments = '"{0}" prepare --pause --force --blank "{1}" --' -f $program, $Blank
  $link.Description = 'Drag art on to this icon to get its print-ready file'
  $link.Save()
  Write-Host "The drop target is $($link.FullName)"
}
Read-Host 'Press Return to close'
