"""The sheet and the burner in Python are the command's."""

import json
import os
import pathlib
import pickle
import subprocess
import tomllib

import html5lib
import jetwright as jw
import numpy as np
import pytest

EXAMPLES = pathlib.Path(__file__).parents[2] / "examples"
COMMAND = os.environ.get("JETWRIGHT_COMMAND")
BELLS = EXAMPLES / "bell-foundry.toml"


@pytest.mark.parametrize("name", ["bell-foundry", "bell-foundry-weighed", "blower-too-small", "natural-gas"])
def test_the_sheet_is_the_commands_to_the_last_digit(name):
    assert COMMAND, "JETWRIGHT_COMMAND names the built command; tests/all.sh sets it"
    path = str(EXAMPLES / f"{name}.toml")
    sheet = jw.sheet(path)
    answer = subprocess.run([COMMAND, "sheet", path, "--format", "json"], capture_output=True, text=True, check=True)
    assert dict(sheet) == json.loads(answer.stdout)
    for units in ("metric", "inch"):
        page = subprocess.run([COMMAND, "sheet", path, "--units", units], capture_output=True, text=True, check=True)
        assert sheet.text(units) == page.stdout
        options = ["--units", units, "--format", "html"]
        page = subprocess.run([COMMAND, "sheet", path, *options], capture_output=True, text=True, check=True)
        assert sheet.to_html(units) == page.stdout


def test_flow_is_the_commands_to_the_last_digit():
    arguments = "flow --gas propane --bore 1.8mm --bore-length 12mm --altitude 1600m --air-temperature 20C --format json"
    gauges = ["5 psi", "0.3 bar", "12 psi"]
    options = [part for gauge in gauges for part in ("--gauge", gauge)]
    answer = subprocess.run([COMMAND, *arguments.split(), *options], capture_output=True, text=True, check=True)
    rows = json.loads(answer.stdout)["rows"]
    result = jw.flow(
        gas="propane", gauge_pressure=[row["gauge_pressure_pa"] for row in rows], bore=1.8 * jw.mm, bore_length=12 * jw.mm,
        site=jw.Site(altitude=1600, air_temperature=293.15),
    )  # fmt: skip
    for index, row in enumerate(rows):
        assert result.mass_flow[index] == row["mass_flow_kg_per_s"]
        assert result.heat_net[index] == row["heat_net_w"]
        assert result.discharge_coefficient[index] == row["discharge_coefficient"]


def test_a_mapping_gives_the_same_sheet():
    mapping = tomllib.loads(BELLS.read_text())
    assert dict(jw.sheet(mapping)) == dict(jw.sheet(BELLS))
    assert pickle.loads(pickle.dumps(jw.sheet(mapping))) == jw.sheet(mapping)


def test_the_sheet_reads_well():
    sheet = jw.sheet(BELLS)
    assert repr(sheet) == sheet.text("metric") and "<h2>WARNINGS</h2>" in sheet._repr_html_()
    assert list(sheet.to_pandas().index) == ["light", "melt", "soft", "hold", "low"]
    with pytest.raises(ValueError, match="units"):
        sheet.text("furlongs")


BURNERS = [path for path in sorted(EXAMPLES.glob("*.toml")) if "setting" in tomllib.loads(path.read_text())]


@pytest.mark.parametrize("path", BURNERS, ids=lambda path: path.stem)
def test_html_is_what_a_strict_parser_accepts(path):
    # html5lib: the parsing algorithm of the HTML standard; strict raises at the first parse error.
    for options in ([], ["--card"], ["--units", "inch"]):
        command = [COMMAND, "sheet", str(path), "--format", "html", *options]
        page = subprocess.run(command, capture_output=True, text=True, check=True).stdout
        tree = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(page)
        assert tree.findtext(".//h1") == tomllib.loads(path.read_text())["name"]
        for table in tree.iter("table"):
            titles = table.findall("thead/tr/th")
            assert titles and all(len(row) == len(titles) for row in table.iterfind("tbody/tr"))


def test_the_card_is_that_of_the_command():
    command = [COMMAND, "sheet", str(BELLS), "--card", "--format", "html", "--units", "inch"]
    page = subprocess.run(command, capture_output=True, text=True, check=True).stdout
    assert jw.sheet(BELLS).card("inch") == page


