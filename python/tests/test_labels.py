"""pandas, xarray and Dask go through."""

import pathlib

import dask.array as da
import jetwright as jw
import numpy as np
import pandas as pd
import pytest
import xarray as xr
from dask.distributed import Client, LocalCluster

BELLS = pathlib.Path(__file__).parents[2] / "examples" / "bell-foundry.toml"


def flow(**given):
    return jw.flow(**{"gas": "propane", "bore": 1.8e-3} | given)


def test_pandas_keeps_the_index():
    gauge = pd.Series([1e4, 2e4, 3e4], index=["low", "middle", "high"])
    result = flow(gauge_pressure=gauge)
    assert result.mass_flow["middle"] == flow(gauge_pressure=2e4).mass_flow
    assert list(result.to_pandas().index) == ["low", "middle", "high"]
    assert result.choked.dtype == bool
    with pytest.raises(ValueError, match="indexes"):
        flow(gauge_pressure=gauge, bore=pd.Series([1e-3] * 3))


def test_xarray_keeps_coordinates_and_broadcasts_by_name():
    gauge = xr.DataArray([1e4, 2e4, 3e4], coords={"gauge": [1, 2, 3]}, dims="gauge")
    bore = xr.DataArray([1e-3, 2e-3], coords={"drill": ["small", "large"]}, dims="drill")
    heat = flow(gauge_pressure=gauge, bore=bore).heat_net
    assert set(heat.dims) == {"gauge", "drill"} and heat.sel(gauge=2, drill="large") == flow(
        gauge_pressure=2e4, bore=2e-3
    ).heat_net
    lazy = flow(gauge_pressure=gauge.chunk({"gauge": 2}), bore=bore).heat_net
    assert isinstance(lazy.data, da.Array) and np.array_equal(lazy.compute(), heat)


def test_dask_on_two_processes_gives_the_same_numbers():
    gauge = np.linspace(1e3, 3e5, 40_000)
    bore = np.array([[1e-3], [2e-3]])
    plain = flow(gauge_pressure=gauge, bore=bore)
    with LocalCluster(n_workers=2, threads_per_worker=1, dashboard_address=None) as cluster, Client(cluster):
        lazy = flow(gauge_pressure=da.from_array(gauge, chunks=10_000), bore=bore)
        heat, coefficient = da.compute(lazy.heat_net, lazy.discharge_coefficient)
    assert np.array_equal(heat, plain.heat_net) and np.array_equal(coefficient, plain.discharge_coefficient)


def test_inverses_keep_labels_too():
    heat = pd.Series([2e4, 3e4], index=["a", "b"])
    gauge = jw.gauge_for_heat(gas="propane", bore=1.8e-3, heat_net=heat)
    assert gauge["b"] == jw.gauge_for_heat(gas="propane", bore=1.8e-3, heat_net=3e4)


def test_every_array_function_keeps_labels():
    index = ["a", "b"]
    gas, head = jw.Gas("propane"), jw.Head(ports=40, port_diameter=4e-3, port_length=25e-3)
    blower = jw.Blower([(0.0, 800.0), (0.02, 600.0), (0.03, 0.0)])
    burner = jw.Burner(BELLS)
    calls = [
        (lambda x: jw.Site(altitude=x).air_density, [0.0, 1600.0]),
        (lambda x: flow(gauge_pressure=3e4, site=jw.Site(altitude=x)).mass_flow, [0.0, 1600.0]),
        (lambda x: gas.density(pressure=x, temperature=290.0), [1e5, 2e5]),
        (lambda x: gas.expand(pressure=x, ahead=9e4, temperature=290.0).mass_flux, [1e5, 2e5]),
        (lambda x: jw.air_needed(gas=gas, mass_flow=x), [1e-3, 2e-3]),
        (lambda x: jw.air_ratio(gas=gas, mass_flow=x, air_flow=1e-2), [1e-3, 2e-3]),
        (lambda x: jw.flame(gas=gas, air_ratio=x).temperature, [0.9, 1.1]),
        (lambda x: jw.flame(gas=gas, air_ratio=x).flue_loss_sensible, [0.9, 1.1]),
        (lambda x: jw.burning_range(gas=gas, temperature=x).leanest_air_ratio, [300.0, 500.0]),
        (lambda x: jw.burning_range(gas=gas, temperature=x).lights_itself, [300.0, 900.0]),
        (lambda x: jw.burning_velocity(gas=gas, air_ratio=x), [0.9, 1.1]),
        (lambda x: jw.air_ratio_from_oxygen(gas=gas, oxygen=x), [0.01, 0.05]),
        (lambda x: jw.expected_reading(gas=gas, air_ratio=x).oxygen_dry, [1.1, 1.4]),
        (lambda x: jw.gauge_for_heat(gas=gas, bore=1.8e-3, heat_gross=x), [2e4, 3e4]),
        (lambda x: jw.bore_for_heat(gas=gas, gauge_pressure=3e4, heat_gross=x), [2e4, 3e4]),
        (lambda x: blower.static_pressure(x), [0.01, 0.02]),
        (lambda x: blower.operating_point(x).flow, [1e6, 2e6]),
        (lambda x: head.pressure(mass_flow=x, density=1.0, viscosity=1.8e-5), [5e-3, 1e-2]),
        (lambda x: burner.run(gauge_pressure=x, damper=0.5).air, [2e4, 4e4]),
    ]
    for call, values in calls:
        plain = call(np.array(values))
        series = call(pd.Series(values, index=index))
        assert list(series.index) == index and series.tolist() == plain.tolist()
        named = call(xr.DataArray(values, coords={"place": index}, dims="place"))
        assert list(named.place.values) == index and named.values.tolist() == plain.tolist()
        lazy = call(da.from_array(np.array(values), chunks=1))
        assert isinstance(lazy, da.Array) and lazy.compute().tolist() == plain.tolist()
