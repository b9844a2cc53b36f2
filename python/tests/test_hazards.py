"""Results in Python warn of what the command's sheet of the same state warns of. The burners are invented."""

import json
import pathlib
import pickle
import tomllib

import jetwright as jw
import numpy as np

BELLS = pathlib.Path(__file__).parents[2] / "tests" / "fixtures" / "bells.toml"
#: What a gas, a jet and a setting's air tell; the rest asks for lighting, cylinder or furnace.
OF_RUN = {"near_condensing", "no_gas", "slow_jet", "blower_too_small", "blows_back", "left_of_peak", "too_lean",
          "carbon_monoxide", "damper_too_wide", "damper_nearly_shut", "back_pressure", "short_bore", "narrow_approach",
          "heavy_gas", "altitude", "gauge_reads_high"}  # fmt: skip


def test_a_run_warns_as_the_sheet_does():
    file = tomllib.loads(BELLS.read_text())
    burner, met = jw.Burner(file), set()
    for gauge, damper in [(5, 0.5), (5, 0.15), (1, 1.0), (40, 0.3), (0.3, 1.0)]:
        setting = {"name": "melt", "gauge": f"{gauge} psi", "damper": f"{100 * damper} %"}
        sheet = jw.sheet({**file, "setting": [setting]})
        run = burner.run(gauge_pressure=gauge * jw.psi, damper=damper)
        assert set(run.hazards) == {warning["kind"] for warning in sheet.hazards} & OF_RUN, (gauge, damper)
        met |= set(run.hazards)
    assert {"carbon_monoxide", "too_lean", "damper_nearly_shut", "heavy_gas", "altitude"} <= met
    many = burner.run(gauge_pressure=np.array([5.0, 40.0]) * jw.psi, damper=0.3).hazards
    assert many["carbon_monoxide"].tolist() == [False, True] and many["heavy_gas"].all()
    assert list(many) == sorted(many, key=lambda kind: list(dict.fromkeys(jw.SEVERITIES.values())).index(jw.SEVERITIES[kind]))


def test_a_flame_and_a_flow_warn():
    flame = jw.flame(gas="propane", air_ratio=[0.8, 1.05, 2.5])
    assert flame.hazards["carbon_monoxide"].tolist() == [True, False, False]
    assert flame.hazards["too_lean"].tolist() == [False, False, True]
    assert jw.flame(gas="methane", air_ratio=1.05).hazards == {}
    flow = jw.flow(gas="propane", gauge_pressure=[0.0, 34e3], bore=1.8e-3)
    assert flow.hazards["no_gas"].tolist() == [True, False] and flow.hazards["heavy_gas"].all()
    one = jw.flow(gas="propane", gauge_pressure=34e3, bore=1.8e-3, bore_length=2e-3)
    assert one.hazards == {"heavy_gas": True, "short_bore": True}
    assert pickle.loads(pickle.dumps(one)).hazards == one.hazards
    assert pickle.loads(pickle.dumps(flame)).hazards.keys() == flame.hazards.keys()
    assert json.dumps(jw.sheet(str(BELLS)).hazards)


def test_a_cylinder_a_line_a_lining_and_the_lighting_warn():
    """The command's `cylinder` and the sheet warn of these; the castable weighs more than one person may lift."""
    tank = {"gas": "propane", "capacity": 45.0, "diameter": 0.375, "needs": 1 * jw.bar, "left": 6.0}
    drawn = jw.cylinder(draw=[0.5 / 3600, 3 / 3600], duration=4 * jw.hour, **tank)
    assert drawn.hazards["cylinder_short"].tolist() == [False, True] and drawn.hazards["heavy_gas"].all()
    assert "blend_boils_apart" in jw.cylinder(draw=1 / 3600, **{**tank, "gas": "propane-butane"}).hazards
    pipe = {"diameter": 0.027, "length": 15.0, "pressure_drop": 120.0}
    assert jw.low_pressure_line(gas="natural-gas", **pipe).hazards == {}
    assert jw.low_pressure_line(gas="propane", **pipe).hazards == {"heavy_gas": True}
    end = {"kind": "flat", "area": 0.070686, "thickness": 0.075}
    panels = [{"kind": "cylinder", "diameter": 0.3, "length": 0.4, "thickness": 0.075}, end, end]
    assert jw.lining(panels=panels).hazards == {}
    cast = jw.lining(panels=panels, dry_density=1050.0, water=0.25)
    assert cast.hazards == {"wet_lining": True, "heavy_lining": True}, cast.dry_mass
    burner = jw.Burner(tomllib.loads(BELLS.read_text()))
    lit = burner.lighting(gauge_pressure=np.array([1.0, 5.0]) * jw.psi, damper=0.5)
    sheet = jw.sheet(tomllib.loads(BELLS.read_text()))
    of_lighting = {"flashback", "flashback_unknown", "unlit_gas", "goes_out", "too_lean", "heavy_gas"}
    assert set(lit.hazards) <= of_lighting and "heavy_gas" in lit.hazards
    assert {"flashback_unknown"} & set(lit.hazards) == {"flashback_unknown"} & {one["kind"] for one in sheet.hazards}
    assert pickle.loads(pickle.dumps(drawn)).hazards.keys() == drawn.hazards.keys()


def test_every_name_of_an_argument_belongs_to_an_input_of_the_core():
    from jetwright import _arrays, _native

    assert set(_arrays.NAMES) <= set(_native.input_keys())
    assert _arrays._plain_name("GaugePressure") == "gauge_pressure"
