# Completion of burrowline for bash.
_burrowline() {
  local current=${COMP_WORDS[COMP_CWORD]} previous=${COMP_WORDS[COMP_CWORD - 1]} options=
  local commands="check search set make sheet picture movie export import learn schema help"
  if [ "$COMP_CWORD" -eq 1 ]; then
    mapfile -t COMPREPLY < <(compgen -W "$commands --help --version" -- "$current"; compgen -f -X "!*.crossing" -- "$current"; compgen -d -- "$current")
    return
  fi
  case $previous in
    --units) mapfile -t COMPREPLY < <(compgen -W "metric us m ft us-ft" -- "$current"); return ;;
    --over) mapfile -t COMPREPLY < <(compgen -W "depth-and-grade station-and-offset" -- "$current"); return ;;
    --part) mapfile -t COMPREPLY < <(compgen -W "sheet card permit working as-built all" -- "$current"); return ;;
    --theme) mapfile -t COMPREPLY < <(compgen -W "light dark" -- "$current"); return ;;
    --place) mapfile -t COMPREPLY < <(compgen -W "local survey" -- "$current"); return ;;
    --lengths) mapfile -t COMPREPLY < <(compgen -W "m us-ft" -- "$current"); return ;;
    --what) mapfile -t COMPREPLY < <(compgen -W "path marks findings working both plan profile" -- "$current"); return ;;
    --height-units) mapfile -t COMPREPLY < <(compgen -W "m ft us-ft" -- "$current"); return ;;
    --heights) mapfile -t COMPREPLY < <(compgen -W "datum ground" -- "$current"); return ;;
    --level) mapfile -t COMPREPLY < <(compgen -W "crown centre invert" -- "$current"); return ;;
    --language) mapfile -t COMPREPLY < <(compgen -W "en de es" -- "$current"); return ;;
  esac
  case ${COMP_WORDS[1]} in
    check) options="--json --csv --units --working --trials --on --alternative --jobs --part" ;;
    search) options="--json --units --grid --over --tools --alternative --jobs" ;;
    set) options="-o" ;;
    make) options="-o --force" ;;
    sheet) options="-o --paper --scale --units --part --record" ;;
    picture) options="-o --size --theme --units --ratio" ;;
    movie) options="-o --size --theme --units --ratio --speed --rate" ;;
    export) options="-o --what --place --lengths --bom --map --units" ;;
    import) options="-o --order --units --height-units --line --heights --level --meaning --meanings --diameter --join --crs --field --json --strict" ;;
    learn) options="--json -o --backed-out" ;;
    schema) mapfile -t COMPREPLY < <(compgen -W "crossing assessment" -- "$current"); return ;;
    help) mapfile -t COMPREPLY < <(compgen -W "$commands" -- "$current"); return ;;
  esac
  if [[ $current == -* ]]; then
    mapfile -t COMPREPLY < <(compgen -W "$options --language --help" -- "$current")
  else
    mapfile -t COMPREPLY < <(compgen -f -- "$current")
  fi
}
complete -o filenames -F _burrowline burrowline
