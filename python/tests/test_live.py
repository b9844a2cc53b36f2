"""Live checks against general-purpose libraries, 500 states and more a quantity.

CoolProp 8 (reference equations), Cantera 3.2 (GRI-Mech 3.0 elements), fluids (friction, standard atmosphere) and scipy.
The run fails when one of them is missing.
"""

import cantera
import CoolProp.CoolProp as coolprop
import fluids
import jetwright as jw
import numpy as np
import pytest
import scipy.integrate
import scipy.interpolate
import scipy.optimize

COUNT = 500
PURE = {"propane": "n-Propane", "methane": "Methane", "C2H6=1": "Ethane", "butane": "n-Butane"}


def states(name, count, seed):
    """Pressures and temperatures short of condensing, to 4 bar absolute."""
    random = np.random.default_rng(seed)
    critical = coolprop.PropsSI("Tcrit", name)
    found = []
    while len(found) < count:
        kelvin, pascals = random.uniform(253.15, 323.15), random.uniform(0.9e5, 3.1e5)
        if kelvin < critical and pascals > 0.97 * coolprop.PropsSI("P", "T", kelvin, "Q", 1, name):
            continue
        found.append((pascals, kelvin))
    return np.array(found).T


@pytest.mark.parametrize(("gas", "name"), PURE.items())
def test_isentropic_flux_within_a_thousandth(gas, name):
    pressure, kelvin = states(name, COUNT, 7)
    ahead = np.random.default_rng(8).uniform(0.62, 0.99, COUNT) * pressure
    ours = jw.Gas(gas).expand(pressure=pressure, ahead=ahead, temperature=kelvin).mass_flux
    state = coolprop.AbstractState("HEOS", name)
    met = 0
    for index in range(COUNT):
        state.update(coolprop.PT_INPUTS, pressure[index], kelvin[index])
        rest, entropy = state.hmass(), state.smass()
        state.update(coolprop.PSmass_INPUTS, ahead[index], entropy)
        if state.phase() == coolprop.iphase_twophase:
            continue
        theirs = state.rhomass() * np.sqrt(2 * (rest - state.hmass()))
        assert ours[index] == pytest.approx(theirs, rel=1e-3), (pressure[index], kelvin[index], ahead[index])
        met += 1
    assert met >= 0.9 * COUNT


@pytest.mark.parametrize(("gas", "name", "within"), [("methane", "Methane", 1e-3), ("propane", "n-Propane", 3e-3)])
def test_density(gas, name, within):
    pressure, kelvin = states(name, COUNT, 9)
    ours = jw.Gas(gas).density(pressure=pressure, temperature=kelvin)
    theirs = coolprop.PropsSI("D", "P", pressure, "T", kelvin, name)
    assert np.max(np.abs(ours / theirs - 1)) < within


@pytest.mark.parametrize(("gas", "name"), [("propane", "n-Propane"), ("methane", "Methane"), ("butane", "n-Butane")])
def test_viscosity_and_enthalpy(gas, name):
    pressure, kelvin = states(name, COUNT, 10)
    gas = jw.Gas(gas)
    viscosity = coolprop.PropsSI("V", "P", pressure, "T", kelvin, name)
    assert np.max(np.abs(gas.viscosity(temperature=kelvin) / viscosity - 1)) < 0.05
    change = gas.enthalpy(pressure=pressure, temperature=kelvin) - gas.enthalpy(pressure=1e5, temperature=300.0)
    reference = coolprop.PropsSI("H", "P", pressure, "T", kelvin, name)
    reference = reference - coolprop.PropsSI("H", "P", 1e5, "T", 300.0, name)
    # The virial equation's enthalpy strays from the reference by 1.5 % of the heat that 40 K hold, near saturation.
    assert np.max(np.abs(change - reference)) < 0.015 * 1700 * 40


def test_saturation():
    kelvin = np.linspace(238.15, 280.15, COUNT)
    pressure = coolprop.PropsSI("P", "T", kelvin, "Q", 1, "n-Propane")
    ratio = jw.Gas("propane").saturation_ratio(pressure=pressure, temperature=kelvin)
    assert np.max(np.abs(ratio - 1)) < 0.005


def test_standard_atmosphere():
    meters = np.linspace(-400.0, 4000.0, COUNT)
    theirs = np.array([fluids.ATMOSPHERE_1976(height).P for height in meters])
    assert np.max(np.abs(jw.Site(altitude=meters).ambient_pressure / theirs - 1)) < 1e-4


