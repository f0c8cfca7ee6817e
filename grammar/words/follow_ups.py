"""What is said in the middle of a job and leans on what was said before, told by turns of phrase."""

from grammar.words.row import Cue

IT = "it|that|this|she|transformer|xfmr|trafo|tranny|trans"
BAD = "weak|bad|toast|shot|junk|gone|cooked|fried|done|dead|smoked|no-good|burnt|finished"
FOLLOW_UPS = (
    Cue(
        "verdict",
        en=(
            f"is the|my|this|that {IT} {BAD}|good|ok|okay|fine", f"so the|my {IT} {BAD}|good|ok|okay|fine|is", f"{IT} {BAD}|good|ok|okay|fine", f"is {IT} {BAD}|good|ok|okay|fine",
            f"so {IT} is {BAD}|good|ok|okay|fine", f"so its {BAD}|good|ok|okay|fine|the", "does that|this|it matter|count", "is that|this a problem|issue|concern|normal|ok|okay|bad|low|high|right", "whats|what's|what-is wrong|up with|here|then",
            "so what is|was it|wrong", "what is it then", "so whats|what's it|wrong|the", "what do you|u think|figure|say", "so|do|should|can|need|gotta i|we replace|change|swap|condemn|keep it|the|this|that", "so replace|swap|change|condemn", "replace|swap|change|condemn it|this|that|the", "do|would i|we need|want a new|another", "need a new|another one|transformer|xfmr",
            "how do i|we fix|repair|mend it|this|that", "how to fix|repair it|this|that", "what do i do about", "so its|it-is|is-it the", "could it be the", "is it the", "anything else", "call the power|utility|electric",  "what else before", "good to go", "am i good", "are we good", "we good", "so im|i'm|i-am good",
            "not the transformer|xfmr|trafo|problem", "can i leave|keep it", "is it safe to", "so what", "then what is it", "what does that mean|tell", "meaning what",
        ),
        es=(
            "esta|es|sera|estara malo|mala|mal|quemado|danado|bueno|bien|muerto el|la|eso|esto|entonces", "entonces esta|es|sera malo|mala|mal|quemado|danado|bueno|bien|muerto|el|la", "trafo|transformador malo|quemado|danado|bueno|esta", "el|este|ese trafo|transformador esta|es", "eso|esto esta mal|bien|bajo|alto", "esta mal|malo|bien|bueno", "ya no sirve|jala|funciona", "no sirve",
            "esta debil|flojo el|la", "no es el|la trafo|transformador|problema", "que tiene|trae|le-pasa|pasa", "que es entonces", "entonces que es|tiene|pasa", "importa eso", "eso importa", "es un problema", "lo|la cambio|cambiamos|reemplazo|reemplazamos|tiro", "hay que cambiarlo|cambiarla|reemplazarlo", "necesito|ocupo otro|uno nuevo", "necesito|ocupo uno", "lo tengo que cambiar", "debo cambiarlo|reemplazarlo",
            "como lo|la arreglo|reparo|compongo", "que hago con", "entonces es|sera el|la", "sera el|la", "es el|la", "algo mas", "mal|mala contacto|conexion", "llamo a la|los luz|compania|cfe",  "que mas antes", "que significa|quiere", "entonces que", "asi lo dejo", "lo dejo asi",
        ),
    ),
    Cue(
        "cause",
        en=(
            "what would|could|can|might|killed|burned|burnt|cooked|fried|blew|took|made|caused|popped|tripped|trips kill|burn|cook|fry|blow|trip|take|make|cause|have|it|them|this|that|the", "why did|would|does it|they|this|that blow|burn|fail|die|go|pop|trip|cook|open|short", "whats|what's|what-is killing|burning|blowing|tripping|cooking|causing|making",
            "what killed|burned|burnt|cooked|fried|caused|tripped|popped", "root cause", "the cause", "what happened to it", "how did it fail|burn|die",
        ),
        es=(
            "que le paso", "por eso", "que lo|la|los mato|quemo|dano|trono|boto|volo|fundio|abrio|tumbo|quema|mata|bota|dispara|disparo", "por que se quemo|dano|trono|fundio|volo|boto|murio|abrio|quema", "que causo|causa|provoco|provoca", "cual es|fue la causa", "que lo habra|pudo", "que pudo|puede haber|haberlo|quemarlo|botarlo", "causa raiz", "a que se debe|debio",
        ),
    ),
    Cue(
        "tap",
        en=(
            "which|what is the right|correct|proper one", "which|what one is|should right|correct|it|i|be", "which one then|now", "which one should|do|would it|i be|use|land", "can|could|should|may i|we just use|land|run|take the|my red|orange|black|blue|brown|other|208|240|120", "can|could|should i|we use|land|take the red|orange|black|blue|brown|other|208|240|120",
            "what if|about i|we use|land|the red|orange|the|other", "which tap|lead then|now",
        ),
        es=(
            "cual es|era|seria el|la correcto|correcta|buena|bueno|indicado", "cual le|me toca|va|corresponde|pongo", "cual entonces", "puedo|podria usar|conectar|poner el|la rojo|roja|naranja|negro|negra|azul|cafe|otro|otra|208|240|120", "uso el|la rojo|roja|naranja|otro|otra|208|240", "en cual va|lo|la", "y si uso|conecto|pongo el|la",
        ),
    ),
    Cue("size", en=("what do i|we order|get|buy",), es=("que compro|pido|consigo|compramos",)),
    Cue("wire_run", en=("how bad|much .. drop|loss", "what about the wire|run|drop"), es=("que tanto pierde|cae|baja", "cuanto pierde|cae|baja", "y el cable")),
    Cue("fuse", en=("what about fuse|fusing", "what about a|the fuse", "and|what the fuse|fusing", "how about a|the fuse", "fuse for that|it|this"), es=("y el fusible", "y de fusible")),
    Cue("picture", en=("show me|it", "draw it|me|that", "picture", "got a picture|drawing|diagram"), es=("muestrame", "ensename", "dibujalo", "un dibujo", "foto del", "me lo dibujas")),
    Cue(
        "runs",
        en=(
            "works|working now|again|good|great|fine", "up and running", "is|its|it's|shes|she's|unit|system|heat|cooling|ac|furnace|fan|everything running|cooling|heating|working|blowing", "everything|all works|good|working|running", "running|cooling|heating now|again|good|great|fine", "stat|display|screen|unit|system|furnace|thermostat came|is|back|comes on|up|back", "contactor pulled|pulls|is|came in",
            "contactor in", "heat|cool|cooling works|is|on", "it works", "works", "cool|cooling|heat|ac|air|fan came on|back", "fired|fires|started|starts right up", "fired up", "kicked on", "back on|up", "is holding", "holds now|good", "holding now|good", "all good", "good now", "fixed now",
        ),
        es=(
            "ya jala|jalo|funciona|funciono|prende|prendio|trabaja|arranco|enfria|calienta|quedo|enciende|encendio|entro|pego|pega|anda", "funciona bien|ya", "todo bien|jala|jalando|funcionando|trabajando", "ya esta|quedo jalando|funcionando|trabajando|enfriando|calentando|bien|listo", "ya no bota|vuela|truena|quema", "quedo jalando|funcionando|bien", "prendio el|la|todo", "jala bien|ya",
        ),
    ),
    Cue(
        "thanks",
        en=("thanks", "thank you", "thx", "ty", "thanks man|bro|bud", "tks", "appreciate it", "thats it", "that's it", "thats all", "that's all", "all set", "perfect", "awesome", "sweet", "cool thanks", "got it thanks"),
        es=("gracias", "muchas gracias", "mil gracias", "eso es|era todo", "es todo", "perfecto", "sale gracias", "listo gracias"),
    ),
    Cue(
        "complaint",
        en=(
            "nothing at|on stat|thermostat|tstat|board", "nothing at|on the|my stat|thermostat|tstat|board", "transformer|xfmr dead|bad|blown|again", "no cool|cooling|heat|heating|ac|air", "not|isnt|isn't|wont|won't|doesnt|doesn't cool|cooling|heat|heating|running|run|start|starting|working|work|come|kick|turn|fire|firing", "ac|unit|furnace|system|rtu|heat|condenser|compressor dead|down|out|off", "fan|motor|condenser|compressor|blower|unit dead|off|down", "quit cooling|heating|working|running", "stopped cooling|heating|working|running", "aint cooling|heating|running|working", "blowing warm|hot|cold",
        ),
        es=(
            "no enfria|calienta|prende|jala|arranca|trabaja|funciona|enciende", "trafo|transformador muerto|malo|quemado", "sin calor|frio|aire|calefaccion|clima", "no hay aire|calefaccion|frio|calor|clima", "tarjeta|unidad|equipo|sistema|aire|calefaccion|condensadora muerta|muerto|apagada|apagado|parado|parada", "dejo de enfriar|calentar|jalar|trabajar|funcionar|prender", "no sirve|jala|prende el|la aire|clima|calefaccion|calentador|unidad|equipo|nada",
        ),
    ),
)  # fmt: skip
"""Where nothing else is asked or read, a message is what the first of these says that it shows."""

