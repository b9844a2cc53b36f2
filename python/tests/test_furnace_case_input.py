"""What the comparison interface of the coupled furnace refuses, and how it says so."""

import copy
import json
import math
import threading

import jetwright as jw
import numpy as np
import pytest

CASE = {
    "gas": {"kind": "linear", "flame_temperature": 2200.0, "air_cp": 1100.0},
    "radiation": {"gray_kappa": 0.5},
    "gas_zones": 1,
    "h_fired": 20.0,
    "h_air": 20.0,
    "h_off": 8.0,
    "volume": 0.028,
    "walls": [{"area": 0.5, "emissivity": 0.8, "layers": [{"rho_k_c": [800.0, 0.25, 1000.0], "thickness": 0.1}]}],
    "openings": [{"area": 0.006, "passage": 0.6}],
    "stages": [{"do": "fire", "fire": 20e3, "for": 60.0}],
}
LUMP = {"kind": "lump", "mass": 10.0, "c": 600.0, "area": 0.1, "emissivity": 0.8, "volume": 0.001}
PUT = {"do": "put", "content": LUMP}


def changed(path, value):
    case = copy.deepcopy(CASE)
    place = case
    for key in path[:-1]:
        place = place[key]
    if value is KeyError:
        del place[path[-1]]
    else:
        place[path[-1]] = value
    return case


# Path, what is put there, and what the message says besides.
BAD = [
    (("fuel",), 1, ["fuel", "unknown", "gas"]),
    (("volume",), KeyError, ["volume", "missing", "number"]),
    (("volume",), -1.0, ["volume", "-1.0", "number from"]),
    (("volume",), math.nan, ["volume", "nan", "finite"]),
    (("volume",), "big", ["volume", '"big"', "number"]),
    (("gas",), KeyError, ["gas", "missing", "linear"]),
    (("gas", "kind"), "coal", ["gas.kind", '"coal"', "propane"]),
    (("gas", "air_ratio"), 1.05, ["gas.air_ratio", "unknown", "flame_temperature"]),
    (("gas",), {"kind": "propane", "air_ratio": 9.0, "water_in_air": 0.01}, ["gas.air_ratio", "9", "4"]),
    (("gas",), {"kind": "propane", "air_ratio": 1.1, "water_in_air": 0.5}, ["gas.water_in_air", "0.5", "0.02"]),
    (("gas",), {"kind": "propane", "air_ratio": 1.1}, ["gas.water_in_air", "missing"]),
    (("radiation",), "gray", ["radiation", '"gray"', '"smith"']),
    (("radiation",), "smith", ["radiation", "smith", "gray_kappa"]),
    (("gas_zones",), 4, ["gas_zones", "4", "1 to 3"]),
    (("gas_zones",), 1.5, ["gas_zones", "1.5", "whole"]),
    (("walls",), [], ["walls", "list of 0", "1 to 4"]),
    (("walls",), CASE["walls"] * 5, ["walls", "list of 5", "1 to 4"]),
    (("walls", 0, "radius"), 0.1, ["walls[0]", "area and radius", "one of"]),
    (("walls", 0, "layers"), CASE["walls"][0]["layers"] * 7, ["walls[0].layers", "list of 7", "1 to"]),
    (("walls", 0, "layers", 0), {"material": "cheese", "thickness": 0.1}, ["layers[0].material", "cheese", "fiber"]),
    (("walls", 0, "layers", 0, "thickness"), 0.0, ["walls[0].layers[0].thickness", "0"]),
    (("walls", 0, "layers", 0, "rho_k_c"), [800.0, 0.25], ["rho_k_c", "list of 2", "3"]),
    (("openings", 0, "area"), 0.6, ["openings[0].area", "0.6", "walls"]),
    (("openings", 0, "z2"), 0.1, ["openings[0].z2", "z1"]),
    (("openings", 0), {"area": 0.006, "passage": 0.6, "z1": 0.2, "z2": 0.1}, ["openings[0].z2", "0.1", "0.2"]),
    (("leaks",), [{"area": 1e-4, "z1": 0.0, "z2": 0.1}], ["leaks[0].z2", "unknown", "z1"]),
    (("stages",), [], ["stages", "list of 0", "1 to"]),
    (("stages",), CASE["stages"] * 1001, ["stages", "list of 1001", "1000"]),
    (("stages", 0, "do"), "burn", ["stages[0].do", '"burn"', '"fire"']),
    (("stages", 0, "for"), KeyError, ["stages[0]", "for", "until_core_rises_to"]),
    (("stages", 0, "for"), 5e5, ["stages[0].for", "500000", "400000"]),
    (("stages", 0, "until_chamber_rises_to"), 500.0, ["stages[0]", "for and until_chamber_rises_to", "one of"]),
    (("stages", 0, "until_core_rises_to"), 500.0, ["stages[0]", "one of"]),
    (("stages", 0), {"do": "fire", "fire": 1e4, "until_core_rises_to": 500.0}, ["until_core_rises_to", "stands"]),
    (("stages", 0, "draft"), True, ["stages[0].draft", "unknown", "leak"]),
    (("stages", 0), {"do": "off", "draft": 1, "for": 1.0}, ["stages[0].draft", "1", "true or false"]),
    (("stages",), [{"do": "take"}], ["stages[0].do", "take", "put"]),
    (("stages",), [PUT, {"do": "take"}, {"do": "take"}], ["stages[2].do", "take", "put"]),
    (("stages",), [PUT] * 4, ["stages[3].content", "3 contents"]),
    (("stages",), [{"do": "put", "content": LUMP | {"volume": 0.028}}], ["stages[0].content", "0.028"]),
    (("stages",), [{"do": "put", "content": LUMP | {"volume": 0.02}}] * 2, ["stages[1].content", "chamber"]),
    (("stages",), [{"do": "put", "content": LUMP | {"kind": "ball"}}], ["stages[0].content.kind", '"ball"', '"bar"']),
    (("stages",), [{"do": "put", "content": LUMP | {"wall": 0.1}}], ["stages[0].content.wall", "unknown", "mass"]),
    (("stages",), [{"do": "put"}], ["stages[0].content", "missing"]),
]


