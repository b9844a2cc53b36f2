"""Examples in docstrings, in the package's README and in the notebooks are run."""

import doctest
import importlib
import pathlib
import re

import nbformat
import pytest
from nbclient import NotebookClient

ROOT = pathlib.Path(__file__).parents[2]
MODULES = ["jetwright", "jetwright._flow", "jetwright._flame", "jetwright._burning", "jetwright._gas", "jetwright._site", "jetwright._air", "jetwright._sheet", "jetwright._supply"]
MODULES += ["jetwright._furnace", "jetwright._furnace_case", "jetwright._material", "jetwright._parts", "jetwright._work", "jetwright._measure"]


@pytest.mark.parametrize("name", MODULES)
def test_docstrings(name):
    module = importlib.import_module(name)
    result = doctest.testmod(module, optionflags=doctest.NORMALIZE_WHITESPACE)
    assert result.failed == 0


def test_every_module_with_examples_is_listed():
    found = {path.stem for path in (ROOT / "python" / "jetwright").glob("*.py") if ">>>" in path.read_text()}
    assert found <= {name.removeprefix("jetwright.") for name in MODULES} | {"__init__"}


def test_the_readmes_example_as_it_stands(monkeypatch):
    monkeypatch.chdir(ROOT)
    blocks = re.findall(r"```python\n(.*?)```", (ROOT / "python" / "README.md").read_text(), re.S)
    assert blocks
    for block in blocks:
        exec(compile(block, "python/README.md", "exec"), {})


@pytest.mark.parametrize("path", sorted((ROOT / "examples").glob("*.ipynb")), ids=lambda path: path.stem)
def test_notebooks(path):
    notebook = nbformat.read(path, as_version=4)
    code = [cell for cell in notebook.cells if cell.cell_type == "code"]
    assert "assert" in code[-1].source, "each notebook ends in a decision that an assertion holds"
    assert all(cell.outputs or "import" in cell.source or cell is code[-1] for cell in code), "committed with outputs"
    NotebookClient(notebook, timeout=300, resources={"metadata": {"path": str(ROOT / "examples")}}).execute()
