"""The jet over arrays: shapes, threads, bad input, pickles."""

import concurrent.futures
import importlib.util
import pickle
from types import SimpleNamespace

import hypothesis
import jetwright as jw
import numpy as np
import pandas as pd
import pytest
from hypothesis import strategies as st
from jetwright import _flow, _native
from jetwright._flow import FIELDS

SITE = jw.Site(altitude=1600.0, air_temperature=293.15)


def flow(**given):
    return jw.flow(**{"gas": "propane", "gauge_pressure": 5 * jw.psi, "bore": 1.8e-3, "site": SITE} | given)


def test_scalars_give_scalars_and_arrays_their_broadcast_shape():
    assert type(flow().mass_flow) is float and type(flow().choked) is bool
    gauge = np.linspace(1, 20, 7)[:, None] * jw.psi
    bore = np.linspace(1e-3, 2e-3, 5)
    result = flow(gauge_pressure=gauge, bore=bore)
    assert result.heat_net.shape == (7, 5) and result.choked.dtype == bool
    for row in range(7):
        for column in range(5):
            one = flow(gauge_pressure=float(gauge[row, 0]), bore=float(bore[column]))
            assert all(getattr(result, name)[row, column] == getattr(one, name) for name in FIELDS)


def test_every_numeric_argument_broadcasts():
    pair = {
        "gauge_pressure": [2e4, 4e4],
        "bore": [1e-3, 2e-3],
        "bore_length": [5e-3, 9e-3],
        "roughness": [1e-6, 9e-6],
        "approach_diameter": [6e-3, 9e-3],
        "back_pressure": [0.0, 500.0],
        "gas_temperature": [280.0, 300.0],
        "discharge_coefficient": [0.7, 0.8],
        "jets": [1, 2],
    }
    for name, values in pair.items():
        both = flow(**{name: values}).mass_flow
        each = [flow(**{name: float(value)}).mass_flow for value in values]
        assert both.tolist() == each, name
    rounded = flow(edge="rounded", edge_radius=[1e-4, 2e-4]).mass_flow
    assert rounded[1] > rounded[0]
    chamfered = flow(edge="chamfered", chamfer_depth=[1e-4, 2e-4], chamfer_angle=1.5).mass_flow
    assert chamfered[1] > chamfered[0]
    high = jw.flow(gas="propane", gauge_pressure=3e4, bore=1e-3, site=jw.Site(altitude=[0.0, 2000.0]))
    assert high.mass_flow[1] < high.mass_flow[0]


def test_contiguous_input_is_not_copied():
    from jetwright._arrays import operands

    array = np.linspace(1e4, 2e4, 12).reshape(3, 4)
    prepared, shape = operands({"gauge_pressure": array, "bore": 1e-3})
    assert shape == (3, 4) and np.shares_memory(prepared[0][0], array)


def test_odd_layouts_and_types_give_the_same_numbers():
    plain = np.linspace(1e4, 9e4, 6)
    expected = flow(gauge_pressure=plain).mass_flow
    spread = np.zeros(12)
    spread[::2] = plain
    for same in (spread[::2], plain.astype(">f8"), plain.tolist(), plain[::-1][::-1]):
        assert flow(gauge_pressure=same).mass_flow.tolist() == expected.tolist()
    assert flow(gauge_pressure=np.asfortranarray(plain.reshape(2, 3))).mass_flow.ravel().tolist() == expected.tolist()
    assert flow(gauge_pressure=np.array([10_000, 20_000])).mass_flow[0] == flow(gauge_pressure=1e4).mass_flow
    masked = flow(gauge_pressure=np.ma.masked_less(plain, 2e4), invalid="nan").mass_flow
    assert np.isnan(masked[0]) and masked[1:].tolist() == expected[1:].tolist()
    single = flow(gauge_pressure=plain.astype(np.float32)).mass_flow
    assert np.allclose(single, expected, rtol=1e-6)


@pytest.mark.parametrize("shape", [(0,), (0, 3), (2, 0)])
def test_empty_arrays_give_empty_results(shape):
    result = flow(gauge_pressure=np.empty(shape))
    assert result.mass_flow.shape == shape and result.to_pandas().shape == (0, len(FIELDS))


