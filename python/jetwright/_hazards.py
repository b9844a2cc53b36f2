"""What results warn of."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Callable, Mapping

import numpy as np

from . import _native
from ._arrays import answer

if TYPE_CHECKING:
    from typing_extensions import disjoint_base
else:

    def disjoint_base(of: Any) -> Any:
        """What the checker of the stubs wants said of a tuple that carries an attribute."""
        return of


#: Key and severity of every hazard, in the order of the compiled loop's bits.
_KINDS = tuple(_native.hazard_kinds())

#: How bad each hazard is: ``"danger"`` will kill or maim if it is not avoided, ``"warning"`` could, ``"caution"`` could
#: injure lightly, ``"notice"`` is damage, waste, or a number less certain than it looks. The keys are those of the
#: sheet's ``warnings``.
SEVERITIES: Mapping[str, str] = dict(_KINDS)


def hazards_of(native: Callable[..., Any], values: dict[str, Any], invalid: str) -> dict[str, Any]:
    """Where each hazard is: by key, the worst first, a truth value or an array of them shaped like the arguments.

    Hazards that are nowhere are left out; an element without an answer has none.
    """
    (column,) = answer(native, values, invalid, 1)
    return hazards_in(column)


def hazards_in(column: Any) -> dict[str, Any]:
    """The same of the compiled loop's bits."""
    bits = np.nan_to_num(np.asarray(column, dtype=float)).astype(np.int64)
    order = ("danger", "warning", "caution", "notice")
    found: dict[str, Any] = {}
    for place, (key, _) in sorted(enumerate(_KINDS), key=lambda kind: order.index(kind[1][1])):
        there = (bits >> place) & 1 == 1
        if there.any():
            found[key] = there if there.ndim else bool(there)
    return found


class Warned:
    """A result that knows what it warns of; that is computed when it is asked for."""

    __slots__ = ()

    @property
    def hazards(self) -> dict[str, Any]:
        """Where each hazard is, the worst first: by its key a truth value, or an array of them like the arguments.

        Hazards that are nowhere are left out; ``jetwright.SEVERITIES`` says how bad each is.
        """
        ask = getattr(self, "_ask", None)
        return {} if ask is None else ask()
