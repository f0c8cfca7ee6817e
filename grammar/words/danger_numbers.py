"""Numbers as they are spoken, where danger is told by them: volts of supplies and taps, amps of fuses and breakers."""

from typing import Final

_SPOKEN: Final = {
    "120": "one twenty, a hundred and twenty, hundred twenty, ciento veinte", "115": "one fifteen, ciento quince", "110": "one ten, ciento diez", "119": "one nineteen, a hundred and nineteen, hundred nineteen",
    "208": "two oh eight, two o eight, two zero eight, doscientos ocho, dos cero ocho, dos ocho", "240": "two forty, two hundred forty, doscientos cuarenta, dos cuarenta", "241": "two forty one", "230": "two thirty, doscientos treinta", "220": "two twenty, doscientos veinte, dos veinte",
    "277": "two seventy seven, two seven seven, two seventy, doscientos setenta y siete, dos setenta y siete", "480": "four eighty, four hundred eighty, cuatrocientos ochenta, cuatro ochenta", "460": "four sixty, cuatrocientos sesenta, cuatro sesenta", "440": "four forty, cuatrocientos cuarenta", "347": "three forty seven",
    "24": "twenty four, veinticuatro", "25": "twenty five, veinticinco", "26": "twenty six, veintiseis", "27": "twenty seven, veintisiete", "40": "forty, cuarenta", "48": "forty eight, cuarenta y ocho", "75": "seventy five, setenta y cinco", "50": "fifty, cincuenta",
    "3": "three, tres", "5": "five, cinco", "6": "six, seis", "7": "seven, siete", "8": "eight, ocho", "10": "ten, diez", "15": "fifteen, quince", "20": "twenty, veinte", "30": "thirty, treinta", "60": "sixty, sesenta", "45": "forty five, cuarenta y cinco", "80": "eighty, ochenta", "90": "ninety, noventa",
}  # fmt: skip


def _by_first_word() -> dict[str, tuple[tuple[tuple[str, ...], str], ...]]:
    """The longest first, so that "two forty one" is no 240."""
    rows = [(tuple(spelling.split()), figure) for figure, line in _SPOKEN.items() for spelling in line.split(", ")]
    rows.sort(key=lambda row: -len(row[0]))
    return {spelt[0]: tuple(row for row in rows if row[0][0] == spelt[0]) for spelt, _ in rows}


NUMBERS: Final = _by_first_word()
"""Spoken numbers by their first word."""
