# Completion for contam in fish: contam completion fish | source
function __contam_complete
    set -l words (commandline -opc)
    set -l word (commandline -ct)
    $words[1] completion fish -- $words "$word" 2>/dev/null
end
complete -c contam -f -a '(__contam_complete)'