def test_moist_air():
    random = np.random.default_rng(11)
    celsius, pascals, humidity = random.uniform(-20, 45, COUNT), random.uniform(7e4, 1.05e5, COUNT), random.uniform(0, 1, COUNT)
    ours = jw.Site(station_pressure=pascals, air_temperature=celsius + 273.15, humidity=humidity).air_density
    volume = coolprop.HAPropsSI("Vha", "T", celsius + 273.15, "P", pascals, "R", humidity)
    assert np.max(np.abs(ours * volume - 1)) < 5e-4


def test_air_needed_by_the_elements():
    species = {"propane": "C3H8", "methane": "CH4", "C2H6=1": "C2H6", "hydrogen": "H2", "CO=1": "CO"}
    solution = cantera.Solution("gri30.yaml")
    random = np.random.default_rng(12)
    names = list(species)
    for _ in range(COUNT):
        shares = random.dirichlet(np.ones(len(names)))
        text = {"propane": "C3H8", "methane": "CH4", "C2H6=1": "C2H6", "hydrogen": "H2", "CO=1": "CO"}
        gas = jw.Gas({text[name]: float(share) for name, share in zip(names, shares)})
        fuel = {species[name]: float(share) for name, share in zip(names, shares)}
        air = {"O2": 0.20946, "N2": 0.78084, "AR": 0.00934, "CO2": 0.00036}
        ratio = solution.stoich_air_fuel_ratio(fuel, air)
        assert float(jw.air_needed(gas=gas, mass_flow=1.0)) == pytest.approx(ratio, rel=1e-3)


def test_heating_values_by_enthalpies_of_formation():
    """Net heat of random fuel mixtures from GRI-Mech 3.0's enthalpies at 25 degC; the two differ by 0.05 % for propane."""
    symbols = ["CH4", "C2H6", "C3H8", "C2H4", "H2", "CO"]
    solution = cantera.Solution("gri30.yaml")
    solution.TP = 298.15, 101325.0
    enthalpy = dict(zip(solution.species_names, solution.standard_enthalpies_RT * 8314.462618 * 298.15))
    heat = []
    for symbol in symbols:
        carbon, hydrogen = solution.n_atoms(symbol, "C"), solution.n_atoms(symbol, "H")
        burnt = carbon * enthalpy["CO2"] + hydrogen / 2 * enthalpy["H2O"]
        heat.append(enthalpy[symbol] - burnt)
    random = np.random.default_rng(14)
    for _ in range(COUNT):
        shares = random.dirichlet(np.ones(len(symbols)))
        gas = jw.Gas(dict(zip(symbols, shares.tolist())))
        expected = float(shares @ heat) / gas.molar_mass
        assert gas.calorific_values(combustion=25)["net_mass"] == pytest.approx(expected, rel=6e-4)


def test_flames_by_a_general_equilibrium_solver():
    """Temperature within 0.1 K, products above 0.1 % within 0.1 %, carbon monoxide in the chamber, of GRI-Mech 3.0."""
    random = np.random.default_rng(16)
    solution = cantera.Solution("gri30.yaml")
    air = {"O2": 0.20946, "N2": 0.78084, "AR": 0.00934, "CO2": 0.00036}
    ratio, kelvin, pascals = random.uniform(0.65, 2, COUNT), random.uniform(250, 600, COUNT), random.uniform(7e4, 1.05e5, COUNT)
    shares = random.dirichlet([1, 1, 1, 0.2, 0.2], COUNT)
    symbols = ["C3H8", "CH4", "C2H6", "N2", "CO2"]
    for case in range(COUNT):
        fuel = dict(zip(symbols, shares[case].tolist()))
        site = jw.Site(station_pressure=pascals[case])
        ours = jw.flame(gas=fuel, air_ratio=ratio[case], mixture_temperature=kelvin[case], chamber_temperature=1500.0, site=site)
        solution.set_equivalence_ratio(1 / ratio[case], fuel, air, basis="mole")
        solution.TP = kelvin[case], pascals[case]
        solution.equilibrate("HP", rtol=1e-10)
        assert ours.temperature == pytest.approx(solution.T, abs=0.1)
        for symbol, share in ours.products.items():
            theirs = solution[symbol.upper()].X[0]
            if theirs > 1e-3:
                assert share == pytest.approx(theirs, rel=1e-3)
        solution.TP = 1500.0, pascals[case]
        solution.equilibrate("TP", rtol=1e-10)
        theirs = solution["CO"].X[0] / (1 - solution["H2O"].X[0])
        if theirs > 1e-3:
            assert ours.chamber_carbon_monoxide == pytest.approx(theirs, rel=1e-3)


