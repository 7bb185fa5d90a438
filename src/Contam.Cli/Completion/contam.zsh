#compdef contam
# Completion for contam in zsh: source <(contam completion zsh), or this text as a file _contam in a folder of $fpath.
_contam() {
  local line word
  local -a done_words done_shown more_words more_shown
  for line in "${(@f)$("${(Q)words[1]}" completion zsh -- "${(@Q)words[1,CURRENT-1]}" "${(Q)PREFIX}" 2> /dev/null)}"; do
    word=${line%%$'\t'*}
    [[ -n $word ]] || continue
    line=${line#*$'\t'}
    # What ends so goes on.
    if [[ $word == *[/=] ]]; then
      more_words+=("$word") more_shown+=("$word${line:+  -- $line}")
    else
      done_words+=("$word") done_shown+=("$word${line:+  -- $line}")
    fi
  done
  (( $#more_words )) && compadd -S '' -l -d more_shown -a more_words
  (( $#done_words )) && compadd -l -d done_shown -a done_words
  (( $#more_words + $#done_words ))
}
if [[ ${funcstack[1]-} == _contam ]]; then
  _contam "$@"
else
  (( $+functions[compdef] )) || { autoload -Uz compinit && compinit }
  compdef _contam contam
fi
