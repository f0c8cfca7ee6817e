"""Modified nodal analysis of a circuit with one core: every winding on it is one unknown current, the flux one more unknown."""

import math
from collections.abc import Callable

import numpy as np

EARTH = "g"
W = 2 * math.pi * 60
LEAST_SIEMENS = 1e-11


class Net:
    """Branches, sources and windings between named nodes; a winding of so many volts obeys `va - vb - z * i - volts * flux = 0`."""

    def __init__(self) -> None:
        self.nodes: dict[str, int] = {EARTH: -1}
        self.branches: list[tuple[str, str, complex]] = []
        self.sources: list[tuple[str, str, complex, complex]] = []
        self.windings: list[tuple[str, str, float, complex]] = []

    def impedance(self, a: str, b: str, ohm: complex) -> None:
        """A branch."""
        self._node(a), self._node(b)
        self.branches.append((a, b, 1.0 / ohm))

    def capacitor(self, a: str, b: str, farad: float) -> None:
        """A stray one."""
        self.impedance(a, b, 1.0 / (1j * W * farad))

    def source(self, a: str, b: str, volts: complex, ohm: complex) -> None:
        """Volts behind an impedance, `a` positive."""
        self._node(a), self._node(b)
        self.sources.append((a, b, volts, ohm))

    def winding(self, a: str, b: str, volts: float, ohm: complex) -> int:
        """Turns by their volts at rated flux; returns its number."""
        self._node(a), self._node(b)
        self.windings.append((a, b, volts, ohm))
        return len(self.windings) - 1

    def _node(self, name: str) -> int:
        return self.nodes.setdefault(name, len(self.nodes) - 1)

    def solve(self, core: Callable[[float], complex] | None = None, least_siemens: float = LEAST_SIEMENS) -> "Solved":
        """AC volts and currents. `core` gives the volt-amperes that the core takes at a share of rated flux, divided by its square."""
        matrix, right = self._matrix(least_siemens)
        flux = len(matrix) - 1
        if not self.windings:
            matrix[flux, flux] = 1
            return Solved(self, np.linalg.solve(matrix, right))
        matrix[flux, flux] -= 1e-9  # keeps the row of the core regular with every winding open
        unit = np.zeros_like(right)
        unit[flux] = 1
        both = np.linalg.solve(matrix, np.stack([right, unit], 1))
        takes = core or (lambda _: 0j)
        level = _balanced(both[flux, 0], both[flux, 1], takes)
        admittance = takes(level)
        e = both[flux, 0] / (1 - both[flux, 1] * admittance)
        return Solved(self, both[:, 0] + both[:, 1] * admittance * e)

    def _matrix(self, least_siemens: float) -> tuple[np.ndarray, np.ndarray]:
        n, w = len(self.nodes) - 1, len(self.windings)
        matrix, right = np.zeros((n + w + 1, n + w + 1), complex), np.zeros(n + w + 1, complex)
        matrix[range(n), range(n)] = least_siemens
        for a, b, siemens in self.branches:
            self._stamp(matrix, a, b, siemens)
        for a, b, volts, ohm in self.sources:
            self._stamp(matrix, a, b, 1 / ohm)
            for name, sign in ((a, 1), (b, -1)):
                if self.nodes[name] >= 0:
                    right[self.nodes[name]] += sign * volts / ohm
        for number, (a, b, turns, ohm) in enumerate(self.windings):
            row = n + number
            for name, sign in ((a, 1), (b, -1)):
                if self.nodes[name] >= 0:
                    matrix[self.nodes[name], row] += sign
                    matrix[row, self.nodes[name]] += sign
            matrix[row, row] -= ohm
            matrix[row, n + w] -= turns
            matrix[n + w, row] += turns
        return matrix, right

    def _stamp(self, matrix: np.ndarray, a: str, b: str, siemens: complex) -> None:
        i, j = self.nodes[a], self.nodes[b]
        for p, q in ((i, j), (j, i)):
            if p >= 0:
                matrix[p, p] += siemens
                if q >= 0:
                    matrix[p, q] -= siemens

    def dc_ohm(self, a: str, b: str) -> float:
        """What an ohmmeter sees between two nodes; windings are their resistance."""
        if a not in self.nodes or b not in self.nodes:
            return 1e12
        n = len(self.nodes) - 1
        matrix = np.eye(n) * 1e-13
        for p, q, siemens in self.branches:
            self._stamp(matrix, p, q, siemens.real if isinstance(siemens, complex) else siemens)
        for p, q, _, ohm in self.windings:
            self._stamp(matrix, p, q, 1 / complex(ohm).real)
        right = np.zeros(n)
        for name, sign in ((a, 1.0), (b, -1.0)):
            if self.nodes[name] >= 0:
                right[self.nodes[name]] += sign
        volts = np.linalg.solve(matrix, right)
        at = [0.0 if self.nodes[name] < 0 else float(volts[self.nodes[name]]) for name in (a, b)]
        return at[0] - at[1]


def _balanced(free: complex, gain: complex, takes: Callable[[float], complex]) -> float:
    """The flux at which the core takes what is left for it, by halving."""
    low, high = 0.0, max(abs(free) * 3, 1e-9) + 5.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if abs(free / (1 - gain * takes(middle))) > middle else (low, middle)
    return (low + high) / 2


class Solved:
    """What stands where."""

    def __init__(self, net: Net, values: np.ndarray) -> None:
        self.net, self.values = net, values

    def volts(self, a: str, b: str = EARTH) -> complex:
        """Between two nodes."""
        at = [0j if self.net.nodes[name] < 0 else complex(self.values[self.net.nodes[name]]) for name in (a, b)]
        return at[0] - at[1]

    def amps(self, winding: int) -> complex:
        """In a winding."""
        return complex(self.values[len(self.net.nodes) - 1 + winding])
