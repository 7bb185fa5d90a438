# Completion for contam in bash: source <(contam completion bash)
_contam() {
  local one
  COMPREPLY=()
  while IFS= read -r one; do
    COMPREPLY+=("$one")
  done < <("$1" completion bash -- "${COMP_LINE:0:COMP_POINT}" 2> /dev/null)
  # What ends so goes on; folders and files are quoted as bash likes them.
  case ${COMPREPLY[0]-} in
    *=) compopt -o nospace 2> /dev/null ;;
    */* | *.*) compopt -o filenames 2> /dev/null ;;
  esac
}
complete -o nosort -F _contam contam 2> /dev/null || complete -F _contam contam
