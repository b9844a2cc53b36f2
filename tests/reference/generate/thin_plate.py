"""Discharge coefficients of a thin sharp plate after Jobson and after Cunningham, each from its own equation.

`orifice.py` writes the rows. Jobson's momentum balance is solved for the coefficient by scipy in its unsolved form.
Written with scipy 1.17.1.
"""

import math

from scipy.optimize import brentq


def critical_ratio(g):
    """Throat pressure over supply pressure of a choked loss-free nozzle."""
    return (2 / (g + 1)) ** (g / (g - 1))


def flux_squared(g, r):
    """Square of a loss-free nozzle's mass flux over 2 p0 rho0 /2: (2g/(g-1)) r^(2/g) (1 - r^((g-1)/g))."""
    return 2 * g / (g - 1) * r ** (2 / g) * (1 - r ** ((g - 1) / g))


def jobson(contraction, g, r):
    """Jobson 1955: force defect f = 1/Ci - 1/(2 Ci^2), unchanged by compressibility.

    Momentum: the defect of force f m^2 and the push of the pressure over the hole balance the jet. Below critical the
    jet is at the back pressure; beyond, at the critical one, and it keeps contracting less as r falls.
    """
    f = 1 / contraction - 1 / (2 * contraction**2)
    star = critical_ratio(g)
    at = max(r, star)
    k2 = flux_squared(g, at)

    # f C^2 K^2 + (1 - r) = C (K^2 / rho_ratio + (at - r)), rho_ratio = at^(1/g)
    def balance(c):
        return f * c * c * k2 - c * (k2 * at ** (-1 / g) + at - r) + (1 - r)

    return brentq(balance, 0.3, 0.5 * (k2 * at ** (-1 / g) + at - r) / (f * k2), xtol=1e-15)


def expansion_factor(g, r):
    """Cunningham 1951 as Parker & Kercher 1991 use it, no approach tube."""
    return 1 - 0.41 * (1 - max(r, 0.63)) / g - 0.3475 * (0.63 - min(r, 0.63))


def cunningham(contraction, g, r):
    """The same plate by the expansion factor, over the loss-free nozzle: C Y0 / Yg."""
    nozzle = math.sqrt(flux_squared(g, max(r, critical_ratio(g))) / (2 * (1 - r)))
    return contraction * expansion_factor(g, r) / nozzle