def test_the_result_does_not_depend_on_threads():
    random = np.random.default_rng(1)
    gauge = random.uniform(0, 4e5, 20_001)
    bore = random.uniform(3e-4, 1e-2, 20_001)
    whole = flow(gauge_pressure=gauge, bore=bore)
    parts = [flow(gauge_pressure=gauge[start::7], bore=bore[start::7]) for start in range(7)]
    with concurrent.futures.ThreadPoolExecutor(4) as pool:
        again = list(pool.map(lambda _: flow(gauge_pressure=gauge, bore=bore).mass_flow, range(4)))
    for start, part in enumerate(parts):
        for name in FIELDS:
            assert np.array_equal(getattr(whole, name)[start::7], getattr(part, name)), name
    assert all(np.array_equal(whole.mass_flow, other) for other in again)


BAD = [
    ({"gauge_pressure": "5 psi"}, TypeError, "gauge_pressure"),
    ({"gauge_pressure": [1 + 2j]}, TypeError, "gauge_pressure"),
    ({"gauge_pressure": [[1.0], [1.0, 2.0]]}, ValueError, ""),
    ({"gauge_pressure": [True]}, TypeError, "gauge_pressure"),
    ({"gauge_pressure": None}, TypeError, "gauge_pressure"),
    ({"gauge_pressure": [1e4, -1.0]}, jw.RangeError, "gauge_pressure"),
    ({"gauge_pressure": -1.0}, jw.RangeError, "gauge_pressure"),
    ({"gauge_pressure": float("nan")}, jw.RangeError, "gauge_pressure"),
    ({"gauge_pressure": [1e4, np.inf]}, jw.RangeError, "gauge_pressure"),
    ({"bore": 0.0}, jw.RangeError, "bore"),
    ({"bore_length": [0.01, 1.0]}, jw.RangeError, "bore_length"),
    ({"gas_temperature": 20.0}, jw.RangeError, "gas_temperature"),
    ({"jets": 0}, jw.RangeError, "jets"),
    ({"discharge_coefficient": 9.0}, jw.RangeError, "discharge_coefficient"),
    ({"discharge_coefficient": 0.0}, jw.RangeError, "discharge_coefficient"),
    ({"discharge_coefficient": [0.7, 0.0]}, jw.RangeError, "discharge_coefficient"),
    ({"approach_diameter": [6e-3, 0.0]}, jw.RangeError, "approach_diameter"),
    ({"gauge_pressure": 440e3, "gas": "butane", "gas_temperature": 245.0}, jw.RangeError, "gauge_pressure"),
    ({"back_pressure": 1e5}, jw.RangeError, "back_pressure"),
    ({"gauge_pressure": np.ones(3), "bore": np.ones(2)}, ValueError, "broadcast"),
    ({"edge": "blunt"}, ValueError, "edge"),
    ({"edge": 3}, ValueError, "edge"),
    ({"edge_radius": 1e-4}, ValueError, "edge_radius"),
    ({"edge": "rounded"}, ValueError, "edge_radius"),
    ({"gas": "town gas"}, ValueError, "accepted"),
    ({"gas": {"C3H8": 0.5}}, ValueError, "add to 0.5"),
    ({"gas": 3}, TypeError, "gas"),
    ({"invalid": "ignore", "gauge_pressure": [1e4]}, ValueError, "invalid"),
    ({"invalid": "ignore", "gauge_pressure": -1.0}, ValueError, "invalid"),
]


@pytest.mark.parametrize(("given", "error", "part"), BAD)
def test_bad_input_is_named(given, error, part):
    with pytest.raises(error) as caught:
        flow(**given)
    assert part in str(caught.value)


def test_an_answer_beyond_memory_is_an_error_of_python():
    with pytest.raises(MemoryError):
        flow(gauge_pressure=np.full((2_000_000, 1), 1e4), bore=np.full((1, 2_000_000), 1e-3))


def test_an_inverse_out_of_reach_names_the_heat():
    with pytest.raises(jw.RangeError) as caught:
        jw.gauge_for_heat(gas="propane", bore=1e-3, heat_net=[1e4, 1e6])
    assert (caught.value.argument, caught.value.value, caught.value.index) == ("heat", 1e6, (1,))


def test_a_range_error_says_which_element():
    gauge = np.full((3, 4), 1e4)
    gauge[2, 1] = -7.0
    with pytest.raises(jw.RangeError) as caught:
        flow(gauge_pressure=gauge)
    error = caught.value
    assert (error.argument, error.value, error.index) == ("gauge_pressure", -7.0, (2, 1))
    marked = flow(gauge_pressure=gauge, invalid="nan")
    assert np.isnan(marked.mass_flow[2, 1]) and np.isfinite(np.delete(marked.mass_flow.ravel(), 9)).all()
    copy = pickle.loads(pickle.dumps(error))
    assert (str(copy), copy.index) == (str(error), error.index)


