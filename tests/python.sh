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
# The environment's own maturin builds it: nothing is fetched again.
export PATH="$PWD/$environment/bin:$PATH"
"$python" -m pip install --quiet --disable-pip-version-check --no-deps --force-reinstall --no-build-isolation .
# The command as the Rust tests have built it, one of which brings it.
cargo test --quiet --all-features --test fuzz_corpus --no-run

export JETWRIGHT_COMMAND="$PWD/target/debug/jetwright"
"$python" -m pytest --quiet --hypothesis-seed="${JETWRIGHT_SEED:-1}" python/tests
# From another folder, so that the installed package is looked at.
config=$PWD/python/mypy.ini
python_path=$PWD/$python
(cd "$environment" && "$python_path" -m mypy.stubtest jetwright --mypy-config-file "$config")

# The oldest Python the package promises, where there is one: the same wheel, without the pinned alternatives.
# A name on the path may be a mere signpost to versions that are not chosen, so each is asked.
oldest=
for candidate in $(compgen -G "$HOME/.pyenv/versions/3.10.*/bin/python3.10" || true) python3.10; do
    if "$candidate" -c "import ensurepip" >/dev/null 2>&1; then
        oldest=$candidate
        break
    fi
done
if [ -n "$oldest" ]; then
    old=target/python310/bin/python
    if ! [ -x "$old" ]; then
        "$oldest" -m venv target/python310
        "$old" -m pip install --quiet --disable-pip-version-check \
            numpy pandas xarray dask distributed hypothesis pytest matplotlib
    fi
    rm -rf target/wheel
    "$python" -m pip wheel --quiet --disable-pip-version-check --no-deps --no-build-isolation --wheel-dir target/wheel .
    "$old" -m pip install --quiet --disable-pip-version-check --no-deps --force-reinstall target/wheel/*.whl
    "$old" -m pytest --quiet python/tests/test_flow.py python/tests/test_furnace.py python/tests/test_reference.py
else
    echo "python.sh: no Python 3.10 here, so the package was tried on $("$python" --version) only"
fi
