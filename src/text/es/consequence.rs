//! What an entry would change, in words, in Spanish.

use crate::consequence::*;
use crate::{team_name, ScoreOrder};
use game::{Kind, Outcome, Phase, SetPlay, State, Timeline};
use rules::Team;

/// In Spanish.
pub static WORDS: ConsequenceWords = ConsequenceWords {
    what_follows: "Consecuencias",
    follows,
    changes,
    differences,
};

/// So many entries that would no longer count are named one by one.
const NAMED: usize = 4;

fn follows(kind: &Kind, before: &Timeline, after: &Timeline, order: ScoreOrder) -> Vec<String> {
    match kind {
        // 19.3.2.5 and 19.3.2.6
        Kind::LateReplacement { team } => vec![
            "Esta vez se permite. Díselo al capitán en juego".into(),
            format!(
                "Cada reemplazo tardío más de {} es una demora",
                team_name(after.state(), *team)
            ),
        ],
        _ => changes(before, after, order),
    }
}

fn changes(before: &Timeline, after: &Timeline, order: ScoreOrder) -> Vec<String> {
    let mut lines = differences(before, after, order);
    if lines.is_empty() {
        lines.push("Marcador, sets y saque quedan como están".into());
    }
    lines
}

fn differences(before: &Timeline, after: &Timeline, order: ScoreOrder) -> Vec<String> {
    let mut lines = Vec::new();
    let (old, new) = (before.state(), after.state());
    ending(old, new, &mut lines);
    sets(old, new, order, &mut lines);
    if old.score() != new.score() {
        lines.push(format!(
            "El marcador pasa de {} a {}",
            order.write(&old.score()),
            order.write(&new.score())
        ));
    }
    for team in Team::BOTH {
        match gone(old, new, team) {
            0 => {}
            1 => lines.push(format!("Se anula 1 punto de {}", team_name(new, team))),
            points => lines.push(format!(
                "Se anulan {points} puntos de {}",
                team_name(new, team)
            )),
        }
    }
    if old.serving() != new.serving() {
        if let Some((team, number)) = new.serving() {
            let number = number.map_or_else(String::new, |n| format!(", el {n}"));
            lines.push(format!("Saca {}{number}", team_name(new, team)));
        }
    }
    for team in Team::BOTH {
        if let Some(places) = other_places(old, new, team) {
            let last = new.rules().players_on_court;
            lines.push(format!(
                "{}, posiciones 1 a {last}: {places}",
                team_name(new, team)
            ));
        }
    }
    target(old, new, &mut lines);
    no_longer_count(before, after, &mut lines);
    lines
}

/// To how many points the running set is played, where that is another number than before.
fn target(old: &State, new: &State, lines: &mut Vec<String>) {
    let of = |state: &State| {
        let number = state.play()?.number;
        Some((number, state.rules().target_of(number).target))
    };
    if let (Some((was, before)), Some((is, points))) = (of(old), of(new)) {
        if was == is && before != points {
            lines.push(format!("El set {is} se juega a {points} puntos"));
        }
    }
}

fn ending(old: &State, new: &State, lines: &mut Vec<String>) {
    if old.phase() == new.phase() {
        return;
    }
    match new.phase() {
        Phase::Finished => lines.push(format!("El partido ha acabado. {}", crate::match_over(new))),
        Phase::BetweenSets if old.phase() == Phase::Playing => {
            lines.push(crate::set_over(new));
        }
        Phase::Suspended => lines.push("El juego queda interrumpido".into()),
        Phase::Playing if old.phase() != Phase::Suspended => {
            lines.push(format!("El set {} sigue", new.set_number()));
        }
        Phase::BetweenSets | Phase::Preparation => {
            lines.push(format!("El set {} aún no ha empezado", new.set_at_hand()));
        }
        Phase::Playing => {}
    }
}

fn sets(old: &State, new: &State, order: ScoreOrder, lines: &mut Vec<String>) {
    let (was, is) = (old.sets_won(), new.sets_won());
    if was != is {
        lines.push(format!(
            "Los sets pasan de {} a {}",
            order.write(&was),
            order.write(&is)
        ));
    }
    for set in new.sets() {
        let other = old
            .sets()
            .find(|o| o.number == set.number)
            .is_some_and(|o| o.score != set.score);
        if other {
            lines.push(format!(
                "El set {} queda {}",
                set.number,
                order.write(&set.score)
            ));
        }
    }
}

/// How many points of a team are cancelled after it that were not before.
fn gone(old: &State, new: &State, team: Team) -> usize {
    let cancelled = |state: &State| -> usize {
        let in_set = |play: &SetPlay| {
            let gone = |p: &&game::Point| p.to == team && p.cancelled_by.is_some();
            play.points.iter().filter(gone).count()
        };
        state
            .sets()
            .filter_map(|s| s.play.as_ref())
            .chain(state.play())
            .map(in_set)
            .sum()
    };
    cancelled(new).saturating_sub(cancelled(old))
}

/// Where a team stands, if the order is another one than rotation alone would make it.
fn other_places(old: &State, new: &State, team: Team) -> Option<String> {
    let order = |state: &State| -> Vec<u16> {
        state
            .play()
            .map(|p| p.sides[team].on_court().map(|s| s.0).collect())
            .unwrap_or_default()
    };
    let (was, is) = (order(old), order(new));
    let turned = (0..was.len().max(1)).any(|by| {
        let mut same = was.clone();
        same.rotate_left(by.min(was.len()));
        same == is
    });
    (!is.is_empty() && !turned).then(|| {
        let numbers: Vec<String> = is.iter().map(ToString::to_string).collect();
        numbers.join(" ")
    })
}

/// Entries that counted and will not, because what they stood on is gone.
fn no_longer_count(before: &Timeline, after: &Timeline, lines: &mut Vec<String>) {
    let counts = |o: &Outcome| matches!(o, Outcome::Accepted | Outcome::Insisted(_));
    let refused: Vec<String> = before
        .outcomes()
        .filter(|(_, o)| counts(o))
        .filter(|(e, _)| matches!(after.outcome(e.n), Some(Outcome::Refused(_))))
        .map(|(e, _)| format!("{}, {}", e.n, crate::entry(e, before.state())))
        .collect();
    let more = refused.len().saturating_sub(NAMED);
    lines.extend(
        refused
            .into_iter()
            .take(NAMED)
            .map(|words| format!("Ya no contará la anotación {words}")),
    );
    match more {
        0 => {}
        1 => lines.push("Otra anotación ya no contará".into()),
        more => lines.push(format!("Otras {more} anotaciones ya no contarán")),
    }
}
