"""Adiabatic flow of a perfect gas through a bore with an entry loss and constant Darcy friction (Fanno).

The reference for the `long_bore_discharge_coefficient` rows: scipy, one unknown (the inlet Mach number),
no series and no shortcut, so that it shares nothing with what it checks. `orifice.py` writes the rows.
Run alone it checks four-digit values computed earlier by another hand. Written with scipy 1.17.1.
"""

import math

from scipy.optimize import brentq, minimize_scalar


def nozzle_flux(isentropic_exponent, pressure_ratio):
    """Mass flux of a loss-free nozzle over p0 / sqrt(R T0)."""
    g = isentropic_exponent
    r = max(pressure_ratio, (2 / (g + 1)) ** (g / (g - 1)))
    return math.sqrt(2 * g / (g - 1) * (r ** (2 / g) - r ** ((g + 1) / g)))


def fanno_length(g, mach):
    """f L/D from here to Mach 1: Shapiro, The Dynamics and Thermodynamics of Compressible Fluid Flow, eq. 6.22."""
    m2 = mach * mach
    return (1 - m2) / (g * m2) + (g + 1) / (2 * g) * math.log((g + 1) * m2 / (2 + (g - 1) * m2))


def inlet(g, entry_loss, mach):
    """Static pressure over supply pressure behind the mouth, and mass flux over p0 / sqrt(R T0)."""
    m2 = mach * mach
    heat = 1 + (g - 1) / 2 * m2
    pressure = 1 / (heat ** (g / (g - 1)) + entry_loss * g / 2 * m2)
    return pressure, pressure * mach * math.sqrt(g * heat)


def exit_mach(g, friction_length, mach):
    """Mach number at the end of the bore, subsonic branch."""
    left = fanno_length(g, mach) - friction_length
    if left <= 0:
        return 1.0
    return brentq(lambda m: fanno_length(g, m) - left, 1e-6, 1.0, xtol=1e-15)


def exit_pressure(g, entry_loss, friction_length, mach):
    """Static pressure at the end of the bore over supply pressure."""
    out = exit_mach(g, friction_length, mach)
    pressure, _ = inlet(g, entry_loss, mach)
    return pressure * mach / out * math.sqrt((2 + (g - 1) * mach**2) / (2 + (g - 1) * out**2))


def largest_inlet_mach(g, entry_loss, friction_length):
    """Where the bore chokes: Mach 1 at the exit or the peak of the flux behind the mouth, whichever comes first."""
    limit = 1.0
    if friction_length > 0:
        limit = brentq(lambda m: fanno_length(g, m) - friction_length, 1e-4, 1.0, xtol=1e-15)
    if entry_loss > 0:
        peak = minimize_scalar(lambda m: -inlet(g, entry_loss, m)[1], bounds=(0.3, 1.0), method="bounded",
                               options={"xatol": 1e-10}).x
        limit = min(limit, peak)
    return limit


def discharge_coefficient(entry_loss, friction_length, isentropic_exponent, pressure_ratio):
    """Flow over that of a loss-free nozzle at the same supply and back pressure, and whether the bore chokes."""
    g = isentropic_exponent
    top = largest_inlet_mach(g, entry_loss, friction_length)
    choked = exit_pressure(g, entry_loss, friction_length, top) >= pressure_ratio
    mach = top
    if not choked:
        mach = brentq(lambda m: exit_pressure(g, entry_loss, friction_length, m) - pressure_ratio, 1e-3, top, xtol=1e-15)
    return inlet(g, entry_loss, mach)[1] / nozzle_flux(g, pressure_ratio), choked


RATIOS = (0.05, 0.4, 0.6, 0.75, 0.9, 0.98)
TABLE = {  # (exponent, f L/D): entry loss 0, then 0.5, at RATIOS; None where no value was kept
    (1.4, 0.25): (".9011 .9011 .8914 .8886 .8915 .8938", ".8055 .8055 .7831 .7680 .7597 .7566"),
    (1.4, 0.5): (".8397 .8397 .8226 .8143 .8144 .8160", ".7646 .7646 .7374 .7202 .7110 .7078"),
    (1.4, 1): (".7556 - .7285 .7134 .7079 .7071", ".7023 .7017 .6686 .6485 .6373 .6333"),
    (1.4, 2): (".6520 .6501 .6143 .5934 .5819 .5781", ".6184 .6154 .5774 .5547 .5409 .5357"),
    (1.3, 0.5): (".8462 .8462 .8300 .8183 .8158 .8163", ".7725 .7725 .7463 .7251 .7128 .7081"),
    (1.3, 1): (".7639 .7639 .7376 .7184 .7097 .7075", ".7111 .7110 .6781 .6537 .6391 .6337"),
    (1.3, 2): (".6614 .6604 .6239 .5986 .5838 .5785", ".6279 .6259 .5869 .5599 .5427 .5360"),
    (1.13, 0.5): (".8584 .8584 .8455 .8267 .8189 .8169", ".7872 .7872 .7650 .7354 .7166 .7089"),
    (1.13, 1): (".7795 .7795 .7569 .7288 .7135 .7082", ".7279 .7279 .6983 .6647 .6431 .6344"),
    (1.13, 2): (".6794 .6793 .6445 .6097 .5877 .5792", ".6461 .6456 .6074 .5708 .5466 .5367"),
}
SHORT_TUBE = {  # (exponent, f L/D) at entry loss .524: r = .05, r = .98
    (1.4, 0): (".8431", ".8109"), (1.4, 0.1): (".8294", "-"), (1.4, 0.5): (".7613", ".7036"),
    (1.3, 0): (".8485", ".8112"), (1.3, 0.5): (".7692", ".7040"),
    (1.13, 0): (".8587", ".8118"), (1.13, 0.5): (".7841", ".7047"),
}


def cases():
    """Every (entry loss, f L/D, exponent, r, four-digit value or '-') of both tables."""
    for (g, length), both in TABLE.items():
        for entry_loss, printed in zip((0.0, 0.5), both):
            for ratio, value in zip(RATIOS, printed.split()):
                yield entry_loss, length, g, ratio, value
    for (g, length), printed in SHORT_TUBE.items():
        for ratio, value in zip((0.05, 0.98), printed):
            yield 0.524, length, g, ratio, value


if __name__ == "__main__":
    count = 0
    for entry_loss, length, g, ratio, printed in cases():
        value, choked = discharge_coefficient(entry_loss, length, g, ratio)
        if printed != "-":
            count += 1
            if abs(value - float(printed)) > 0.000051:
                print(f"differs: K {entry_loss} fL/D {length} gamma {g} r {ratio}: {value:.6f}, printed {printed}")
        else:
            print(f"new: K {entry_loss} fL/D {length} gamma {g} r {ratio}: {value:.6f} {'choked' if choked else ''}")
    print(f"{count} four-digit values compared")
