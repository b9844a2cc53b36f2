#!/usr/bin/env bash
# Prints the cards with a browser and measures them: page counts on both papers, nothing cut off, sizes of type, needles
# and dampers against the JSON, names that must not break anything. `tests/card.sh 60` draws sixty files instead of six.
# Installs the browser where it can; without one it is skipped, with CI=true that is an error.
set -euo pipefail
cd "$(dirname "$0")/.."

needed="chromium poppler-utils fonts-liberation"
if ! { command -v chromium && command -v pdfinfo; } >/dev/null; then
    if [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null; then
        # shellcheck disable=SC2086
        { apt-get update && apt-get install --yes --no-install-recommends $needed; } >/dev/null 2>&1 || true
    fi
fi
if ! { command -v chromium && command -v pdfinfo; } >/dev/null; then
    echo "skipped: the card is not printed, there is no $needed"
    [ "${CI:-}" != true ]
    exit
fi
environment=target/card
python=$environment/bin/python
stamp=$environment/requirements
[ -x "$python" ] || python3 -m venv "$environment"
if ! cmp -s tests/card/requirements.txt "$stamp"; then
    "$python" -m pip install --quiet --disable-pip-version-check --requirement tests/card/requirements.txt
    cp tests/card/requirements.txt "$stamp"
fi
cargo build --quiet --all-features --bin jetwright
JETWRIGHT_COMMAND="$PWD/target/debug/jetwright" JETWRIGHT_DRAWN="${1:-6}" \
    "$python" -m pytest --quiet -p no:cacheprovider tests/card