SAME = frozenset({"same", "igual", "mismo", "misma", "unchanged"})
"""Words that stand for the value read before."""
TOO = frozenset({"too", "also", "tambien", "aswell"})
"""Words with which a place reads what the one before read."""
NOW = frozenset({"now", "still", "ahora", "ya", "sigue", "todavia", "again", "ahorita"})
"""Words with which a value is that of a place that was read before."""
AGAIN = (
    Cue(
        "blows_fuse",
        en=("popped|blew|blows|pops|went|burned again|instantly|immediately|too|right", "blew|popped it|this|that one too|again", "same|it popped|blew|blows", "it|that|one|this blew|popped again|too", "popped|blew when|as|soon|once"),
        es=("volo|trono|quemo|fundio|boto|vuela|truena|quema|bota otra|de-nuevo|igual|luego|tambien|enseguida", "se volvio a volar|quemar|tronar|fundir|botar"),
    ),
    Cue(
        "blown_fuse",
        en=("its|it's|is|thats|was|fuse|breaker blown|popped|bad|burnt|open|tripped", "it blown|popped|blew|tripped"),
        es=("esta|estaba|salio|fusible volado|quemado|tronado|fundido|abierto|botado|malo",),
    ),
)  # fmt: skip
"""Told of a fuse that is spoken of."""

