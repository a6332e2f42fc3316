# Completion of splaybook's commands and options for bash.
_splaybook() {
  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]} command=${COMP_WORDS[1]}
  local piece="--paper --effort --style --help"
  COMPREPLY=()
  if [ "$COMP_CWORD" -eq 1 ]; then
    COMPREPLY=($(compgen -W "check print watch report compare jobs new explain schema --help --version" -- "$word"))
    return
  fi
  case $before in
    --paper) COMPREPLY=($(compgen -W "A4 Letter A3 Tabloid" -- "$word")); return ;;
    --for)
      local whom="shop client"
      [ "$command" = print ] && whom="$whom archive"
      COMPREPLY=($(compgen -W "$whom" -- "$word"))
      return ;;
    --as) COMPREPLY=($(compgen -W "pdf png svg dxf step csv json" -- "$word")); return ;;
    --out) COMPREPLY=($(compgen -d -- "$word")); return ;;
  esac
  local options
  case $command in
    check | report) options=$piece ;;
    print) options="$piece --for --out --as" ;;
    watch) options="$piece --for --out" ;;
    compare) options="$piece --for --out --only-changed" ;;
    jobs) options="--out --help" ;;
    new) options="--from --help" ;;
    *) options="--help" ;;
  esac
  case $word in
    -*) COMPREPLY=($(compgen -W "$options" -- "$word")) ;;
    *)
      [ "$command" = schema ] && COMPREPLY=($(compgen -W "project report" -- "$word")) && return
      COMPREPLY=($(compgen -f -X '!*.toml' -- "$word") $(compgen -d -- "$word")) ;;
  esac
}
complete -o filenames -F _splaybook splaybook