def test_a_strict_parser_refuses_what_is_not_closed():
    page = jw.sheet(BELLS).to_html().replace("</table>", "", 1)
    with pytest.raises(html5lib.html5parser.ParseError):
        html5lib.HTMLParser(strict=True).parse(page)


def test_bad_files_get_the_commands_message(tmp_path):
    bad = tmp_path / "bad.toml"
    bad.write_text(BELLS.read_text().replace('"3.8 psi"', '"3.8"'))
    with pytest.raises(ValueError, match=r"bad.toml, line \d+, setting\[1\].gauge: given \"3.8\", a number without a unit"):
        jw.sheet(bad)
    with pytest.raises(ValueError, match="no burner to run"):
        mapping = tomllib.loads(BELLS.read_text())
        without = {key: mapping[key] for key in ("name", "site", "gas", "jet")}
        jw.Burner(without | {"setting": mapping["setting"][:1]})
    with pytest.raises(ValueError, match=r"^the burner, fire.air_ratio: given nan, not a plain number"):
        jw.sheet(tomllib.loads(BELLS.read_text()) | {"fire": {"air_ratio": float("nan")}})
    with pytest.raises(OSError, match="missing"):
        jw.sheet(tmp_path / "missing.toml")


@pytest.mark.parametrize(
    ("section", "key", "value", "told"),
    [
        ("setting", "gauge", 7, r"setting\[1\].gauge: given 7, a number without a unit"),
        ("setting", "damper", True, r"setting\[1\].damper: given True, not a number"),
        ("jet", "boor", "1.8 mm", r"jet.boor: not a key known here"),
        ("jet", "measured_gauge", "5 psi", r"jet.measured_gauge: given \"5 psi\", it needs measured_coefficient"),
        ("jet", "edge", None, r"jet.edge: given nothing, accepted are \"sharp\""),
        ("site", "altitude", ["1600 m"], r"site.altitude: given \['1600 m'\], not a number with a unit"),
    ],
)
def test_a_mapping_is_refused_by_its_keys_and_never_by_a_line(section, key, value, told):
    mapping = tomllib.loads(BELLS.read_text())
    held = mapping[section][0] if isinstance(mapping[section], list) else mapping[section]
    held[key] = value
    with pytest.raises(ValueError, match="^the burner, " + told) as caught:
        jw.sheet(mapping)
    assert "line" not in str(caught.value)


def test_a_mapping_is_the_file_and_a_burner_of_it_is_pickled():
    mapping = tomllib.loads(BELLS.read_text())
    assert dict(jw.sheet(mapping)) == dict(jw.sheet(BELLS))
    burner = jw.Burner(mapping)
    mapping["head"]["ports"] = 1
    again = pickle.loads(pickle.dumps(burner))
    assert again.run(gauge_pressure=2e4, damper=0.5) == jw.Burner(BELLS).run(gauge_pressure=2e4, damper=0.5)


def test_the_burner_over_arrays_is_the_sheets():
    sheet, burner = jw.sheet(BELLS), jw.Burner(BELLS)
    rows = [row for row in sheet["settings"] if row["name"] in ("melt", "hold")]
    run = burner.run(gauge_pressure=[row["gauge_pressure_pa"] for row in rows], air_ratio=1.05)
    for index, row in enumerate(rows):
        assert run.damper[index] == row["damper_opening"]
        assert run.gas[index] == row["mass_flow_kg_per_s"]
    swept = burner.run(gauge_pressure=np.linspace(1, 20, 20) * jw.psi, air_ratio=1.05, invalid="nan")
    assert np.isnan(swept.damper[-1]) and np.isfinite(swept.damper[3])
    with pytest.raises(jw.RangeError):
        burner.run(gauge_pressure=20 * jw.psi, air_ratio=1.05)
    with pytest.raises(ValueError, match="one of the two"):
        burner.run(gauge_pressure=1e4)
    assert pickle.loads(pickle.dumps(burner)).run(gauge_pressure=2e4, damper=0.5) == burner.run(
        gauge_pressure=2e4, damper=0.5
    )
    assert len(run.to_pandas()) == 2


def test_more_head_resistance_lowers_the_air():
    mapping = tomllib.loads(BELLS.read_text())
    air = []
    for ports in (42, 30, 20):
        mapping["head"]["ports"] = ports
        air.append(jw.Burner(mapping).run(gauge_pressure=4e4, damper=0.4).air)
    assert air[0] > air[1] > air[2]


