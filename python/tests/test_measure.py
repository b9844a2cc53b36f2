"""Uncertainty against draws through the same arrays, and weighings that give back their jet."""

import numpy as np
import pytest

import jetwright as jw

SITE = jw.Site(altitude=1600, air_temperature=293.15)
JET = dict(gas="propane", bore=1.5 * jw.mm, bore_length=10 * jw.mm, gas_temperature=283.15, site=SITE)


def test_a_hundred_thousand_draws_spread_as_it_says():
    rng = np.random.default_rng(7)
    count = 100_000
    for psi, width in [(2.0, 0.45), (6.0, 0.30)]:
        sure = jw.flow_uncertainty(**JET, gauge_pressure=psi * jw.psi, edge_rounding=0.0)
        draw = lambda center, expanded: center + 0.5 * expanded * rng.standard_normal(count)
        site = jw.Site(station_pressure=draw(SITE.ambient_pressure, 1500.0), air_temperature=293.15)
        flow = jw.flow(
            gas="propane",
            bore=draw(1.5e-3, 0.01e-3),
            bore_length=10 * jw.mm,
            gauge_pressure=draw(psi * jw.psi, width * jw.psi),
            gas_temperature=draw(283.15, 8.0),
            site=site,
        )
        # What the loop does not know: the model of the hole and the composition.
        heat = flow.heat_net * draw(1.0, 0.05) * draw(1.0, 0.01)
        assert sure.straight
        assert 2 * np.std(heat) == pytest.approx(sure.heat_net_expanded, rel=0.03)
        assert sum(sure.shares.values()) == pytest.approx(1.0)


def test_arrays_broadcast_and_labels_go_through():
    pd = pytest.importorskip("pandas")
    gauge = np.array([1.0, 2.0, 6.0]) * jw.psi
    sure = jw.flow_uncertainty(**JET, gauge_pressure=gauge, bore_expanded=np.array([[0.0], [0.05e-3]]))
    assert sure.heat_net.shape == sure.straight.shape == sure.largest_uncertainty.shape == (2, 3)
    assert (sure.heat_net_expanded[1] > sure.heat_net_expanded[0]).all()
    one = jw.flow_uncertainty(**JET, gauge_pressure=6 * jw.psi, bore_expanded=0.05e-3)
    assert one.heat_net_expanded == pytest.approx(sure.heat_net_expanded[1, 2], rel=1e-12)
    assert isinstance(one.straight, bool) and one.largest_uncertainty == "bore"
    series = pd.Series(gauge, index=["low", "hold", "melt"])
    labeled = jw.flow_uncertainty(**JET, gauge_pressure=series)
    assert labeled.heat_net_expanded["melt"] == pytest.approx(labeled.heat_net_expanded.iloc[2])


def test_what_is_out_of_range_is_refused_or_marked():
    with pytest.raises(ValueError, match="uncertainty as a share"):
        jw.flow_uncertainty(**JET, gauge_pressure=6 * jw.psi, composition_expanded=0.9)
    marked = jw.flow_uncertainty(**JET, gauge_pressure=np.array([6 * jw.psi, 1e9]), invalid="nan")
    assert np.isnan(marked.heat_net_expanded[1]) and marked.heat_net_expanded[0] > 0


def test_a_weighing_gives_back_its_jet_and_makes_later_numbers_surer():
    gauge = 6 * jw.psi
    model = jw.flow(**JET, gauge_pressure=gauge).mass_flow
    minutes = np.array([30.0, 40.0])
    found = jw.weigh(
        **JET, gauge_pressure=gauge, mass_lost=1.03 * model * 60 * minutes, duration=60 * minutes, scale_step=0.005,
        bore_expanded=0.08e-3,
    )  # fmt: skip
    assert found.measured == pytest.approx(1.03, rel=1e-9) and found.trust == "agrees"
    assert 1.0 < found.factor < found.measured and found.expanded < found.measured_expanded
    assert found.effective_bore == pytest.approx(1.5e-3 * 1.03**0.5, rel=2e-3)
    before = jw.flow_uncertainty(**JET, gauge_pressure=gauge, bore_expanded=0.08e-3)
    after = jw.flow_uncertainty(**JET, gauge_pressure=gauge, bore_expanded=0.08e-3, weighing=found)
    other = jw.flow_uncertainty(**JET, gauge_pressure=gauge, weighing=found, same_gauge=False)
    assert after.heat_net == pytest.approx(found.factor * before.heat_net)
    assert after.heat_net_expanded < 0.4 * before.heat_net_expanded < other.heat_net_expanded * 2
    assert after.heat_net_expanded < other.heat_net_expanded


def test_plan_and_comparison():
    gauge = 6 * jw.psi
    plan = jw.plan_weighing(**JET, gauge_pressure=gauge, scale_step=0.02)
    model = jw.flow(**JET, gauge_pressure=gauge).mass_flow
    assert plan.mass == pytest.approx(plan.enough * model)
    weigh = lambda factor: jw.weigh(
        **JET, gauge_pressure=gauge, mass_lost=factor * model * plan.enough, duration=plan.enough, scale_step=0.02
    )
    assert weigh(1.0).expanded == pytest.approx(plan.expanded, rel=1e-3)
    change = jw.compare_weighings(weigh(1.0), weigh(1.08))
    assert change.finding == "worn" and change.change == pytest.approx(0.08) and change.odds < 0.01
    assert jw.compare_weighings(weigh(1.0), weigh(1.005)).finding == "no real difference"


@pytest.mark.parametrize(
    ("lost", "seconds", "words"),
    [(-0.5, 1800, "lost nothing"), (0.02, 60, "too short"), ([0.9, 0.7], 1800, "contradict each other")],
)
def test_readings_that_measure_nothing_say_why(lost, seconds, words):
    with pytest.raises(ValueError, match=words):
        jw.weigh(**JET, gauge_pressure=6 * jw.psi, mass_lost=lost, duration=seconds, scale_step=0.01)

