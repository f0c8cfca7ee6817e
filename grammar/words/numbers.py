"""Numbers in words. The meaning of a row is its value."""

from functools import cache

from grammar.words.row import Words

NUMBERS = (
    Words("spoken", "0", en=("zero", "oh", "naught"), es=("cero",)),
    Words("spoken", "1", en=("one",), es=("uno", "un", "una")),
    Words("spoken", "2", en=("two",), es=("dos",)),
    Words("spoken", "3", en=("three",), es=("tres",)),
    Words("spoken", "4", en=("four",), es=("cuatro",)),
    Words("spoken", "5", en=("five",), es=("cinco",)),
    Words("spoken", "6", en=("six",), es=("seis",)),
    Words("spoken", "7", en=("seven",), es=("siete",)),
    Words("spoken", "8", en=("eight",), es=("ocho",)),
    Words("spoken", "9", en=("nine", "niner"), es=("nueve",)),
    Words("spoken", "10", en=("ten",), es=("diez",)),
    Words("spoken", "11", en=("eleven",), es=("once",)),
    Words("spoken", "12", en=("twelve",), es=("doce",)),
    Words("spoken", "13", en=("thirteen",), es=("trece",)),
    Words("spoken", "14", en=("fourteen",), es=("catorce",)),
    Words("spoken", "15", en=("fifteen",), es=("quince",)),
    Words("spoken", "16", en=("sixteen",), es=("dieciseis", "diez y seis")),
    Words("spoken", "17", en=("seventeen",), es=("diecisiete", "diez y siete")),
    Words("spoken", "18", en=("eighteen",), es=("dieciocho", "diez y ocho")),
    Words("spoken", "19", en=("nineteen",), es=("diecinueve", "diez y nueve")),
    Words("spoken", "20", en=("twenty",), es=("veinte",)),
    Words("spoken", "21", es=("veintiuno", "veintiun")),
    Words("spoken", "22", es=("veintidos",)),
    Words("spoken", "23", es=("veintitres",)),
    Words("spoken", "24", es=("veinticuatro",)),
    Words("spoken", "25", es=("veinticinco",)),
    Words("spoken", "26", es=("veintiseis",)),
    Words("spoken", "27", es=("veintisiete",)),
    Words("spoken", "28", es=("veintiocho",)),
    Words("spoken", "29", es=("veintinueve",)),
    Words("spoken", "30", en=("thirty",), es=("treinta", "treinta y")),
    Words("spoken", "40", en=("forty", "fourty"), es=("cuarenta", "cuarenta y")),
    Words("spoken", "50", en=("fifty",), es=("cincuenta", "cincuenta y")),
    Words("spoken", "60", en=("sixty",), es=("sesenta", "sesenta y")),
    Words("spoken", "70", en=("seventy",), es=("setenta", "setenta y")),
    Words("spoken", "80", en=("eighty",), es=("ochenta", "ochenta y")),
    Words("spoken", "90", en=("ninety",), es=("noventa", "noventa y")),
    Words("spoken", "100", en=("hundred", "hundred and", "a hundred", "a hundred and"), es=("cien", "ciento")),
    Words("spoken", "200", es=("doscientos", "doscientas")),
    Words("spoken", "300", es=("trescientos", "trescientas")),
    Words("spoken", "400", es=("cuatrocientos", "cuatrocientas")),
    Words("spoken", "500", es=("quinientos", "quinientas")),
    Words("spoken", "1000", en=("thousand", "a thousand"), es=("mil",)),
    Words("spoken", "1000000", en=("million", "a million"), es=("millon", "un millon", "millones")),
    Words("spoken", "0.5", en=("half", "half a", "half an", "a half", "one half", "half of an"), es=("medio", "media")),
    Words(
        "spoken", "0.25",
        en=("quarter", "a quarter", "quarter of an", "a quarter of an", "quarter of a", "a quarter of a"),
        es=("un cuarto de",),
    ),
    Words("spoken", "0.75", en=("three quarters", "three quarters of an", "three quarter"), es=("tres cuartos de",)),
    Words("fraction", "0.5", en=("and a half", "and one half", "and half", "n a half", "& a half"), es=("y medio", "y media")),
    Words("fraction", "0.25", en=("and a quarter", "and one quarter"), es=("y cuarto", "y un cuarto")),
    Words("fraction", "0.75", en=("and three quarters",), es=("y tres cuartos",)),
    Words("fraction", "tenths", en=("tenths", "tenth", "tenths of an", "tenths of a"), es=("decimas", "decimas de", "decima de")),
    Words("point", "point", en=("point", "pt", "decimal", "dot"), es=("punto", "coma")),
    Words(
        "about", "about",
        en=(
            "about", "around", "roughly", "dead on", "dead on the money", "right on the money", "on the money at", "dead nuts", "a solid", "aint but", "isnt but", "not but", "nothing but", "a steady", "a good", "a strong", "a weak", "a measly", "a whopping", "barely", "exactly", "only", "just", "a full", "full", "every bit of", "pretty close to", "darn near", "damn near", "right about", "approx", "approximately", "circa", "close to", "nearly", "almost", "just about",
            "just over", "just under", "right at", "somewhere around", "right around", "bout", "abt", "a little over",
            "a little under", "a hair over", "a hair under", "a touch over", "maybe",
        ),
        es=(
            "como", "aproximadamente", "apenas unos", "exactamente", "nomas", "solo", "puros", "justo", "mero", "unos como", "casi casi", "arribita de", "abajito de", "casi", "alrededor de", "mas o menos", "unos", "unas", "cerca de", "como unos", "aprox",
            "apenas",
        ),
        both=("~", "≈", "±", "+/-"),
    ),
    Words(
        "over", "over",
        en=("over", "greater than", "more than", "above", "north of", "upwards of", "better than"),
        es=("mas de", "mayor de", "mayor a", "arriba de", "por encima de"),
        both=(">", ">=", "≥"),
    ),
    Words(
        "under", "under",
        en=("less than", "under", "below"),
        es=("menos de", "menor de", "por debajo de", "abajo de"),
        both=("<", "<=", "≤"),
    ),
)  # fmt: skip

PLAIN_TOO = frozenset({"a", "one", "un", "una", "uno", "once", "oh", "over", "under", "for", "to"})
"""Words for a number that are ordinary words as well."""


@cache
def number_words() -> frozenset[str]:
    """Words that are a number or a part of one and nothing else."""
    kinds = {"spoken", "fraction"}
    return frozenset(word for row in NUMBERS if row.kind in kinds for word in (*row.en, *row.es)) - PLAIN_TOO
