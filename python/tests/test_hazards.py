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
          "heavy_gas", "altitude", "gauge_lies"}  # fmt: skip


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
