# SPDX-License-Identifier: MIT
# Completion of fish for clampbook: the program itself is asked what may stand here, so nothing of it is repeated.
function __clampbook_complete
    set -l words (commandline -opc)
    set -l current (string unescape -- (commandline -ct))
    for line in ($words[1] complete -- $words[2..-1] "$current" 2>/dev/null)
        if string match -q '<file>*' -- $line
            __fish_complete_path "$current"
        else
            echo $line
        end
    end
end
complete -c clampbook -f -k -a '(__clampbook_complete)'
