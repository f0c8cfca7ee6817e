"""A small nodal solver: impedances, one source, ideal transformers. Nothing of the engine's plant is used."""

import numpy as np


class Network:
    """Branches between named nodes; "0" is the reference."""

    def __init__(self) -> None:
        self.z: list[tuple[str, str, complex]] = []
        self.sources: list[tuple[str, str, complex]] = []
        self.ideal: list[tuple[str, str, str, str, float]] = []

    def impedance(self, a: str, b: str, ohm: complex) -> None:
        """A branch."""
        self.z.append((a, b, max(abs(ohm), 1e-6) * np.exp(1j * np.angle(ohm)) if ohm else 1e-6))

    def source(self, a: str, b: str, volts: complex) -> None:
        """An ideal source."""
        self.sources.append((a, b, volts))

    def transformer(self, a: str, b: str, c: str, d: str, ratio: float) -> None:
        """V(a,b) = ratio * V(c,d); what flows in at a flows out at c times the ratio."""
        self.ideal.append((a, b, c, d, ratio))

    def solve(self) -> dict[str, complex]:
        """Volts of every node."""
        names = sorted(
            {n for row in (*self.z, *self.sources) for n in row[:2]} | {n for row in self.ideal for n in row[:4]} - {"0"}
        )
        names = [n for n in names if n != "0"]
        at = {n: i for i, n in enumerate(names)}
        size = len(names) + len(self.sources) + len(self.ideal)
        m, rhs = np.zeros((size, size), complex), np.zeros(size, complex)
        for a, b, ohm in self.z:
            self._branch(m, at, a, b, 1 / ohm)
        rows = [((a, 1), (b, -1)) for a, b, _ in self.sources]
        rows += [((a, 1), (b, -1), (c, -ratio), (d, ratio)) for a, b, c, d, ratio in self.ideal]
        for row, ends in enumerate(rows, start=len(names)):
            for n, sign in ends:
                if n != "0":
                    m[at[n], row] += sign
                    m[row, at[n]] += sign
        for number, (_, _, volts) in enumerate(self.sources):
            rhs[len(names) + number] = volts
        for i in range(len(names)):
            m[i, i] += 1e-12
        volts = np.linalg.solve(m, rhs)
        return {"0": 0j} | {n: volts[i] for n, i in at.items()}

    @staticmethod
    def _branch(m: np.ndarray, at: dict[str, int], a: str, b: str, siemens: complex) -> None:
        for p, q in ((a, b), (b, a)):
            if p != "0":
                m[at[p], at[p]] += siemens
                if q != "0":
                    m[at[p], at[q]] -= siemens