def test_objects_pickle_and_do_not_change():
    blower = jw.Blower([(0.0, 800.0), (0.02, 600.0), (0.03, 0.0)]).scaled(density=1.0, speed_ratio=1.1)
    head = jw.Head(ports=40, port_diameter=4e-3, port_length=25e-3, open_fraction=0.3)
    for thing in (SITE, jw.Gas("hd-5"), blower, head, flow(gauge_pressure=[1e4, 2e4])):
        assert repr(pickle.loads(pickle.dumps(thing))) == repr(thing)
    assert pickle.loads(pickle.dumps(blower)).static_pressure(0.01) == blower.static_pressure(0.01)
    with pytest.raises(AttributeError):
        SITE.humidity = 1.0
    with pytest.raises(AttributeError):
        jw.Gas("propane").molar_mass = 1.0


def test_results_read_well():
    result = flow(gauge_pressure=[1e4, 2e4])
    assert "kg/s" in repr(result) and "<table>" in result._repr_html_()
    assert list(result.to_pandas().columns) == list(FIELDS)
    assert "C3H8" in jw.Gas("propane")._repr_html_()


@hypothesis.settings(max_examples=200, deadline=None)
@hypothesis.given(
    gauge=st.floats(0.0, 414e3), bore=st.floats(3e-4, 1e-2), length=st.floats(0.0, 60e-3),
    kelvin=st.floats(243.15, 323.15), altitude=st.floats(0.0, 3000.0), gas=st.sampled_from(["propane", "methane", "hd-5"]),
)  # fmt: skip
def test_laws_over_the_accepted_range(gauge, bore, length, kelvin, altitude, gas):
    site = jw.Site(altitude=altitude)
    given = {"gas": gas, "bore_length": length, "gas_temperature": kelvin, "site": site, "invalid": "nan"}
    result = jw.flow(gauge_pressure=[gauge, gauge * 1.01], bore=bore, **given)
    wider = jw.flow(gauge_pressure=gauge, bore=bore * 1.01, **given).mass_flow
    low, high = result.mass_flow
    if np.isfinite(low):
        assert low >= 0.0 and (not np.isfinite(high) or high >= low) and (not np.isfinite(wider) or wider >= low)
        heat = jw.Gas(gas).heating_value_net * low
        assert abs(result.heat_net[0] - heat) <= 1e-12 * heat


def test_round_trips():
    gauge = jw.gauge_for_heat(gas="propane", bore=1.8e-3, heat_gross=[20e3, 30e3], site=SITE)
    assert np.allclose(flow(gauge_pressure=gauge).heat_gross, [20e3, 30e3], rtol=1e-9)
    bore = jw.bore_for_heat(gas="propane", gauge_pressure=5 * jw.psi, heat_net=[20e3, 30e3], site=SITE)
    assert np.allclose(flow(bore=bore).heat_net, [20e3, 30e3], rtol=1e-9)
    with pytest.raises(ValueError, match="one of the two"):
        jw.gauge_for_heat(gas="propane", bore=1e-3)
    bore, nearest = jw.size_jet(gas="propane", gauge_pressure=5 * jw.psi, heat_net=26e3, site=SITE)
    assert nearest[0].bore <= bore < nearest[1].bore
    gross = flow(bore=bore).heat_gross
    assert jw.size_jet(gas="propane", gauge_pressure=5 * jw.psi, heat_gross=gross, site=SITE)[0] == pytest.approx(bore, rel=1e-9)
    assert flow(gauge_pressure=nearest[0].exact_gauge_pressure, bore=nearest[0].bore).heat_net == pytest.approx(26e3)


def test_sites():
    assert jw.Site(sea_level_pressure=101325.0, altitude=1600.0).ambient_pressure == pytest.approx(
        jw.Site(altitude=1600.0).ambient_pressure
    )
    assert jw.Site(station_pressure=[9e4, 8e4]).ambient_pressure.tolist() == [9e4, 8e4]
    for bad in ({"sea_level_pressure": 1e5}, {"station_pressure": 9e4, "altitude": 0.0}):
        with pytest.raises(ValueError, match="altitude"):
            jw.Site(**bad)
    with pytest.raises(jw.RangeError) as caught:
        jw.Site(altitude=[0.0, 1e5])
    assert caught.value.index == (1,)