@pytest.mark.parametrize("path, value, says", BAD, ids=[f"{path}-{index}" for index, (path, _, _) in enumerate(BAD)])
def test_bad_input_names_key_given_and_accepted(path, value, says):
    with pytest.raises(ValueError) as told:
        jw.furnace_case(changed(path, value))
    for part in says:
        assert part in str(told.value), str(told.value)


def test_a_case_is_a_mapping():
    with pytest.raises(ValueError, match="mapping"):
        jw.furnace_case([CASE])


def test_json_numpy_and_none_are_taken():
    plain = jw.furnace_case(json.loads(json.dumps(CASE)))
    case = changed(("volume",), np.float64(0.028))
    case["walls"][0]["layers"][0]["rho_k_c"] = np.array([800.0, 0.25, 1000.0])
    case["pressure"] = None
    assert jw.furnace_case(case) == plain
    assert set(plain[0]) == {
        "do", "seconds", "chamber", "gas_exit", "faces", "fire_at_end", "chamber_highest", "chamber_lowest", "core",
        "fuel_heat", "flue_heat", "openings_heat", "shell_heat", "stored",
    }  # fmt: skip
    assert plain[0]["core"] is None and plain[0]["seconds"] == 60.0


def test_a_stage_without_end_stops():
    (row,) = jw.furnace_case(changed(("stages", 0), {"do": "fire", "fire": 2e3, "until_chamber_rises_to": 1900.0}))
    assert row["seconds"] == pytest.approx(4e5) and row["chamber"] < 1900.0


def test_contents_come_and_go_and_put_and_take_have_no_row():
    stages = [PUT, CASE["stages"][0], PUT, CASE["stages"][0], {"do": "take"}, CASE["stages"][0]]
    rows = jw.furnace_case(changed(("stages",), stages))
    assert [len(row["faces"]) for row in rows] == [2, 3, 2]
    assert rows[1]["core"] < rows[2]["core"]


def test_threads_go_beside_each_other():
    answers = []
    threads = [threading.Thread(target=lambda: answers.append(jw.furnace_case(CASE))) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(answers) == 4 and all(answer == answers[0] for answer in answers)
