# Types a line into an interactive zsh and prints the words that it became: complete.zsh <script> <line, ends with a tab>
zmodload zsh/zpty
zpty shell zsh -f -i
zpty -w shell "PS1=; autoload -Uz compinit; compinit -u -D; source ${(q)1}; setopt no_beep; blankcheck() { print -r -- 'GOT<'\"\$*\"'>' }; print READY-\$((1 + 1))"
zpty -r shell out '*READY-2*'
zpty -w shell "$2"
zpty -r -m shell out '*GOT<[^$]*>*'
print -r -- "${${out##*GOT<}%%>*}"
zpty -d shell
