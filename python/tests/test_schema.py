"""The JSON schema of the burner file, judged by jsonschema, and the blank file beside it."""

import copy
import json
import os
import pathlib
import subprocess
import tomllib

import jsonschema
import pytest

ROOT = pathlib.Path(__file__).parents[2]


def command(*arguments):
    """What the command prints."""
    run = [os.environ.get("JETWRIGHT_COMMAND", "jetwright"), *arguments]
    return subprocess.run(run, check=True, capture_output=True, text=True).stdout


@pytest.fixture(scope="module")
def validator():
    schema = json.loads(command("schema"))
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


@pytest.fixture(scope="module")
def blank():
    return tomllib.loads(command("blank"))


def test_the_blank_and_every_example_are_valid(validator, blank):
    validator.validate(blank)
    examples = sorted((ROOT / "examples").glob("*.toml"))
    burners = [tomllib.loads(path.read_text(encoding="utf-8")) for path in examples]
    burners = [burner for burner in burners if "setting" in burner]
    assert len(burners) >= 4
    for burner in burners:
        validator.validate(burner)


@pytest.mark.parametrize("trade", ["forge", "crucible", "kiln", "glass", "brazing"])
def test_what_blank_and_begin_write_is_valid(validator, trade, tmp_path):
    validator.validate(tomllib.loads(command("blank", "--short")))
    text = command("blank", "--for", trade)
    assert text.startswith("#:schema ")
    validator.validate(tomllib.loads(text))
    known = ["--trade", trade, "--gas", "propane"]
    each = [
        [],
        ["--blower-flow", "100 cfm", "--duct", "2 in", "--ports", "60 x 4.5 mm", "--lining", "soft"],
        ["--blower-pressure", "600 Pa", "--damper", "none", "--ports", "1 x 50 mm", "--chamber", "300 x 400 mm"],
        ["--blower-plate", "60 W, 120 mm", "--ports", "60 x 4.5 mm", "--chamber", "0.3 x 0.3 x 0.4 m", "--lining", "heavy"],
    ]
    for place, options in enumerate(each):
        path = tmp_path / f"{place}.toml"
        command("begin", str(path), *known, *options)
        validator.validate(tomllib.loads(path.read_text(encoding="utf-8")))


def changed(burner, section, **keys):
    """A copy with keys of a section changed, or taken out where they are ``None``."""
    other = copy.deepcopy(burner)
    held = other[section][0] if isinstance(other[section], list) else other[section]
    for key, value in keys.items():
        held.pop(key, None)
        if value is not None:
            held[key] = value
    return other


@pytest.mark.parametrize(
    ("section", "keys"),
    [
        ("site", {"station_pressure": "835 hPa"}),
        ("site", {"altitude": None}),
        ("site", {"altitude": "1600"}),
        ("site", {"humidity": 40}),
        ("gas", {"kind": 5}),
        ("jet", {"bore": "1.8 mm"}),
        ("jet", {"drill": None}),
        ("jet", {"edge": "blunt"}),
        ("jet", {"edge": "rounded"}),
        ("jet", {"edge_radius": "1 mm"}),
        ("jet", {"count": 65}),
        ("jet", {"measured_gauge": "5 psi"}),
        ("jet", {"boor": "1.8 mm"}),
        ("blower", {"points": None}),
        ("blower", {"now_speed": "3000 rpm", "speed": None}),
        ("cylinder", {"capacity": "45"}),
        ("regulator", {"minimum_inlet_pressure": None, "points": None}),
        ("setting", {"gauge": None}),
        ("setting", {"heat": "26 kW"}),
        ("setting", {"damper": "60 %", "air_ratio": 1.05}),
        ("panel", {"thickness": None}),
        ("panel", {"width": "1 m"}),
        ("work", {"crucible_mass": None}),
        ("uncertainty", {"gauge_error": "0.2 psi"}),
    ],
)
def test_a_wrong_file_is_not(validator, blank, section, keys):
    assert not validator.is_valid(changed(blank, section, **keys))


@pytest.mark.parametrize("section", ["site", "gas", "jet", "setting", "damper", "head", "panel", "chamber"])
def test_a_section_that_others_need_is_missed(validator, blank, section):
    burner = {key: value for key, value in blank.items() if key != section}
    burner.setdefault("lighting", {"lights_at": "5 psi"})
    assert not validator.is_valid(burner)
    # The reader refuses the same, so this is no rule of the schema alone.
    jetwright = pytest.importorskip("jetwright")
    with pytest.raises(ValueError):
        jetwright.sheet(burner)
