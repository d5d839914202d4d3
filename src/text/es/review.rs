//! The words of the review, in Spanish.

use crate::review::*;
use game::entry::SeenBy;
use reports::review::Question;
use rules::{Rules, Score};

/// In Spanish.
pub static WORDS: ReviewWords = ReviewWords {
    review: "Repaso",
    nothing_played: "Todavía no se ha jugado ninguna jugada. Vuelve más tarde.",
    card: "Tres preguntas para hablar",
    card_more: "Primero respóndelas a solas. Después habla de ellas con tu equipo arbitral.",
    lead_heading: "Cómo cambió la ventaja",
    lead_more:
        "Por encima de la línea va ganando A; por debajo, B. T es un tiempo muerto: arriba de A, \
         abajo de B.",
    so_far: "El partido no ha terminado. Así va por ahora.",
    to_match: "Al partido",
    called: "Qué se pitó y cuándo",
    called_more:
        "Cada raya es algo que pitaste, desde la primera jugada a la izquierda hasta la última a \
         la derecha. Las líneas finas separan los sets. Un círculo sobre una raya indica que \
         otra persona del equipo arbitral lo señaló.",
    nothing_called: "Ninguna jugada tiene motivo anotado.",
    pauses_heading: "De una jugada a la siguiente",
    no_times: "Las anotaciones no tienen hora, así que no se puede decir nada del tiempo.",
    rotations_heading: "Puntos por rotación",
    rotations_more:
        "Las barras llenas hacia arriba son puntos ganados. Las barras vacías hacia abajo son \
         puntos perdidos. La rotación 1 es el orden con que el equipo empezó el set.",
    time_outs: "Tiempos muertos y qué pasó después",
    time_outs_more:
        "Aquí ves los puntos siguientes. Los llenos los ganó el equipo que pidió el tiempo \
         muerto. Los vacíos los ganó el otro equipo.",
    no_time_outs: "No hubo tiempos muertos.",
    taken_back_heading: "Deshecho",
    nothing_taken_back: "No se deshizo nada.",
    usual_pause,
    shown_by,
    unsaid,
    calls,
    set,
    time_out,
    taken_back,
    question,
    lead,
    rotations,
    pauses,
    when_called,
    after_time_out,
};

fn usual_pause(seconds: i64) -> String {
    format!(
        "Cuando nada demoró el juego, la mitad de las jugadas se anotó como mucho {seconds} s \
         después de la anterior."
    )
}

fn shown_by(all: &[(SeenBy, usize)]) -> String {
    let who = |by: SeenBy| match by {
        SeenBy::SecondReferee => "segundo árbitro",
        SeenBy::LineJudge => "juez de línea",
        SeenBy::Scorer => "anotador",
    };
    let all: Vec<String> = all
        .iter()
        .map(|(by, times)| format!("{} {times} ×", who(*by)))
        .collect();
    format!(
        "Quién lo señaló al primer árbitro, si se anotó: {}.",
        all.join(", ")
    )
}

fn unsaid(unsaid: usize, of: usize) -> String {
    format!("Jugadas sin motivo: {unsaid} de {of}.")
}

fn calls(times: usize) -> String {
    format!("{times} ×")
}

fn set(number: u8) -> String {
    format!("Set {number}")
}

fn time_out(team: &str, set: u8, score: Score, run: u16) -> String {
    let before = match run {
        0 => "tras un punto propio".to_owned(),
        1 => "tras un punto del otro equipo".to_owned(),
        n => format!("tras {n} puntos seguidos del otro equipo"),
    };
    format!("{team}, set {set} con {}, {before}", score.marked())
}

fn taken_back(entry: u32, words: &str, after: Option<i64>, why: Option<&str>) -> String {
    let after = after
        .map(|s| format!(", {s} s después"))
        .unwrap_or_default();
    let why = why.map(|w| format!(": {w}")).unwrap_or_default();
    format!("Anotación {entry}, {words}{after}{why}")
}

