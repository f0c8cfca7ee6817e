"""What the leads of a meter are on in the fourth world: live places with their ghosts, dead ones with what stands beside them."""

import numpy as np

from tests.benchmarks.fourth_world.unit import Unit
from tests.benchmarks.fourth_world.winder import INF, beside

COLLAPSED = 0.004
"""What a low-impedance meter leaves of a ghost."""


class Places:
    """Of one unit."""

    def __init__(self, rng: np.random.Generator, unit: Unit) -> None:
        self.rng, self.u, self.ghosts = rng, unit, dict[str, float]()

    def _ghost(self, key: str, volts: float, a: float, b: float) -> float:
        """A share of a neighbour's volts, the same whenever one looks again."""
        if key not in self.ghosts:
            self.ghosts[key] = self.rng.beta(a, b) * volts
        return float(self.ghosts[key] * self.rng.uniform(0.93, 1.07))

    def volts(self, measure: str, *, is_low: bool) -> float:
        """Between the two places of a measure."""
        if measure in {"line_volts", "primary_volts"}:
            return self._line_side(measure, is_low=is_low)
        if measure.startswith("secondary"):
            return self._secondary(is_lifted=measure == "secondary_volts_lifted", is_low=is_low)
        return self._control_side(measure, COLLAPSED if is_low else 1.0)

    def _line_side(self, measure: str, *, is_low: bool) -> float:
        u, d, shrink = self.u, self.u.d, COLLAPSED if is_low else 1.0
        if measure == "primary_volts" and d["joint"] == INF:
            return self._ghost("primary", u.supply, 0.25, 18) * shrink if d["line_on"] else 0.0
        if d["line_on"]:
            at = u.circuit()
            return at.line if measure == "line_volts" else at.primary
        if d["opened1"] == INF:
            return self._ghost("line", u.supply, 0.8, 3) * shrink
        return self._ghost("line tied", u.supply, 0.3, 14) * (0.1 if is_low else 1.0)

    def _secondary(self, *, is_lifted: bool, is_low: bool) -> float:
        u, d = self.u, self.u.d
        at = u.circuit(lifted=is_lifted)
        if d["opened2"] == INF:
            is_closed = max(d["fuse_r"], d["before"], d["after"], d["c_leg"]) != INF
            if not d["line_on"] or d["joint"] == INF or (not is_lifted and at.load != INF and is_closed):
                return 0.0
            return self._ghost("secondary", u.supply if at.flux > 0.02 else 4.0, 0.7, 6) * (COLLAPSED if is_low else 1.0)
        if d["opened2"] > 0 and at.secondary > 0 and at.secondary_a == 0:  # charred: the meter loads it
            meter = 3000.0 if is_low else 1e7
            return float(at.secondary * abs(meter / (meter + at.inside)))
        return at.secondary

    def _control_side(self, measure: str, shrink: float) -> float:
        d, at = self.u.d, self.u.circuit()
        is_cut, is_loaded = max(d["before"], d["after"], d["c_leg"]) == INF, at.load != INF
        is_fed = not is_cut and d["fuse_r"] != INF
        up = at.secondary if at.secondary > 0.5 else 0.0
        if measure == "control_volts":
            ghost = 0.0 if is_loaded or is_fed else self._ghost("control", max(up, 1.0), 0.9, 2.0) * shrink
            return at.control if is_loaded else up if is_fed else ghost
        if measure == "coil_volts":
            if not is_fed and not is_loaded:
                return self._ghost("coil", max(up, 0.5), 0.6, 3.5) * shrink
            return at.coil if d["calling"] else self._ghost("coil tied", up, 0.3, 60) * shrink
        return at.fuse if d["fuse_r"] != INF else self._open_fuse(up, shrink, is_cut=is_cut)

    def _open_fuse(self, up: float, shrink: float, *, is_cut: bool) -> float:
        if is_cut:
            return self._ghost("fuse", up, 1, 3) * shrink
        is_loaded = self.u.circuit().load != INF
        return up if is_loaded or not up else self._ghost("fuse", up, 1.2, 1.6) * shrink

    def _control_dc(self) -> float:
        d = self.u.d
        near = [v.dc_ohm for v in d["devices"] if v.is_always_on]
        far = [
            v.dc_ohm for v in d["devices"] if not v.is_always_on and not (d["down"] == "dead_coil" and v.name == "contactor")
        ]
        if d["short_r"] is not None:
            (far if d["short_far"] else near).append(d["short_r"])
        if d["calling"] and far:
            near.append(beside(*far) + d["wire"])
        return beside(*near) if near else INF

    def ohms(self, measure: str, *, is_isolated: bool) -> float:
        """What stands between the two places; an insulation fault is read from one lead, a share of the winding on the way."""
        d = self.u.d
        far1, far2 = d["r1"] * d["spot1"], d["r2"] * (1 - d["spot2"])
        ps, pg, sg = d["ps"] + far1 + far2, d["pg"] + far1, d["sg"] + far2
        coil = INF if d["down"] == "dead_coil" else next(v.dc_ohm for v in d["devices"] if v.name == "contactor")
        if d["short_r"] is not None and d["short_far"]:
            coil = beside(coil, d["short_r"])
        alone = {
            "primary_ohms": d["r1"] + d["opened1"], "secondary_ohms": d["r2"] + d["opened2"], "primary_secondary_ohms": beside(ps, pg + sg),
            "primary_ground_ohms": beside(pg, ps + sg), "secondary_ground_ohms": beside(sg, ps + pg), "load_ohms": self._control_dc(),
            "fuse_ohms": d["fuse_r"], "coil_ohms": coil,
        }  # fmt: skip
        return alone[measure] if is_isolated else beside(alone[measure], self._path(measure, alone))

    def _path(self, measure: str, alone: dict[str, float]) -> float:
        """What hangs on a part that was not isolated."""
        d, control = self.u.d, alone["load_ohms"]
        r1, r2 = alone["primary_ohms"], alone["secondary_ohms"]
        joints = d["before"] + d["after"] + d["c_leg"]
        series = joints + d["fuse_r"]
        earth1, earth2 = 0.5 if d["neutral"] else INF, d["tie"] if d["c_tied"] else INF
        is_other_lead = self.rng.random() < 0.5
        return {
            "primary_ohms": d["beside"] + d["joint"],
            "secondary_ohms": control + series,
            "load_ohms": r2 + series,
            "fuse_ohms": r2 + control + joints,
            "coil_ohms": control + d["wire"] if d["calling"] else INF,
            "primary_ground_ohms": earth1 + d["joint"] + (r1 if is_other_lead else 0.0),
            "secondary_ground_ohms": earth2 + d["c_leg"] + (min(r2, control + series) if is_other_lead else 0.0),
            "primary_secondary_ohms": earth1 + earth2 + r1,
        }[measure]
