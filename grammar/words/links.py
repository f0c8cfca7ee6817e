"""Small words that hold a message together: joins, corrections, verbs of measuring, and the words of facts."""

from grammar.words.row import Words

LINKS = (
    Words("to", "to", en=("to", "into", "thru", "through", "->", "→", "and to"), es=("hacia", "hasta", "al", "contra")),
    Words("and", "and", en=("and", "n", "&")),
    Words("with", "with", en=("with",), es=("con",)),
    Words("or", "or", en=("or",)),
    Words(
        "between", "between",
        en=("between", "from", "btwn", "btw", "across", "acrost", "accross"),
        es=("entre", "de", "desde"),
    ),
    Words(
        "is", "is",
        en=("is", "are", "it's", "its", "that's", "thats", "=", "equals", "was at", "be"),
        es=("es", "son", "esta", "estan", "seria"),
    ),
    Words(
        "reads", "reads",
        en=(
            "reads", "read", "reading", "readings", "getting", "get", "gets", "got", "measured", "measures", "measuring",
            "shows", "showing", "seeing", "see", "have", "has", "im getting", "i'm getting", "says", "meter says",
            "comes in at", "came in at", "coming in at", "running", "sitting at", "pulls", "pulling", "draws", "drawing", "drew", "lists",
            "draw", "tests at", "checks at", "giving me", "gives me", "puts out", "putting out", "shows me", "i got", "i get",
            "showed", "spits out", "kicks out", "pushes", "pushing out", "pushing", "spitting out", "cranks out", "cranking out", "delivers", "delivering", "hands me", "spits", "makes", "making", "outputs", "outputting", "registers", "comes up", "came up", "comes back", "came back", "came back at", "comes out at", "comes out to", "came out at", "came out to", "throws me", "lands at", "settles at", "hovers at", "hovers around", "hovering around", "hanging at", "stays at", "im at", "im at a", "i see", "i read", "i measure", "i measured", "drops to", "dropped to", "drops down to", "falls to", "sags to", "sagging to", "down to", "holding",
        ),
        es=(
            "marca", "me marca", "entrega", "manda", "me manda", "registra", "arroja", "me arroja", "anda en", "anda por", "esta dando", "estoy leyendo", "estoy midiendo", "me aparece", "aparece", "me salen", "dan", "me dan", "traen", "tienen", "medimos", "me salio", "salio", "agarro", "agarre", "queda en", "se queda en", "sube a", "subio a", "bajo a", "me leyo", "mide", "me da", "da", "medi", "lee", "sale", "hay", "tengo", "me dio", "dio", "saco",
            "me sale", "tiene", "jala", "consume", "baja a", "se cae a", "cae a", "me lee", "midio", "marco", "me marco",
            "saque", "lectura", "leo", "mido", "leyo", "consumen", "jalan", "llega", "llegan", "recibe", "trae",
        ),
    ),
    Words(
        "at", "at",
        en=("on", "at", "on the", "at the", "on my", "at my", "off"),
        es=("en", "en el", "en la", "del", "en los", "sobre", "a traves de", "a traves del", "a traves"),
    ),
    Words(
        "not", "not",
        en=("not", "isn't", "isnt", "wasn't", "wasnt", "weren't", "aint", "ain't", "instead of", "rather than", "nt", "not the"),
        es=("en vez de", "en lugar de"),
    ),
    Words("no", "no", both=("no",)),
    Words(
        "withdraw", "scratch",
        en=(
            "scratch that", "scratch", "no wait", "wait no", "nope", "strike that", "make that", "make it", "i mean", "oops",
            "whoops", "sorry", "sry", "wait", "correction", "my bad", "rather", "actually", "hold on", "er", "no sorry",
            "sorry no", "oops no", "no i mean", "excuse me", "let me correct that", "my mistake", "oops i mean", "no make that",
            "fat fingered that", "typo", "hang on", "hold up", "oh wait", "wait a sec", "wait wait", "no no", "i lied", "no i lied", "check that",
            "let me fix that", "let me redo that", "or rather", "uh no", "whoops no", "wait a minute", "oh sorry", "im sorry", "sorry i meant", "oops meant", "nah", "fat fingered it", "my fault", "wait i meant",
            "sorry about that", "correction on that", "hang on no", "hold on no", "come to think of it", "on second look", "my b", "ope",
        ),
        es=(
            "no espera", "espera no", "espera", "perdon", "digo", "mejor dicho", "corrijo", "correccion", "no perdon",
            "me equivoque", "no digo", "perdon no", "disculpa", "ups", "miento", "no miento", "me confundi", "borra eso",
            "rectifico", "quiero decir", "era error", "que diga", "perdon quise decir", "perdon digo", "o mas bien", "mas bien", "ay no", "mentira", "dije mal", "espera espera", "no no",
            "fe de erratas", "perate", "no perate", "pera", "perame", "esperate no", "no esperate", "esperame", "espera tantito", "espérame", "no hombre", "chin", "ah perdon", "uy no", "no es cierto", "aguantame", "no cierto", "disculpa no", "ah no", "me equivoque digo", "lo dije mal", "espérate",
        ),
    ),
    Words(
        "replace", "replace",
        en=(
            "meant", "i meant", "should be", "should have been", "should say", "supposed to say", "change", "change the",
            "correct", "change it to", "correct to", "fix that to", "update", "meant to say", "should've been", "shoulda been",
            "disregard", "ignore", "wrong number", "was wrong", "is wrong", "not right", "thats wrong", "got it wrong",
            "had it wrong", "wrong reading", "wrong on the", "fix", "replace", "change that to", "it should be", "misread",
            "mistyped", "redo", "fat fingered", "fat fingered the", "messed up the", "botched the", "switch the", "edit the", "gave you the wrong", "sent the wrong", "typed the wrong", "put the wrong",
            "typed it wrong", "wrote it wrong", "read it wrong", "read that wrong", "said it wrong", "had that wrong", "were wrong", "was a typo", "is a typo", "thats a typo", "was a mistake",
        ),
        es=(
            "quise decir", "quise poner", "queria decir", "queria poner", "cambia", "cambiar", "cambiale", "corrige",
            "deberia ser", "debe ser", "ignora", "estaba mal", "esta equivocado", "era", "reemplaza", "actualiza",
            "me equivoque en", "no hagas caso", "olvida el", "equivocado", "lei mal", "lo lei mal", "medi mal", "escribi mal", "te di mal", "puse mal", "apunte mal", "estuvo mal", "es incorrecto",
            "corrijo el", "corregir", "cambialo a", "modifica", "me equivoque con", "deberia decir", "debe decir",
        ),
    ),
    Words(
        "expected", "expected",
        en=(
            "should read", "supposed to be", "supposed to read", "should see", "should have", "ought to be", "should measure",
            "should get", "should show", "normally", "expecting", "expected",
        ),
        es=(
            "debe dar", "deberia dar", "debe marcar", "deberia marcar", "deberia leer", "deberia tener", "debe tener",
            "deberia haber", "debe haber", "se supone que",
        ),
    ),
    Words(
        "was", "was",
        en=("was", "used to be", "had been", "were", "started at", "went from"),
        es=("estaba", "estaba en", "antes", "tenia"),
    ),
    Words(
        "was", "said",
        en=("i said", "i told you", "i put", "i wrote", "i sent", "i sent you", "i gave you", "i texted", "i typed", "said earlier", "i had", "i said earlier", "i told u", "i had said", "i had told you"),
        es=("te dije", "dije", "te mande", "te puse", "puse", "escribi", "te di", "habia dicho", "te habia dicho", "yo dije"),
    ),
    Words("now", "now", en=("now", "now its", "now it's", "right now", "currently"), es=("ahora", "ya")),
    Words(
        "each", "each",
        en=("each", "ea", "apiece", "a piece", "per"),
        es=("cada uno", "cada una", "c/u", "cada", "por cada uno"),
    ),
    Words(
        "total", "total",
        en=(
            "total", "altogether", "all together", "in all", "sum", "adds up to", "comes to", "totals", "totaling",
            "grand total", "combined", "add up to", "added up",
        ),
        es=("en total", "suma", "suman", "totales", "todo suma"),
    ),
    Words(
        "inrush", "inrush",
        en=("inrush", "surge", "startup", "start up", "to pull in", "peak", "on startup", "at startup", "pull in", "pull-in", "pickup va", "in rush", "pulling in", "pulls in at", "pull in at"),
        es=("arranque", "de arranque", "al arrancar", "pico"),
    ),
    Words(
        "sealed", "sealed",
        en=("sealed", "once sealed", "after that", "once pulled in", "when held", "held in", "continuous", "holding va", "hold", "holds", "steady", "steady state"),
        es=("sellado", "sostenido", "de retencion", "parejo"),
    ),
    Words(
        "rating", "contacts",
        en=("rated", "contacts rated", "contact rating", "contacts are rated", "rated for", "rating", "good for"),
        es=("de capacidad", "capacidad"),
    ),
    Words(
        "nameplate", "nameplate",
        en=(
            "nameplate", "name plate", "tag", "data plate", "dataplate", "plate", "sticker", "label says", "stamped",
            "label reads", "tag says", "nameplate says", "rated at", "name tag",
        ),
        es=("placa de datos", "etiqueta dice", "la placa dice", "datos de placa", "placa dice"),
    ),
    Words(
        "label", "label",
        en=("label", "labels", "legend", "print says", "print calls", "print shows", "the print", "prints", "schematic", "schematic says", "label on it", "key", "diagram", "wiring diagram"),
        es=("etiqueta", "diagrama", "leyenda", "rotulo", "dibujo", "plano"),
    ),
    Words(
        "supply", "supply",
        en=(
            "supply", "building", "bldg", "bldng", "service", "supply voltage", "system voltage", "building voltage",
            "service voltage", "voltage here is", "unit voltage", "site voltage", "power here", "house is", "store is",
            "shop is", "this unit is", "unit is", "system is", "bulding", "site", "the place is", "power here is", "fed with",
            "fed by", "feed", "supply is", "source", "nominal", "power is", "have to work with", "circuit here is",
            "equipment is", "three phase", "3 phase", "single phase", "1 phase", "3ph", "1ph", "3 ph", "runs on", "runs off", "running off", "runs off of", "powered by",
        ),
        es=(
            "edificio", "suministro", "alimentacion", "servicio electrico", "la unidad es de", "equipo es de", "unidad es de",
            "equipo de", "la casa es de", "fuente", "voltaje del edificio", "suministro de", "trifasico", "monofasico", "trifasica", "monofasica", "corre con",
        ),
    ),
    Words(
        "tapword", "tap",
        en=(
            "tap", "taps", "tapped", "tapped for", "tapped at", "strapped for", "wired for", "set for", "set to",
            "jumpered for", "landed on", "landed on the", "wired to", "connected to", "hooked to", "tap is", "lead used", "tap in use", "tap in use is", "tap being used", "tap being used is", "tap used",
            "wired on",
        ),
        es=("toma", "derivacion", "tomas", "conectado al de", "conectado en", "conectado en el", "conectado en el cable", "conectado al", "conectado al cable", "tap es", "tap en uso", "tap en uso es", "toma en uso"),
    ),
    Words(
        "lands", "lands",
        en=("landed", "lands on", "lands", "goes to", "is on", "is landed on", "goes on", "tied to", "going to"),
        es=("conecte", "va en", "va en el", "va a", "esta en", "puesto en", "va al", "aterrice en"),
    ),
    Words(
        "capped", "capped",
        en=(
            "capped", "capped off", "capped separately", "wire nutted", "not used", "unused", "spare", "cap off", "taped off",
            "taped",
        ),
        es=("tapado", "tapados", "sin usar", "encintado", "sobrante", "libre"),
    ),
    Words(
        "run", "run",
        en=(
            "run", "wire run", "cable run", "length", "long", "distance", "one way", "run of", "homerun", "home run",
            "each way", "away",
        ),
        es=("de largo", "distancia", "corrida", "tirada", "recorrido", "de distancia", "de ida"),
    ),
    Words(
        "round_trip", "round_trip",
        en=(
            "round trip", "roundtrip", "there and back", "out and back", "down and back", "both ways", "round-trip",
            "up and back", "total loop", "loop length",
        ),
        es=("ida y vuelta", "de ida y vuelta", "viaje redondo", "ida y regreso", "total de ida y vuelta"),
    ),
    Words(
        "gaugeword", "gauge",
        en=("size wire", "wire size"),
        es=("calibre", "del calibre", "cal", "calibre del"),
        both=("#", "awg:"),
    ),
    Words(
        "cableword", "cable",
        en=(
            "stat wire", "thermostat wire", "tstat wire", "thermostat cable", "stat cable", "solid", "copper", "conductors",
            "romex", "t-stat wire", "control wire", "low voltage wire",
        ),
        es=("cable de termostato", "alambre de termostato", "cobre", "cable del termostato"),
    ),
    Words("stranded", "stranded", en=("stranded", "strands"), es=("trenzado", "cable trenzado", "multifilar")),
    Words("common", "common", en=("common", "com", "cmn", "comm", "neutral"), es=("comun", "neutro", "el comun")),
    Words(
        "plate_high", "reads",
        en=(
            "multi tap", "multitap", "multi-tap", "taps are", "taps for", "dual voltage", "quad tap", "multi voltage",
            "multivolt",
        ),
        es=("multitap", "multivoltaje", "taps de", "varias tomas"),
    ),
    Words("change", "change", en=("and change", "n change", "and some change")),
    Words("all", "all", en=("all",), es=("todo", "todos", "todas")),
    Words(
        "both", "both",
        en=("both", "either", "both windings", "each winding", "both sides"),
        es=("ambos", "ambas", "los dos", "las dos", "ambos devanados", "los dos devanados"),
    ),
    Words(
        "centre", "ct",
        en=("center tap", "ct", "centertap", "centre tap", "center-tap"),
        es=("toma central", "derivacion central"),
    ),
    Words(
        "idword", "id",
        en=(
            "class", "cat", "rm", "unit", "unit #", "rtu", "ahu", "room", "suite", "apt", "ste", "job", "ticket", "wo", "work order",
            "invoice", "route", "hwy", "highway", "model", "serial", "part", "part number", "pn", "p/n", "sn", "s/n", "mod",
            "extension", "ext", "zone", "floor", "page", "step", "number", "no.", "item", "system", "call", "stage", "fc",
            "acct", "po", "rooftop unit", "rooftop", "store #", "gate code", "code", "door code", "truck", "van", "lot",
            "case #", "error", "error code", "fault", "fault code", "group", "bay", "dock", "building #", "option", "circuit",
            "breaker", "slot", "figure", "version", "school", "church",
        ),
        es=(
            "clase", "unidad", "cuarto", "habitacion", "apartamento", "depto", "trabajo", "orden", "factura", "modelo", "serie",
            "pieza", "parte", "numero de parte", "local", "piso", "zona", "codigo", "suite numero", "equipo", "sistema",
            "calle", "casa", "puerta",
        ),
    ),
)  # fmt: skip
