# Prints what the completion offers for the last word of a line: complete.bash <script> <word>...
source "$1"
shift
COMP_WORDS=("$@")
COMP_CWORD=$(($# - 1))
_blankcheck
printf '%s\n' "${COMPREPLY[@]}"
