//! The words of the sheet as lines to read, for the command line, in Spanish.

use super::entry::role;
use crate::score_sheet::signer;
use crate::sheet_text::*;
use game::{Sanction, Who};
use record::spaced;
use reports::{RemarkLine, ResultBox, Sheet, Signed};

/// In Spanish.
pub static WORDS: SheetTextWords = SheetTextWords {
    not_finished: "sin terminar",
    time_outs: "tiempos muertos",
    rounds: "rondas",
    game_captain: "capitán en juego",
    liberos: "líberos",
    sanction,
    remark,
    signed,
    check_code,
    totals,
    end,
};

fn sanction(sanction: &Sanction) -> String {
    let who = match &sanction.who {
        Some(Who::Player(n)) => format!(" número {n}"),
        Some(Who::Staff(title)) => format!(" {}", role(title)),
        None => String::new(),
    };
    format!(
        "{}: {}{who}, set {} con {}",
        sanction.kind.code(),
        sanction.team,
        sanction.set,
        sanction.score.marked()
    )
}

fn remark(line: &RemarkLine, sheet: &Sheet) -> String {
    format!(
        "Observación (set {}, {}): {}",
        line.set,
        line.score.marked(),
        crate::remark(&line.remark, sheet.into())
    )
}

fn signed(signed: &Signed, time: Option<String>) -> String {
    let when = if signed.before { "antes" } else { "después" };
    let name = signed.name.as_ref().map(|name| format!(" {name}"));
    let time = time.map(|time| format!(" {time}"));
    let outdated = signed
        .outdated
        .then(|| format!(", {}", crate::score_sheet::signed_another_result()));
    format!(
        "Firma {when} del partido: {}{}{}{}",
        signer(&signed.role),
        name.unwrap_or_default(),
        time.unwrap_or_default(),
        outdated.unwrap_or_default()
    )
}

fn check_code(code: &str) -> String {
    format!("Código del sello: {}", spaced(code))
}

fn totals(result: &ResultBox) -> String {
    let minutes = result.minutes.map(|m| format!(", {m} min"));
    format!(
        "Sets {}, puntos {}{}",
        result.sets.marked(),
        result.points.marked(),
        minutes.unwrap_or_default()
    )
}

fn end(is_over: bool, winner: Option<&str>) -> String {
    match (is_over, winner) {
        (true, Some(name)) => format!("Ganador: {name}"),
        (true, None) => "Terminado en empate".to_owned(),
        (false, _) => "Sin terminar".to_owned(),
    }
}
