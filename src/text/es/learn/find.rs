//! Finding a signal, in Spanish. Words stand without their accents as well, as pupils type them.

use crate::learn::find::FindWords;
use rules::Signal;

/// In Spanish.
pub static WORDS: FindWords = FindWords {
    find: "Buscar una señal",
    find_hint: "Una palabra, o lo que pasó",
    find_nothing: "Ninguna señal encontrada. Prueba otra palabra o míralas todas.",
    find_examples: [
        "tocó la red",
        "pisó la línea",
        "balón en la antena",
        "cambian dos jugadores",
    ],
    said,
    filler: &[
        "el", "la", "los", "las", "lo", "le", "un", "una", "unos", "unas", "de", "del", "al", "a",
        "en", "con", "por", "para", "y", "e", "o", "que", "se", "su", "sus", "es", "era", "fue",
        "está", "esta", "estaba", "ha", "han", "había", "habia", "no", "ya", "muy", "jugador",
        "jugadora", "balón", "balon", "pelota",
    ],
};

fn said(of: Signal) -> &'static str {
    match of {
        Signal::AuthoriseService => {
            "autorizar permitir permiso sacar saca empezar empieza comienza inicio silbato pitar \
             pita listo jugar"
        }
        Signal::TeamToServe => {
            "punto ganó gano ganado anotó anoto quién quien saca siguiente próximo proximo equipo \
             turno"
        }
        Signal::ChangeOfCourts => "cambian cambio cambiar campo campos cancha canchas lado lados",
        Signal::TimeOut => {
            "tiempo muerto minuto pausa descanso pide pedir pidió pidio entrenador entrenadora"
        }
        Signal::Substitution => {
            "cambian cambia cambio cambiar jugadores jugadoras dos entra sale suplente sustituye \
             sustitucion reemplazo relevo"
        }
        Signal::Warning => {
            "tarjeta amarilla aviso advertencia amonestacion primera mala conducta comportamiento"
        }
        Signal::Penalty => {
            "tarjeta roja punto grosero grosera insulto insulta insultó palabrota protesta discute \
             conducta comportamiento"
        }
        Signal::Expulsion => {
            "expulsado expulsada expulsar echado set fuera banquillo dos ambas juntas tarjetas una \
             mano ofensiva ofensivo insulto"
        }
        Signal::Disqualification => {
            "descalificado descalificada descalificacion echado partido dos ambas separadas \
             tarjetas manos agresión agresion agresivo agresiva pelea pegar pegó golpe"
        }
        Signal::EndOfSet => {
            "fin final terminó termino termina acabó acabo acaba último ultimo set partido juego \
             ganado"
        }
        Signal::NotTossed => {
            "lanzó lanzo lanzar lanzado soltó solto soltar suelta sostener sostenido mano saque \
             sacar"
        }
        Signal::ServiceDelay => {
            "tarde tardó tardo tarda lento lenta segundos ocho demora esperó espero saque sacar"
        }
        Signal::BlockOrScreen => {
            "bloqueó bloqueo bloquear bloqueador bloqueadora saque zaguero zaguera pantalla tapa \
             tapó tapar esconde ocultar líbero libero"
        }
        Signal::Position => {
            "rotación rotacion rotar orden mal lugar puesto colocado colocados equivocado \
             equivocada posición posicion sacador turno"
        }
        Signal::BallIn => "dentro adentro línea linea bueno buena suelo cayó cayo bien",
        Signal::BallOut => {
            "fuera afuera salió salio largo larga ancho ancha antena varilla techo pared objeto \
             canasta aro por fuera"
        }
        Signal::Catch => {
            "retuvo retención retencion retener retenido agarró agarro agarrar agarrado cogió \
             cogio acompañó acompaño acarreo llevada llevó llevado lanzado paró paro ayuda"
        }
        Signal::DoubleContact => {
            "doble dobles golpe dos toques veces tocó toco seguidas seguido colocación colocacion"
        }
        Signal::FourHits => "cuatro toques cuarto toque demasiados golpes cuádruple cuadruple",
        Signal::NetTouch => {
            "tocó toco tocar toque toca red malla mano saque cruzó cruzo pasó paso quedó quedo"
        }
        Signal::OverNet => {
            "invadió invadio invasión invasion invade encima sobre red malla otro lado mano \
             bloqueo pronto antes allá alla"
        }
        Signal::AttackFault => {
            "remate rematar remató remato ataque atacó ataco atacar zaguero zaguera tres metros \
             línea linea delante líbero libero dedos pase saque"
        }
        Signal::LineOrUnder => {
            "pisó piso pisar pisa pie línea linea fondo central raya pasó invadió invadio penetró \
             penetro penetración penetracion debajo abajo red campo fuera saque"
        }
        Signal::Replay => {
            "repetir repite repetición repeticion otra vez ambos ambas falta dos mismo tiempo vez \
             doble interferencia entró entro otro campo cancha"
        }
        Signal::BallTouched => {
            "tocado tocada tocó toco rozó rozo roce roza desviado desvió desvio bloqueo fuera \
             punta puntas dedos manos"
        }
        Signal::DelayWarning => {
            "demora retraso lento lenta perder pierde tiempo tarde amonestación amonestacion aviso \
             tarjeta amarilla primera muñeca"
        }
        Signal::DelayPenalty => {
            "demora retraso lento lenta perder pierde tiempo tarde castigo tarjeta roja segunda \
             repetida muñeca"
        }
    }
}