PUT_IN = (
    Cue(
        "new",
        en=(
            "got it|them in|installed|wired|mounted|swapped", "its|it's|is in|installed|wired now|and", "new|another|one one|ones|one's in|installed|wired|going|went|is", "new ones|one's|one in", "new one", "put|stuck|dropped|installed|popped|threw a|in new|another|one", "put|stuck|dropped|installed|popped|threw another|one|new", "swapped|changed|replaced it|that|them|out", "swapped|replaced|changed", "va in", "va unit|one in", "hooked it up|back",
        ),
        es=(
            "ya|le|lo|la puse|instale|monte|conecte|cambie el|la|otro|otra|uno|una|nuevo|nueva", "puse|instale|monte|conecte otro|otra|uno|una|nuevo|nueva|el|la", "lo|la cambie|puse|instale|reemplace", "ya cambie|puse|instale|reemplace", "nuevo|nueva|otro|uno puesto|instalado|conectado|montado", "ya esta|quedo puesto|instalado|montado", "ya esta|quedo el|la nuevo|nueva|otro", "fusible nuevo|otro",
        ),
    ),
    Cue(
        "mended",
        en=(
            "fixed|repaired|redid|remade|rewired|tightened|spliced|retaped|remade|cleaned|tightened|dried|emptied|cleared|rewired|rerouted it|that|them|the|and|out", "found it", "found the short|break|problem|bad|chafed|rubbed", "it was the|a|in", "fixed", "redid", "remade",  "using|used|ran|pulled|put a|the spare|new wire|conductor", "using|used a|the spare",
        ),
        es=(
            "la|lo|los rehice", "aprete el|los|la", "ya|lo|la arregle|repare|limpie|seque|vacie|destape|empalme|aprete|quite", "lo|la arregle|repare|limpie|seque|vacie|destape|empalme|aprete", "ya lo|la arregle|repare|limpie|seque|vacie|destape|empalme|aprete|quite", "era el|la|un|una", "lo encontre", "encontre el|la corto|falla|problema", "use|puse un|otro hilo|cable", "ya quedo",
        ),
    ),
    Cue(
        "on",
        en=("pushed|pressed|reset|flipped|turned|switched|pulled it|that|them", "turned|switched|flipped it|them on|back", "reset", "reset it", "pushed|pressed it|the|that"),
        es=("lo|la subi|restableci|reinicie|prendi|aprete|conecte|encendi|levante", "subi el|la|los", "restableci", "ya|le subi|prendi"),
    ),
)  # fmt: skip
"""What was done to the part in hand, which an earlier message names."""
UNDONE = frozenset({
    "should", "would", "will", "could", "can", "if", "need", "needs", "going", "gonna", "want", "before", "when", "not", "never", "havent", "didnt", "yesterday", "ago", "last", "ill", "til", "till", "until", "anything", "what", "which", "how", "do",
    "debo", "puedo", "antes", "si", "cuando", "voy", "hay", "nunca", "ayer", "hace", "hasta", "que", "cual", "como", "necesito", "ocupo", "quiero",
})  # fmt: skip
"""Words with which nothing was done yet."""