def test_sizes_over_arrays_are_those_of_scalars():
    heat = np.array([[12e3, 26e3], [40e3, 5e6]])
    gauge = np.array([3.0, 8.0]) * jw.psi
    bore, (below, above) = jw.size_jet(gas="propane", gauge_pressure=gauge, heat_net=heat, site=SITE, invalid="nan")
    assert bore.shape == below.name.shape == above.heat_net.shape == (2, 2)
    for row, column in ((0, 0), (0, 1), (1, 0)):
        alone, sizes = jw.size_jet(gas="propane", gauge_pressure=float(gauge[column]), heat_net=float(heat[row, column]), site=SITE)
        assert bore[row, column] == alone and [size.name for size in sizes] == [below.name[row, column], above.name[row, column]]
        for size, many in zip(sizes, (below, above)):
            assert [value[row, column] for value in many[1:]] == list(size[1:])
    assert np.isnan(bore[1, 1]) and below.name[1, 1] == above.name[1, 1] == "" and np.isnan(above.exact_gauge_pressure[1, 1])
    with pytest.raises(jw.RangeError) as caught:
        jw.size_jet(gas="propane", gauge_pressure=gauge, heat_net=heat, site=SITE)
    assert caught.value.index == (1, 1)
    tiny = jw.flow(gas="propane", gauge_pressure=1e4, bore=0.3e-3).heat_net  # under the list's smallest
    smallest, sizes = jw.size_jet(gas="propane", gauge_pressure=1e4, heat_net=tiny)
    assert len(sizes) == 1 and sizes[0].bore > smallest
    series = jw.size_jet(gas="propane", gauge_pressure=3e4, heat_net=pd.Series([2e4, 3e4], index=["a", "b"]))[1][0]
    assert series.name["b"] == jw.size_jet(gas="propane", gauge_pressure=3e4, heat_net=3e4)[1][0].name


def test_sites_are_equal_by_their_values():
    assert jw.Site(altitude=1600) == jw.Site(altitude=np.float64(1600.0)) and hash(jw.Site(altitude=1600)) == hash(jw.Site(altitude=1600.0))
    many = np.linspace(0.0, 3000.0, 5000)
    other = many.copy()
    other[2500] += 1e-9  # a repr shortens both to the same text
    assert jw.Site(altitude=many) == jw.Site(altitude=list(many)) != jw.Site(altitude=other)
    assert jw.Site(altitude=0.0) == jw.Site() != jw.Site(station_pressure=101325.0)
    assert jw.Site() != "sea level"


def _from(native):
    """The module of the jet, made anew over a native module."""
    spec = importlib.util.spec_from_file_location("jetwright._flow_anew", _flow.__file__)
    module = importlib.util.module_from_spec(spec)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(jw, "_native", native)
        spec.loader.exec_module(module)
    return module


def test_the_order_of_the_compiled_loop_is_followed():
    def turned(native_call):
        def call(gas, code, *rest):
            *flags, operands, shape = rest
            columns, told = native_call(gas, code, *flags, operands[::-1], shape)
            return columns[::-1], told

        return call

    # A loop that takes its inputs, and gives its results, from the last to the first.
    native = SimpleNamespace(**vars(_native))
    native.jet_inputs = lambda: _native.jet_inputs()[::-1]
    native.jet_results = lambda: _native.jet_results()[::-1]
    native.flow_one = lambda gas, code, inputs: _native.flow_one(gas, code, inputs[::-1])[::-1]
    native.flow, native.for_heat = turned(_native.flow), turned(_native.for_heat)
    anew = _from(native)
    assert anew.FIELDS == FIELDS[::-1]
    jet = {"gas": "propane", "site": SITE, "edge": "chamfered", "chamfer_depth": 2e-4, "chamfer_angle": 1.5}
    for gauge in (5 * jw.psi, [2e4, 3e4]):
        here, there = (module.flow(bore=1.8e-3, gauge_pressure=gauge, **jet) for module in (_flow, anew))
        assert all(np.array_equal(getattr(here, name), getattr(there, name)) for name in FIELDS)
    for module in (_flow, anew):
        back = module.gauge_for_heat(bore=1.8e-3, heat_net=26e3, **jet)
        assert module.bore_for_heat(gauge_pressure=back, heat_net=26e3, **jet) == pytest.approx(1.8e-3)
    with pytest.raises(jw.RangeError) as refused:
        anew.flow(bore=1.8e-3, gauge_pressure=3e4, roughness=1.0, gas="propane")
    assert refused.value.argument == "roughness"


def test_an_input_the_loop_calls_otherwise_is_refused():
    native = SimpleNamespace(**vars(_native))
    native.jet_inputs = lambda: ["mouth", *_native.jet_inputs()[1:]]
    with pytest.raises(ValueError, match="tuple"):
        _from(native)


def test_results_are_declared_by_the_names_of_the_loop():
    declared = [name for name in jw.FlowResult.__annotations__ if not name.startswith("_")]
    assert sorted(declared) == sorted(FIELDS)
