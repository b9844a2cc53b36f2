#!/usr/bin/env bash
# Builds and installs the Python package in an environment of its own under target/, then tests it as installed:
# pytest with warnings as errors, examples of docstrings, README and notebooks, and the drift of the stubs.
set -euo pipefail
cd "$(dirname "$0")/.."

environment=target/python
python=$environment/bin/python
stamp=$environment/requirements

if ! [ -x "$python" ]; then
    python3 -m venv "$environment"
fi
if ! cmp -s python/requirements-test.txt "$stamp"; then
    "$python" -m pip install --quiet --disable-pip-version-check --requirement python/requirements-test.txt
    cp python/requirements-test.txt "$stamp"
fi
"$python" -m pip install --quiet --disable-pip-version-check --no-deps --force-reinstall .
cargo build --quiet --release --features cli

export JETWRIGHT_COMMAND="$PWD/target/release/jetwright"
"$python" -m pytest --quiet python/tests
# From another folder, so that the installed package is looked at.
config=$PWD/python/mypy.ini
python_path=$PWD/$python
(cd "$environment" && "$python_path" -m mypy.stubtest jetwright --mypy-config-file "$config")
