"""One unit with its supply, transformer, control circuit and strays, as a net of nodes."""

import math
from dataclasses import dataclass
from itertools import pairwise

from tests.benchmarks.second_world.nodal import EARTH, Net

OPEN = 1e9
BAD = {
    "primary_open",
    "primary_shorted_turns",
    "secondary_open",
    "secondary_shorted_turns",
    "windings_bridged",
    "winding_grounded",
}
VOLTS = {
    "line_volts": ("L1", "L2"), "primary_volts": ("P1", "P2"), "secondary_volts": ("X1", "X2"), "secondary_volts_lifted": ("X1", "X2"),
    "control_volts": ("R", "C"), "coil_volts": ("Y", "C"), "fuse_volts": ("X1", "F1"),
}  # fmt: skip
OHMS = {
    "primary_ohms": ("P1", "P2"), "secondary_ohms": ("X1", "X2"), "primary_secondary_ohms": ("P1", "X1"), "primary_ground_ohms": ("P1", "k"),
    "secondary_ground_ohms": ("X1", "k"), "load_ohms": ("R", "C"), "fuse_ohms": ("X1", "F1"), "coil_ohms": ("Y", "C"),
}  # fmt: skip


@dataclass
class Unit:
    """What is there. Ohms at 20 degC, volts rms."""

    finding: str = "healthy"
    severity: str = ""
    short: bool = False
    """A short in the control circuit, the finding or what caused it."""
    is_tellable: bool = True
    """False where no measure could tell the finding."""
    va: float = 40.0
    supply: float = 120.0
    """Nominal."""
    taps: tuple[float, ...] = (120.0,)
    tap: float = 120.0
    line: float = 120.0
    """Behind the source impedance."""
    opened_v: float = 26.8
    """Secondary volts with nothing connected at rated flux."""
    primary_ohm: float = 18.0
    secondary_ohm: float = 0.8
    primary_x: float = 3.0
    secondary_x: float = 0.13
    core_w: float = 2.5
    core_var: float = 8.0
    bend: float = 0.1
    bend_power: float = 9.0
    celsius: float = 40.0
    source_ohm: complex = 0.1 + 0.05j
    neutral: bool = True
    leg_angle: float = 180.0
    opens_neutral: bool = False
    beside_ac: float = 1e9
    beside_dc: float = 1e9
    chassis_ohm: float = 0.1
    bonded: bool = False
    fuse: str = "none"
    fuse_ohm: float = 0.05
    r_leg: float = 0.1
    c_leg: float = 0.1
    thermostat_wire: float = 0.6
    always_z: complex = 250 + 60j
    always_dc: float = 1e5
    coil_z: complex = 30 + 70j
    coil_dc: float = 15.0
    called_z: complex = 60 + 60j
    called_dc: float = 20.0
    load_va: float = 20.0
    called: bool = True
    called_dead: bool = False
    between_farad: float = 4e-10
    primary_farad: float = 2e-10
    secondary_farad: float = 2e-10
    ghost_farad: float = 1e-10
    stub_farad: float = 5e-11
    insulation_ohm: float = 8e8
    breaker_a: float = 15.0
    line_ohm: tuple[float, float] = (0.03, 0.03)
    loose_ohm: float = 0.03
    loose_leg: int = 1
    primary_link: float = 0.001
    secondary_link: float = 0.001
    primary_shorted: float = 0.0
    secondary_shorted: float = 0.0
    shorted_ohm: float = 0.0
    bridge_ohm: float = 0.0
    bridge_at: tuple[float, float] = (0.5, 0.5)
    ground_ohm: float = 0.0
    grounded: str = "p"
    ground_at: float = 0.5
    short_ohm: float = 0.0
    tripped: bool = False

    @property
    def is_bad(self) -> bool:
        """Truth of the replace decision."""
        return self.finding in BAD

    @property
    def fused(self) -> bool:
        """There is a low-voltage fuse or breaker."""
        return self.fuse != "none"

    def core(self, flux: float) -> complex:
        """Volt-amperes of the core by its flux: a power law on top of the linear part."""
        bent = 1 + self.bend * min(flux, 3.0) ** (self.bend_power - 1)
        return self.core_w - 1j * self.core_var * bent / (1 + self.bend)

    def net(
        self, *, live: bool = True, lifted: bool = False, isolated: bool = False, called: bool | None = None, pulled: str = ""
    ) -> Net:
        """The circuit. `isolated`: all four leads of the transformer are off; `pulled`: the fuse or the coil is out."""
        net = Net()
        net.impedance("k", EARTH, self.chassis_ohm)
        self._supply(net, live=live)
        self._line(net, live=live, isolated=isolated)
        self._transformer(net, live=live)
        self._control(net, live=live, cut=lifted or isolated, isolated=isolated, called=called, pulled=pulled)
        return net

    def _supply(self, net: Net, *, live: bool) -> None:
        if not live:
            if self.neutral and not self.opens_neutral:
                net.impedance("L2", EARTH, 0.1)
            return
        half, turn = self.line / (2 * math.sin(math.radians(self.leg_angle) / 2)), math.radians(self.leg_angle)
        first, second = (self.line, 0j) if self.neutral else (half, half * complex(math.cos(turn), -math.sin(turn)))
        net.source("S1", EARTH, first, self.source_ohm)
        net.source("S2", EARTH, second, 0.02 if self.neutral else self.source_ohm)
        one, two = self.line_ohm
        if self.tripped:
            one, two = 1e12, two if self.neutral else 1e12
        net.impedance("S1", "L1", one)
        net.impedance("S2", "L2", two)
        net.capacitor("S1", "L1", self.stub_farad)
        net.capacitor("S2", "L2", self.stub_farad)

    def _line(self, net: Net, *, live: bool, isolated: bool) -> None:
        net.impedance("L1", "L2", self.beside_ac if live else self.beside_dc)
        if not isolated:
            net.impedance("L1", "P1", self.loose_ohm if self.loose_leg == 1 else 0.03)
            net.impedance("L2", "P2", self.loose_ohm if self.loose_leg == 2 else 0.03)
        if live:
            for a, b, farad in (
                ("L1", "k", 1e-10),
                ("L2", "k", 1e-10),
                ("L1", "P1", self.stub_farad),
                ("L2", "P2", self.stub_farad),
            ):
                net.capacitor(a, b, farad)

    def _transformer(self, net: Net, *, live: bool) -> None:
        on_primary = {"B": self.bridge_at[0]} if self.bridge_ohm else {}
        on_secondary = {"B": self.bridge_at[1]} if self.bridge_ohm else {}
        if self.ground_ohm:
            (on_primary if self.grounded == "p" else on_secondary)["G"] = self.ground_at
        x1, x2 = (self.primary_x, self.secondary_x) if live else (0.0, 0.0)
        first = self._winding(
            net, "p", ("P1", "P2"), self.primary_link, self.tap, (self.primary_ohm, x1), self.primary_shorted, on_primary
        )
        second = self._winding(
            net,
            "s",
            ("X1", "X2"),
            self.secondary_link,
            self.opened_v,
            (self.secondary_ohm, x2),
            self.secondary_shorted,
            on_secondary,
        )
        if self.bridge_ohm:
            net.impedance(first["B"], second["B"], self.bridge_ohm)
        if self.ground_ohm:
            net.impedance((first if self.grounded == "p" else second)["G"], "k", self.ground_ohm)
        for a, b, share in (("P2", "X2", 1.0), ("P2", "k", 0.8), ("X2", "k", 0.9)):
            net.impedance(a, b, self.insulation_ohm * share)
        if live:
            for a, b, farad in (
                ("P1i", "X1i", self.between_farad), ("P2", "X2", self.between_farad), ("P1i", "k", self.primary_farad), ("P2", "k", self.primary_farad),
                ("X1i", "k", self.secondary_farad), ("X2", "k", self.secondary_farad),
            ):  # fmt: skip
                net.capacitor(a, b, farad / 2)

    def _winding(
        self,
        net: Net,
        tag: str,
        ends: tuple[str, str],
        link: float,
        volts: float,
        ohm: tuple[float, float],
        shorted: float,
        at: dict[str, float],
    ) -> dict[str, str]:
        """A winding in pieces, cut where turns are shorted or something touches it; returns the node of each touch."""
        hot = 1 + 0.00393 * (self.celsius - 20)
        begin = ends[0] + "i"
        net.impedance(ends[0], begin, max(link, 1e-4))
        cuts = {0.0: begin, 1.0: ends[1]}
        if shorted > 0:
            cuts[0.5 - shorted / 2], cuts[0.5 + shorted / 2] = tag + "a", tag + "b"
            net.impedance(tag + "a", tag + "b", max(self.shorted_ohm, 1e-4))
        for name, place in at.items():
            cuts.setdefault(place, tag + name)
        places = sorted(cuts)
        for p, q in pairwise(places):
            net.winding(cuts[p], cuts[q], volts * (q - p), (ohm[0] * hot + 1j * ohm[1]) * (q - p))
        return {name: cuts[place] for name, place in at.items()}

    def _control(self, net: Net, *, live: bool, cut: bool, isolated: bool, called: bool | None, pulled: str) -> None:
        if not cut and pulled != "fuse":
            net.impedance("X1", "F1", self.fuse_ohm if self.fused else 0.01)
        net.impedance("F1", "R", self.r_leg)
        if not isolated:
            net.impedance("X2", "C", self.c_leg)
        if self.bonded:
            net.impedance("C", "k", 0.1)
        net.impedance("R", "C", self.always_z if live else self.always_dc)
        if called if called is not None else self.called if live else self.called_dead:
            net.impedance("R", "Y", self.thermostat_wire)
            net.impedance("R", "C", self.called_z if live else self.called_dc)
        elif live:
            net.capacitor("R", "Y", 2e-10)
        net.impedance("Y", "Ce" if pulled == "coil" else "C", self.coil_z if live else self.coil_dc)
        if self.short_ohm:
            net.impedance("R", "C", self.short_ohm)
        if live:
            net.source("GH", EARTH, 120j, 1.0)
            net.capacitor("GH", "R", self.ghost_farad)

    def volts(self, measure: str, meter_ohm: complex, *, called: bool | None = None) -> float:
        """What a meter of that input reads."""
        a, b = VOLTS[measure]
        net = self.net(lifted=measure == "secondary_volts_lifted", called=called)
        net.impedance(a, b, meter_ohm)
        return abs(net.solve(self.core).volts(a, b))

    def amps(self, measure: str, *, called: bool | None = None) -> float:
        """In one primary or secondary lead."""
        solved = self.net(called=called).solve(self.core)
        if measure == "secondary_amps":
            return abs(solved.volts("X1", "F1") / (self.fuse_ohm if self.fused else 0.01))
        return abs(solved.volts("P1", "P1i") / max(self.primary_link, 1e-4))

    def ohms(self, measure: str, *, isolated: bool, pulled: str = "") -> float:
        """What an ohmmeter reads; a part that was pulled is read alone."""
        if pulled:
            return self.fuse_ohm if measure == "fuse_ohms" else self.coil_dc
        is_apart = isolated and measure not in {"fuse_ohms", "coil_ohms"}
        return self.net(live=False, isolated=is_apart).dc_ohm(*OHMS[measure])

    def trip(self) -> None:
        """The breaker opens on far too much line current."""
        solved = self.net(called=True).solve(self.core)
        legs = [abs(solved.volts("S1", "L1") / self.line_ohm[0])]
        if not self.neutral:
            legs.append(abs(solved.volts("S2", "L2") / self.line_ohm[1]))
        self.tripped = max(legs) - abs(solved.volts("L1", "L2")) / self.beside_ac > 2.2 * self.breaker_a
