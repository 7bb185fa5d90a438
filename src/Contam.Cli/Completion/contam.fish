# Completion for contam in fish: contam completion fish | source
function __contam_complete
    set -l words (commandline -opc)
    set -l word (commandline -ct)
    # With its blanks and quotes as they are meant; a quote that is still open is left away.
    set word (string unescape -- "$word"; or string trim -l -c "'\"" -- "$word")
    $words[1] completion fish -- $words "$word" 2>/dev/null
end
complete -c contam -f -a '(__contam_complete)'