def test_flue_losses_by_a_general_equilibrium_solver():
    """Heat balance of mixed fuels: enthalpies by a general solver, above the temperature where a rich gas holds methane."""
    random = np.random.default_rng(17)
    solution = cantera.Solution("gri30.yaml")
    air = {"O2": 0.20946, "N2": 0.78084, "AR": 0.00934, "CO2": 0.00036}
    for _ in range(COUNT // 4):
        ratio, kelvin, chamber = random.uniform(0.65, 2), random.uniform(250, 600), random.uniform(1150, 1900)
        fuel = dict(zip(["C3H8", "CH4", "C2H6", "N2", "CO2"], random.dirichlet([1, 1, 1, 0.2, 0.2]).tolist()))
        ours = jw.flame(gas=fuel, air_ratio=ratio, mixture_temperature=kelvin, chamber_temperature=chamber)
        enthalpy = []
        solution.set_equivalence_ratio(1 / ratio, fuel, air, basis="mole")
        for temperature in (kelvin, 298.15):
            solution.TP = temperature, 101_325.0
            enthalpy.append(solution.enthalpy_mass)
        fuel_mass = solution.mixture_fraction(fuel, air, basis="mole")
        net = fuel_mass * -_heat_of_burning(solution, fuel)
        solution.TP = chamber, 101_325.0
        solution.equilibrate("TP", rtol=1e-10)
        hot = solution.enthalpy_mass
        reading = solution["CO"].X[0] / (1 - solution["H2O"].X[0])
        solution.TP = 298.15, 101_325.0
        assert ours.available_heat == pytest.approx((enthalpy[0] - hot) / net, abs=2e-4)
        assert ours.flue_loss_sensible == pytest.approx((hot - solution.enthalpy_mass) / net, abs=2e-4)
        preheat = (enthalpy[0] - enthalpy[1]) / net
        assert ours.flue_loss_unburnt == pytest.approx(1 + preheat - (enthalpy[0] - solution.enthalpy_mass) / net, abs=2e-4)
        assert ours.chamber_carbon_monoxide == pytest.approx(reading, rel=1e-3, abs=1e-6)


def _heat_of_burning(solution, fuel):
    """J/kg of fuel, negative: what it gives burnt to carbon dioxide and steam at 25 degC."""
    kept = solution.state
    total = mass = 0.0
    for symbol, share in fuel.items():
        species = solution.species(symbol)
        atoms = species.composition
        mass += share * solution.molecular_weights[solution.species_index(symbol)]
        if "H" in atoms:
            burnt = atoms["C"] * solution.species("CO2").thermo.h(298.15) + atoms["H"] / 2 * solution.species("H2O").thermo.h(298.15)
            total += share * (burnt - species.thermo.h(298.15))
    solution.state = kept
    return total / mass


def test_dew_points_by_the_reference_equation_of_water():
    random = np.random.default_rng(18)
    for _ in range(COUNT):
        ratio, pascals = random.uniform(1.0, 3.0), random.uniform(7e4, 1.05e5)
        ours = jw.flame(gas="propane", air_ratio=ratio, chamber_temperature=800.0, site=jw.Site(station_pressure=pascals))
        water = 4 / (7 + ratio * 5 / 0.20946 - 5)
        assert ours.dew_point == pytest.approx(coolprop.PropsSI("T", "P", water * pascals, "Q", 1, "Water"), abs=0.05)


def test_oxygen_readings_by_a_general_equilibrium_solver():
    """Of gas that has burnt to the end at 900 K, dry and wet."""
    random = np.random.default_rng(19)
    solution = cantera.Solution("gri30.yaml")
    air = {"O2": 0.20946, "N2": 0.78084, "AR": 0.00934, "CO2": 0.00036}
    for ratio in random.uniform(1.02, 3.0, COUNT):
        solution.set_equivalence_ratio(1 / ratio, "C3H8:0.7,CH4:0.2,N2:0.1", air, basis="mole")
        solution.TP = 900.0, 101_325.0
        solution.equilibrate("TP", rtol=1e-10)
        fuel, wet = {"C3H8": 0.7, "CH4": 0.2, "N2": 0.1}, solution["O2"].X[0]
        dry = wet / (1 - solution["H2O"].X[0])
        assert jw.air_ratio_from_oxygen(gas=fuel, oxygen=dry) == pytest.approx(ratio, rel=2e-4)
        assert jw.air_ratio_from_oxygen(gas=fuel, oxygen=wet, wet=True) == pytest.approx(ratio, rel=2e-4)
        assert jw.expected_reading(gas=fuel, air_ratio=ratio).oxygen_dry == pytest.approx(dry, rel=5e-4)


def test_burning_arrays_and_what_is_refused():
    range_ = jw.burning_range(gas="propane", temperature=[300.0, 500.0, 900.0])
    assert range_.lights_itself.tolist() == [False, False, True] and (np.diff(range_.leanest_air_ratio) > 0).all()
    assert jw.burning_velocity(gas="methane", air_ratio=[[0.9], [3.0]]).shape == (2, 1)
    assert jw.burning_velocity(gas="methane", air_ratio=3.0) == 0.0
    with pytest.raises(jw.RangeError) as caught:
        jw.burning_range(gas="propane", temperature=[300.0, 1.0])
    assert (caught.value.argument, caught.value.index) == ("temperature", (1,))
    with pytest.raises(jw.RangeError, match="inert|does not burn"):
        jw.burning_range(gas={"N2": 0.97, "C3H8": 0.03})
    with pytest.raises(jw.RangeError, match="not measured"):
        jw.burning_velocity(gas="hydrogen")
    with pytest.raises(jw.RangeError) as caught:
        jw.air_ratio_from_oxygen(gas="propane", oxygen=[0.02, 0.4])
    assert (caught.value.argument, caught.value.index) == ("oxygen", (1,))
    with pytest.raises(jw.RangeError, match="soot"):
        jw.flame(gas="propane", air_ratio=0.4)
    with pytest.raises(ValueError, match="nfpa497"):
        jw.burning_range(gas="propane", standard="hearsay")
    assert np.isnan(jw.flame(gas="propane", chamber_temperature=700.0).scale_drive)
    assert jw.flame(gas="propane", air_ratio=0.7, chamber_temperature=1400.0).scale_drive > 1.0


def test_flames_over_arrays():
    flames = jw.flame(gas="propane", air_ratio=[0.8, 1.0, 1.5], chamber_temperature=[[1300.0], [1600.0]])
    assert flames.temperature.shape == (2, 3) and (flames.available_heat[0] > flames.available_heat[1]).all()
    assert flames.dry()["CO"][0, 0] > flames.dry()["CO"][0, 1] > flames.dry()["CO"][0, 2]
    with pytest.raises(jw.RangeError) as caught:
        jw.flame(gas="propane", air_ratio=[1.0, 0.3])
    assert (caught.value.argument, caught.value.index) == ("air_ratio", (1,))


def test_thin_plate_by_the_momentum_balance():
    """Jobson's balance for CoolProp's methane, the contraction of ISO 5167-2 at the result's Reynolds number."""
    random = np.random.default_rng(15)
    gauge, kelvin = random.uniform(1e3, 7e4, COUNT), random.uniform(260, 320, COUNT)
    result = jw.flow(gas="methane", gauge_pressure=gauge, bore=1.7e-3, edge="sharp", gas_temperature=kelvin)
    supply = 101325.0 + gauge
    density = coolprop.PropsSI("D", "P", supply, "T", kelvin, "Methane")
    entropy = coolprop.PropsSI("S", "P", supply, "T", kelvin, "Methane")
    ahead = coolprop.PropsSI("D", "P", 101325.0, "S", entropy, "Methane") / density
    drop = coolprop.PropsSI("H", "P", supply, "T", kelvin, "Methane") - coolprop.PropsSI(
        "H", "P", 101325.0, "S", entropy, "Methane"
    )
    square = 2 * drop * ahead**2 * density / supply
    contraction = 0.5961 + 0.000521 * (1e6 / result.reynolds_number) ** 0.7
    defect = 1 / contraction - 1 / (2 * contraction**2)
    fall = gauge / supply
    expected = (1 - np.sqrt(1 - (2 * ahead) ** 2 * defect * fall / square)) / (2 * defect * ahead)
    assert np.max(np.abs(result.discharge_coefficient / expected - 1)) < 1e-3


def test_blower_curve_is_the_monotone_cubic():
    points = [(0.0, 720.0), (0.005, 745.0), (0.010, 690.0), (0.016, 520.0), (0.022, 120.0)]
    curve = scipy.interpolate.PchipInterpolator(*zip(*points))
    flow = np.linspace(0.0, 0.022, COUNT)
    assert np.allclose(jw.Blower(points).static_pressure(flow), curve(flow), rtol=1e-12, atol=1e-9)
    resistance = np.geomspace(1e5, 1e8, COUNT)
    point = jw.Blower(points).operating_point(resistance)
    assert np.allclose(point.static_pressure, resistance * point.flow**2, rtol=1e-9)
    assert np.allclose(point.static_pressure[point.flow < 0.022], curve(point.flow[point.flow < 0.022]), rtol=1e-9)


def test_long_bore_by_integration():
    """Adiabatic friction over 1.5 diameters less than the length, friction by fluids' Haaland, at the flow found.
    """
    random = np.random.default_rng(13)
    loss, gas = 1 / 0.81**2 - 1, jw.Gas("CH4=1")
    count = 3 * COUNT
    bore, length = random.uniform(0.8e-3, 3e-3, count), random.uniform(5, 20, count)
    gauge, kelvin = random.uniform(2e3, 5e4, count), random.uniform(270, 310, count)
    result = jw.flow(gas=gas, gauge_pressure=gauge, bore=bore, bore_length=length * bore, gas_temperature=kelvin)
    supply, ratio = 101325.0 + gauge, 101325.0 / (101325.0 + gauge)
    exponent = _exponent(gas, supply, kelvin)
    met = 0
    for case in np.flatnonzero(~result.choked & (result.reynolds_number > 4100))[:COUNT]:
        k = float(exponent[case])
        friction = fluids.friction.Haaland(Re=float(result.reynolds_number[case]), eD=5e-6 / bore[case])
        mach = _mach(k, friction * (length[case] - 1.5), loss, float(ratio[case]))
        nozzle = np.sqrt(2 / (k - 1) * (ratio[case] ** (-(k - 1) / k) - 1))
        entry = (1 + (k - 1) / 2 * mach**2) ** (k / (k - 1)) + loss * k * mach**2 / 2
        coefficient = _flux(k, mach, 1 / entry) / _flux(k, nozzle, ratio[case])
        assert result.discharge_coefficient[case] == pytest.approx(coefficient, rel=2e-3)
        met += 1
    assert met >= COUNT


def _flux(k, mach, pressure):
    return mach * pressure * np.sqrt(1 + (k - 1) / 2 * mach * mach)


def _exponent(gas, pressure, kelvin):
    half = gas.expand(pressure=pressure, ahead=pressure * 0.98, temperature=kelvin)
    return np.log(half.pressure_ratio) / np.log(half.density_ratio)


def _friction_length(k, mach):
    """f L*/D of adiabatic friction to the speed of sound (NACA 1135's companion, Shapiro 1953, table B.4)."""
    square = mach * mach
    return (1 - square) / (k * square) + (k + 1) / (2 * k) * np.log((k + 1) * square / (2 + (k - 1) * square))


def _mach(k, length, loss, ratio):
    """Mach number at the head whose stream, after friction, leaves at the pressure ahead, by scipy's root finder."""

    def excess(mach):
        left = _friction_length(k, mach) - length
        out = scipy.optimize.brentq(lambda m: _friction_length(k, m) - left, mach, 1.0) if left > 0 else 1.0
        entry = (1 + (k - 1) / 2 * mach**2) ** (k / (k - 1)) + loss * k * mach**2 / 2
        drop = mach / out * np.sqrt((1 + (k - 1) / 2 * mach**2) / (1 + (k - 1) / 2 * out**2))
        return drop / entry - ratio

    sonic = scipy.optimize.brentq(lambda m: _friction_length(k, m) - length, 1e-3, 1.0)
    return scipy.optimize.brentq(excess, 1e-3, sonic * (1 - 1e-9))


def test_the_closed_friction_law_is_the_integral():
    """The law used above beside its differential equation, integrated by scipy."""
    k, start = 1.3, 0.3

    def slope(_, square):
        return square * k * square * (1 + (k - 1) / 2 * square) / (1 - square)

    path = scipy.integrate.solve_ivp(slope, (0, 4.0), [start**2], rtol=1e-10, atol=1e-12)
    end = np.sqrt(path.y[0][-1])
    assert _friction_length(k, start) - _friction_length(k, end) == pytest.approx(4.0, rel=1e-7)
