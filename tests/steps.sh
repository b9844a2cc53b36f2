# Sourced by the scripts that run many checks: `step "name" command...` runs one, stops where it fails, and says what it
# cost; at the end all costs stand in a table. What is drawn at random is drawn from `seed`, the same every time unless
# JETWRIGHT_SEED says otherwise.

export JETWRIGHT_SEED="${JETWRIGHT_SEED:-1}"
export PROPTEST_RNG_SEED="$JETWRIGHT_SEED"
# A seed repeats what it found: no file of finds would make one script's result the other's.
export PROPTEST_DISABLE_FAILURE_PERSISTENCE=true

costs=()
doing=

step() {
    local start=$SECONDS
    doing="$1"
    printf '\n== %s\n' "$1"
    shift
    "$@"
    costs+=("$(printf '%6d s  %s' $((SECONDS - start)) "$doing")")
    printf '   %d s\n' $((SECONDS - start))
    doing=
}

tell_costs() {
    printf '\nseed %s\n' "$JETWRIGHT_SEED"
    [ ${#costs[@]} = 0 ] || printf '%s\n' "${costs[@]}"
    printf '%6d s  in all\n' "$SECONDS"
    if [ -n "$doing" ]; then
        printf 'FAILED: %s\n' "$doing"
    else
        printf '\nall of %s passed\n' "$(basename "$0")"
    fi
}
trap tell_costs EXIT
