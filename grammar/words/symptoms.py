"""Symptoms, told by turns of phrase."""

from grammar.words.row import Cue

SYMPTOMS = (
    Cue(
        "no_control_power",
        en=(
            "screen|screens|display|displays|screen's|display's dead|blank|dark|off|out", "no juice|power|voltage|volts at|to|on|for the|my|a|this stat|thermostat|tstat|display", "no 24", "isnt|aint|not|dont|doesnt|wont|didnt|isn't|don't|doesn't|won't|never send|sending|get|getting|gets|see|seeing|make|making|put|putting|give|giving|have|receive|receiving 24", "isnt|aint|not|dont|doesnt|wont|didnt|isn't|don't|doesn't|won't|never send|sending|get|getting|see|seeing|make|making|have any|my|the|out 24", "no 24v", "no 24 volts", "no 24vac", "no control power", "no control voltage", "no low voltage",
            "not getting 24", "not getting .. 24", "aint getting 24", "isnt getting 24", "don't have 24", "dont have 24",
            "doesn't have 24", "doesnt have 24", "no twenty four",
            "stat|tstat|thermostat|display|t-stat|screen .. blank|dead|dark", "stat|tstat|thermostat|t-stat has no display",
            "blank|dead|dark stat|tstat|thermostat|t-stat|screen", "lost|missing|losing .. 24", "lost control power|voltage",
            "no controls", "missing 24",
            "stat|thermostat|tstat|display wont|won't|doesn't|doesnt|isnt|isn't|not power|light|come|turn up|on",
            "stat|thermostat|tstat is|went|goes|was|has|just off|out|blank|dead|dark",
            "nothing on the stat|thermostat|tstat|display|screen", "no 24 at .. board|stat", "no display",
            "no power at|to|on the|my|this|a stat|thermostat|tstat",
            "stat|thermostat|tstat|t-stat got|has|with no|nothing power|display|on", "no 24 anywhere", "no lv power",
            "no lights|light|led on .. board", "no led on",
        ),
        es=(
            "stat|tstat .. apagado|apagada|muerto|muerta|blanco", "no hay 24", "no hay los|el 24", "no le|me|nos|les llega|llegan|entra|entran|manda|mandan|da|dan|sale|salen los|el|las|sus 24", "no le|me|nos|les entra|entran 24", "no tenemos|tienen|tiene los|el 24", "no tenemos|tienen 24", "se fue|fueron|perdio|perdieron los|el 24", "perdimos|perdio|perdieron los|el 24", "sin 24", "no manda|sale|saca|recibe|trae|entrega|marca|tiene|mandan|reciben|da|hay|llega .. 24", "no me|le|nos da|llega|manda|sale|marca 24", "no esta|estan llegando|saliendo|recibiendo|mandando|dando|entregando .. 24", "no llegan .. 24", "no tengo 24", "no tiene 24", "no me da .. 24", "no da .. 24",
            "nada en el termostato", "no llega .. 24", "termostato .. apagado|muerto|blanco", "pantalla .. apagada|muerta|blanco",
            "sin voltaje de control", "no llega|llegan|hay|tengo|da voltaje|corriente de|del control",
            "no hay voltaje de control", "no hay control", "termostato .. sin pantalla",
            "termostato|termo no prende|enciende|jala", "sin control de 24", "no salen .. 24",
            "termostato esta|quedo|se en|apago|apagado|muerto|blanco", "termostato no tiene|da|muestra pantalla|luz|nada",
            "falta .. 24", "perdi .. 24",
        ),
    ),
    Cue(
        "intermittent",
        en=(
            "goes|went|cuts|shuts|kicks|quits|dies|drops .. comes|came|come back|on", "every hour|day|few .. then|comes", "comes and goes", "come and go", "in and out", "intermittent", "intermittently", "on and off", "off and on",
            "every now and then", "sometimes", "once in a while", "works then quits", "works .. then .. quits|stops|dies",
            "cuts in and out", "cuts out", "cutting in and out", "drops out", "randomly", "random", "sporadic", "some days",
            "now and then", "from time to time", "comes goes", "erratic", "on again off again", "keeps rebooting|resetting|restarting|cycling", "se reinicia|resetea|reinicio",
            "only when .. rains|wet|hot|warm", "quits|stops|dies .. then .. works", "acts up", "hit or miss", "hit and miss",
        ),
        es=(
            "va y viene", "se va|apaga|corta .. y|luego|regresa regresa|vuelve|prende", "intermitente", "a veces", "de vez en cuando", "a ratos", "se va y regresa", "por ratos",
            "se corta y regresa", "viene y va", "prende y se apaga", "se prende y se apaga", "de repente se va", "de repente",
            "falla a veces", "algunas veces", "jala y luego no",
        ),
    ),
    Cue(
        "hot",
        en=(
            "still hot|roasting", "hot too|also|as", "too hot", "hot to .. touch", "very hot", "real hot", "really hot", "super hot", "burning hot", "getting hot",
            "runs hot", "running hot", "pretty hot", "transformer|xfmr .. hot", "is hot", "gets hot", "hot as", "overheating",
            "overheats", "overheated", "cant touch", "can't touch", "can't hold|touch .. hand", "burned my hand|finger",
            "smoking hot", "cooking hot", "feels hot", "awful hot", "so hot", "cant keep|hold .. hand",
            "can't keep|hold .. hand", "it's hot", "its hot", "not hot", "hot transformer|xfmr",
            "burns my|your|the hand|finger|fingers", "hot enough to", "scorching", "hotter than",
        ),
        es=(
            "tambien caliente", "muy caliente", "esta caliente", "esta .. caliente", "y caliente", "caliente y", "queda caliente", "bien caliente",
            "se calienta", "calienta mucho", "hirviendo", "sobrecalienta", "sobrecalentado", "no se puede tocar",
            "quema la mano", "esta hirviendo", "calientisimo", "demasiado caliente", "caliente al tacto", "se esta calentando",
            "calentando", "ardiendo", "quema al tocar|tocarlo", "trafo|transformador|transformer caliente", "super caliente",
            "no esta caliente", "no se aguanta", "calientito",
        ),
    ),
    Cue(
        "hum",
        en=(
            "hum", "hums", "humming", "hummin", "buzz", "buzzing", "buzzes", "buzzin", "loud hum", "whining", "growling",
            "vibrating loud", "sings", "growls",
        ),
        es=("zumba", "zumbando", "zumbido", "zumbar", "vibra mucho", "hace ruido de zumbido", "ronronea", "zumban"),
    ),
    Cue(
        "burnt",
        en=(
            "burnt", "burned", "smells|smell|smelled|looks|looked cooked|fried|toasted|toasty|scorched|toast", "burnt smell", "smells burnt|burned|like", "burning smell", "smell .. burning|burnt",
            "smells burning", "scorched", "charred", "melted", "burnt up", "burn mark|marks", "discolored", "brown spot",
            "smelled burnt|burned|like", "cooked smell", "fried smell", "burn smell", "black mark|marks|spot", "toasted",
            "singed", "burnt looking", "crispy", "something burning", "electrical smell|burning", "stinks",
        ),
        es=(
            "huele a quemado", "huele a tostado", "huele tostado", "quemado", "quemada", "chamuscado", "olor a quemado", "derretido", "tostado", "huele quemado",
            "se quemo", "achicharrado", "huele .. quemado|chamuscado", "chamuscada", "derretida", "se derritio",
            "marcas de quemado",
        ),
    ),
    Cue(
        "blows_fuse",
        en=(
            "keeps blowing", "keep blowing", "ate|eats|eat|eaten another|more fuse|fuses", "ate .. fuse|fuses", "blowing fuses", "blows fuses", "eats fuses", "eating fuses", "popping fuses",
            "keeps popping", "pops fuses", "quits popping", "stop|stops|quit|quits popping|blowing", "blows .. fuse|fuses",
            "pops .. fuse|fuses", "blowing .. fuse|fuses", "popping .. fuse|fuses", "keeps .. blowing|popping .. fuse|fuses",
            "blows every", "pops every", "blow fuses", "third|second|fourth|2nd|3rd|4th fuse",
            "fuse|fuses keeps|keep blowing|popping|burning|going", "burning through fuses", "going through fuses",
            "blows right away", "blows .. again", "blew .. fuses", "blew again and again",
            "blown 2|3|4|two|three|four|several fuses", "fuse blows|pops",
            "fuse .. blows|pops .. every|again|when|right|as|immediately|instantly", "it blows", "gone through .. fuses", "went|going|been|goes through .. fuses", "burned through .. fuses",
            "took out .. fuses", "kills fuses", "pops again", "popped 2|3|4|two|three|four",
            "doesnt|won't|wont|doesn't|not blow .. again", "eats a fuse",
        ),
        es=(
            "se sigue volando", "sigue volando", "se sigue quemando", "sigue quemando fusibles", "quema fusibles",
            "vuela fusibles", "truena fusibles", "quema .. fusible", "vuela .. fusible", "truena .. fusible",
            "se vuela .. cada", "se vuelan", "se la pasa volando", "volando fusibles", "quemando fusibles", "tronando fusibles",
            "sigue tronando", "se vuela otra", "se quema cada", "sigue botando|volando|tronando|quemando|fundiendo",
            "funde fusibles", "funde .. fusible", "fusible|fusibles se vuela|quema|truena|funde", "ya van|lleva .. fusibles",
            "ya quemo .. fusibles", "ya volo .. fusibles",
            "fusible|fusibles .. vuela|truena|vuelan|truenan .. cada|vez|rato|siempre",
        ),
    ),
    Cue(
        "trips_breaker",
        en=(
            "trips .. breaker", "tripped .. breaker", "tripping .. breaker", "breaker trips", "breaker tripped",
            "breaker .. tripping|trips|tripped", "breaker .. trip", "kicks .. breaker", "pops .. breaker", "popped .. breaker",
            "trip .. breaker", "breaker .. pops|popping|kicks|kicking|blows", "breaker .. goes|going|went|flips|flipping|snaps|shuts|cuts|jumps off", "knocks .. breaker", "throws .. breaker",
            "breaker won't|wont hold|reset|stay", "keeps tripping", "it trips", "breaker popped|kicked", "tripped twice",
            "tripped again",
        ),
        es=(
            "bota .. breaker", "truena|trueno|trono|vuela|quema|apaga .. breaker|pastilla", "se bota .. breaker", "brinca .. breaker", "tumba .. breaker", "dispara .. breaker",
            "breaker|pastilla|termico|termica estaba|estaban|esta botado|botada|disparado|disparada|brincado|tumbado|tirado", "boto .. breaker", "breaker .. bota|dispara|brinca|salta|boto|disparo|tumba|cae|brinco|salto",
            "salta .. breaker|pastilla|termico", "bota .. pastilla|termica", "disparo .. breaker", "se dispara",
            "pastilla .. bota|dispara|brinca|boto|salta", "tira .. breaker|pastilla", "tumbo .. breaker",
            "salto .. breaker|pastilla", "brinco .. breaker|pastilla", "breaker se", "se bota", "se esta botando",
            "botando .. breaker|pastilla",
        ),
    ),
    Cue(
        "chatter",
        en=(
            "chatter", "chatters", "chattering", "chatterin", "chattered", "machine gunning", "machine gun", "machinegun", "buzzing in and out", "wont hold in", "won't hold in", "drops in and out", "pulls in and drops|falls", "clicking on and off", "clacking",
            "contactor .. clicking|fluttering|bouncing|dancing", "relay .. clicking|fluttering", "fluttering",
            "bouncing contactor", "pulling in and out", "won't stay pulled", "wont stay pulled", "rapid clicking",
            "clicking like crazy", "flutters",
        ),
        es=(
            "castanea", "castaneteo", "castaneo", "traqueteo", "tableteo", "golpeteo", "matraqueo", "castaneando", "castaneteando", "castanetea", "tiembla el contactor",
            "contactor .. vibra|vibrando|tiembla|brinca|castanea|brincando|golpetea|traquetea", "traquetea", "traqueteando",
            "chisporrotea el contactor", "matraquea", "chattering", "pega y despega", "contactor entra y sale", "metrallea",
            "golpetea",
        ),
    ),
    Cue(
        "blown_fuse",
        en=(
            "blown|popped 1|2|3|4|5|7|10 amp|amps|a", "fuse blown", "fusible blown|blew|popped", "fusible is|was blown|popped|gone|bad", "fuse .. i|he|she|we|they|somebody|someone|customer .. blown|blew|popped|gone|shot|toast", "blown fuse", "fuse .. blown", "fuse blew", "fuse popped", "popped .. fuse", "blew .. fuse",
            "found .. blown", "bad fuse", "popped fuse", "fuse .. is|was bad|shot|gone|toast|popped|fried|dead",
            "fuse is blown", "fuse was blown", "fuse|fuses blown|blew|popped", "burnt|burned fuse", "fuse burned|burnt",
            "fuse .. blew|popped", "blown 3|5|2 .. fuse", "blown .. fuse", "fuse went",
        ),
        es=(
            "fuse .. volado|quemado|fundido|tronado|trono|quemo|volo|fundio", "fuse se", "fusible volado", "fusible .. que .. tronado|volado|fundido|trono|fundio", "fusible quemado", "fusible fundido", "se volo .. fusible", "se quemo .. fusible",
            "trono .. fusible", "fusible tronado", "fusible .. volado|quemado|fundido|tronado|volo|trono|quemo|fundio",
            "volo .. fusible", "exploto .. fusible", "fundio .. fusible", "fusible malo", "fusible se volo|quemo|fundio|trono",
            "se fundio .. fusible", "fusible botado|danado",
        ),
    ),
    Cue(
        "shock",
        en=(
            "shock", "shocked", "my|his|her bell rung", "rang|rung my|his bell", "tickle", "tickles", "tickled", "felt a tingle", "felt it bite", "got buzzed", "it buzzed me", "buzzed me", "kicked me", "got stung", "nipped me", "got nipped", "jolted", "got bit", "bit me", "got zapped", "zapped", "zapped me", "tingle", "tingled", "tingling",
            "tingles", "lit me up", "got lit up", "got hit", "it hit me", "knocked me", "got nailed", "shocking",
            "got a jolt", "jolt", "electrocuted", "got poked", "bit by", "gives .. shock", "shocks me|him|her|you", "it shocks", "got a buzz off|from",
            "hung up on it", "feel it in my arm|hand", "a poke from", "got popped by", "got tickled", "it bites", "zap",
            "got knocked",
        ),
        es=(
            "me dio un toque", "toque", "me dio cosquillas", "me toco la corriente", "me sacudio", "me dio la corriente", "senti la corriente", "senti corriente", "me tumbo la corriente", "me dio un jalon", "me dio una sacudida", "me dieron toques", "da toque", "toques", "me dio toques", "da toques", "descarga electrica", "me dio corriente",
            "me agarro la corriente", "choque electrico", "me electrocuto", "calambre", "me pego la corriente",
            "me dio .. toque", "sentí .. toque", "hormigueo", "me pico la corriente", "cosquilleo", "cosquillas",
            "me dio un chispazo", "me dio un calambrazo", "calambrazo", "me pateo", "me agarro .. corriente",
            "me pego corriente", "da corriente al tocar", "chicotazo", "me dio una descarga", "pasa corriente",
        ),
    ),
    Cue(
        "smoke",
        en=(
            "smoke", "smoking", "smoked", "smoky", "puff of", "let the smoke out", "magic smoke", "smokin", "saw smoke",
            "smoke coming", "smokes",
        ),
        es=(
            "humo", "humeando", "echa humo", "sale humo", "saco humo", "humea", "humito", "ahumado", "echo humo",
            "echando humo",
        ),
    ),
)  # fmt: skip
"""Each symptom of core with the phrases that tell it. A denied one ("no hum") is none."""