fn question(question: &Question, rules: &Rules) -> String {
    match question {
        Question::TakenBack { times: n } => format!(
            "Deshiciste una anotación {}. ¿Qué viste primero y qué te hizo cambiar de idea?",
            times(*n)
        ),
        Question::Insisted { times: n } => format!(
            "Decidiste en contra del aviso de las reglas {}. ¿Decidirías lo mismo otra vez, y cómo \
             se lo explicarías a un capitán?",
            times(*n)
        ),
        Question::Sanctioned { times: n } => format!(
            "Diste una sanción {}. ¿Qué pasó antes? ¿Hubo un momento en que habría bastado una \
             palabra?",
            times(*n)
        ),
        Question::StoodStill {
            seconds,
            set,
            score: s,
        } => format!(
            "Antes de {} en el set {set}, el juego estuvo parado {} min {:02} s y el registro no \
             dice por qué. ¿Qué te retuvo, y quién podría haberte ayudado?",
            s.marked(),
            seconds / 60,
            seconds % 60
        ),
        Question::Often { cause, times: n } => format!(
            "Pitaste \u{201c}{}\u{201d} {}. ¿Juzgaste igual la primera vez y la última?",
            crate::cause(*cause, rules),
            times(*n)
        ),
        Question::Unsaid { times: n, of } => {
            format!("Jugadas sin motivo: {n} de {of}. ¿Cuáles podrías explicar todavía, y a quién?")
        }
        Question::Closest { set, score: s } => format!(
            "El set {set} terminó con {}. ¿Adónde mirabas al final, y qué hiciste para mantener la \
             calma?",
            s.marked()
        ),
        Question::Looked => {
            "Después de una jugada, ¿a quién miras primero y a quién al final? ¿Ayudaría otro \
             orden?"
                .to_owned()
        }
        Question::Well => {
            "¿Qué salió bien, qué harás igual la próxima vez, y se lo has dicho a tu equipo \
             arbitral?"
                .to_owned()
        }
    }
}

/// How often.
fn times(n: usize) -> String {
    match n {
        0 => "ninguna vez".to_owned(),
        1 => "una vez".to_owned(),
        2 => "dos veces".to_owned(),
        n => format!("{n} veces"),
    }
}

fn lead(set: u8, score: Score, led: [(&str, u16); 2], changes: usize) -> String {
    let [a, b] = led.map(|(name, most)| match most {
        0 => format!("{name} nunca tuvo ventaja"),
        n => format!("{name} tuvo una ventaja máxima de {n}"),
    });
    let changes = match changes {
        0 => "nunca cambió de equipo".to_owned(),
        n => format!("cambió de equipo {}", times(n)),
    };
    format!(
        "Set {set}, {}. {a}, {b}. La ventaja {changes}.",
        score.marked()
    )
}

fn rotations(name: &str, set: u8, points: &[(u16, u16)]) -> String {
    let each = (1..).zip(points);
    let each: Vec<String> = each
        .map(|(rotation, (won, lost))| {
            format!(" rotación {rotation}: ganados {won}, perdidos {lost}")
        })
        .collect();
    format!("{name} en el set {set}:{}.", each.join(";"))
}

fn pauses(spans: &[(String, u32)]) -> String {
    let spans: Vec<String> = spans
        .iter()
        .map(|(span, count)| format!(" {span}: {count}"))
        .collect();
    format!("Segundos de una jugada a la siguiente:{}.", spans.join(";"))
}

fn when_called(sets: &[(u8, usize)], shown: usize) -> String {
    let sets: Vec<String> = sets
        .iter()
        .map(|(set, calls)| format!("set {set}: {calls}"))
        .collect();
    match shown {
        0 => format!("{}.", sets.join(", ")),
        n => format!(
            "{}. Lo señaló otra persona del equipo arbitral {}.",
            sets.join(", "),
            times(n)
        ),
    }
}

fn after_time_out(points: usize, own: usize) -> String {
    format!("Puntos siguientes: {points}. El equipo que lo pidió ganó {own}.")
}