def test_air_needed_and_air_ratio_are_inverse():
    air = jw.air_needed(gas="propane", mass_flow=[1e-3, 2e-3], air_ratio=1.2)
    assert np.allclose(jw.air_ratio(gas="propane", mass_flow=[1e-3, 2e-3], air_flow=air), 1.2)
    assert type(jw.air_needed(gas="propane", mass_flow=1e-3)) is float
    for given in ({"mass_flow": [1e-3, -1.0]}, {"mass_flow": [1e-3, np.nan]}, {"mass_flow": 1e-3, "air_ratio": [1, 9]}):
        with pytest.raises(jw.RangeError) as caught:
            jw.air_needed(gas="propane", **given)
        assert caught.value.index == (1,) and caught.value.argument in given
        marked = jw.air_needed(gas="propane", **given, invalid="nan")
        assert np.isfinite(marked[0]) and np.isnan(marked[1])
    with pytest.raises(jw.RangeError, match="mass_flow"):
        jw.air_ratio(gas="propane", mass_flow=0.0, air_flow=1e-2)
    high = jw.Site(altitude=[0.0, 2000.0], humidity=0.5)
    assert jw.air_needed(gas="propane", mass_flow=1e-3, site=high).shape == (2,)


def test_head_and_blower_refuse_bad_numbers():
    with pytest.raises(ValueError, match="port"):
        jw.Head(ports=40, port_diameter=9.0, port_length=0.01)
    with pytest.raises(ValueError, match="give ports"):
        jw.Head(port_length=0.01)
    with pytest.raises(ValueError, match="points"):
        jw.Blower([(0.0, 800.0)])
    head = jw.Head(slot_width=3e-3, slot_length=0.15, port_length=0.03)
    for name in ("mass_flow", "density", "viscosity"):
        given = {"mass_flow": 5e-3, "density": 1.0, "viscosity": 1.8e-5} | {name: [-1.0]}
        with pytest.raises(jw.RangeError) as caught:
            head.pressure(**given)
        assert (caught.value.argument, caught.value.value, caught.value.index) == (name, -1.0, (0,))
    with pytest.raises(jw.RangeError, match="density"):
        head.pressure(mass_flow=5e-3, density=0.0, viscosity=1.8e-5)
    with pytest.raises(jw.RangeError, match="chamber"):
        jw.Burner(BELLS).run(gauge_pressure=2e4, damper=0.5, chamber_temperature=0.0)
    pressure = head.pressure(mass_flow=[5e-3, 10e-3], density=1.0, viscosity=1.8e-5)
    assert 3.5 < pressure[1] / pressure[0] < 4.2
    blower = jw.Blower.from_ends(800.0, 0.03)
    assert blower.scaled(density=0.6).static_pressure(0.01) == pytest.approx(0.5 * blower.static_pressure(0.01))


def test_lighting_is_the_sheets():
    sheet, burner = jw.sheet(BELLS), jw.Burner(BELLS)
    settings = sheet.to_pandas()
    found = burner.lighting(gauge_pressure=settings["gauge_pressure_pa"], damper=settings["damper_opening"])
    assert list(found.lights) == list(settings["lights"])
    assert list(found.lights)[-2:] == ["cold", "glowing"] and found.goes_out[0] == "lights"
    # The sheet takes the pressure at the jet of the burner at work, this of the cold one.
    np.testing.assert_allclose(found.air_ratio, settings["air_ratio_cold"], rtol=1e-3)
    left = sheet["lighting"]["damper_left"]
    low = burner.lighting_range(damper=left)
    assert float(low.cold_low) == sheet["lighting"]["damper_left_range"]["cold_low_pa"]
    assert burner.lighting(gauge_pressure=0.8 * jw.psi, air_ratio=1.05).lights == "cold"
    # More air moves both ends up; the air turned down with the gas lights lower.
    moved = burner.lighting_range(damper=[0.35, 0.4])
    assert (np.diff(moved.cold_low) > 0).all() and (np.diff(moved.glowing_low) > 0).all()
    assert burner.lighting_range(air_ratio=1.05).cold_low < 0.5 * low.cold_low
    with pytest.raises(jw.RangeError, match="damper"):
        burner.lighting(gauge_pressure=1e4, damper=0.01)
    marked = burner.lighting(gauge_pressure=[1e4, np.nan], damper=0.4, invalid="nan")
    assert list(marked.lights) == ["glowing", ""]
    with pytest.raises(ValueError, match="one of the two"):
        burner.lighting_range()
