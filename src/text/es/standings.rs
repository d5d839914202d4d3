//! The words of the standings: the reason for each place, and each finding, in Spanish.

use crate::standings::*;
use reports::standings::{Criterion, Cut, Doubt, Finding, Pool, Row, Scheme};

/// In Spanish.
pub static WORDS: StandingsWords = StandingsWords {
    reason,
    criterion,
    finding,
    doubt,
    scheme,
};

fn reason(row: &Row) -> String {
    if row.level {
        return format!(
            "{} empata en todos los criterios y comparte el puesto {}.",
            row.team, row.place
        );
    }
    match &row.cut {
        None => "No hay otro equipo en el grupo.".to_owned(),
        Some(cut) => reason_of(cut),
    }
}

fn reason_of(cut: &Cut) -> String {
    let Cut {
        over,
        under,
        above,
        below,
        ..
    } = cut;
    match &cut.among {
        None => format!(
            "{over} antes que {under} por {}: {above} a {below}.",
            criterion(cut.criterion)
        ),
        Some((teams, Criterion::Wins)) if teams.len() == 2 => format!(
            "{over} antes que {under} por los partidos entre los dos: {above} ganados, {below} \
             perdidos."
        ),
        Some((teams, by)) => format!(
            "{over} antes que {under} por {} en los partidos entre {}: {above} a {below}.",
            criterion(*by),
            list(teams)
        ),
    }
}

fn criterion(criterion: Criterion) -> &'static str {
    match criterion {
        Criterion::Wins => "partidos ganados",
        Criterion::MatchPoints => "puntos de clasificación",
        Criterion::SetRatio => "cociente de sets ganados y perdidos",
        Criterion::PointRatio => "cociente de puntos ganados y perdidos",
        Criterion::SetDifference => "sets ganados menos sets perdidos",
        Criterion::PointDifference => "puntos ganados menos puntos perdidos",
        Criterion::SetsWon => "sets ganados",
        Criterion::HeadToHead => "los partidos entre los equipos empatados",
    }
}

/// Names as they stand in a sentence. Before the sound of an i, *y* is *e*.
fn list(teams: &[String]) -> String {
    match teams {
        [all @ .., last] if !all.is_empty() => {
            format!("{} {} {last}", all.join(", "), and(last))
        }
        _ => teams.concat(),
    }
}

/// The *and* before a word.
fn and(word: &str) -> &'static str {
    let mut letters = word
        .chars()
        .filter(|c| c.is_alphanumeric())
        .flat_map(char::to_lowercase);
    let first = match letters.next() {
        Some('h') => letters.next(),
        first => first,
    };
    let breaks = matches!(
        letters.next(),
        Some('a' | 'e' | 'o' | 'u' | 'á' | 'é' | 'ó' | 'ú')
    );
    match first {
        Some('i' | 'í') if !breaks => "e",
        _ => "y",
    }
}

fn finding(finding: &Finding, pool: &Pool) -> String {
    let pair = |result: usize| {
        let played = &pool.results[result];
        format!("{} contra {}", played.home, played.away)
    };
    let called = |result: usize| match pool.results[result].source.name.as_str() {
        "" => format!("resultado {}", result + 1),
        name => name.to_owned(),
    };
    match finding {
        Finding::AgainstItself { result } => format!(
            "{} no es posible, así que el partido queda fuera. Corrige uno de los nombres.",
            pair(*result)
        ),
        Finding::NoSets { result } => format!(
            "{} no tiene sets: el partido queda fuera hasta que los escribas.",
            pair(*result)
        ),
        Finding::PoolsMixed { pools } => format!(
            "Esta clasificación mezcla partidos de {}. Haz una para cada grupo.",
            list(pools)
        ),
        Finding::NotOver { result } => format!(
            "{} no ha terminado en {}: el partido todavía no cuenta.",
            pair(*result),
            called(*result)
        ),
        Finding::MatchTwice {
            result,
            counts,
            other_points,
        } => {
            let more = if *other_points {
                " Los puntos no coinciden: compara los dos."
            } else {
                ""
            };
            format!(
                "{} está dos veces: {} cuenta, {} no cuenta.{more}",
                pair(*counts),
                called(*counts),
                called(*result)
            )
        }
        Finding::MetAgain { results } => {
            let names: Vec<String> = results.iter().map(|&result| called(result)).collect();
            format!(
                "{} cuenta como {} partidos: {}. Quita los que sean el mismo partido.",
                results.last().map_or_else(String::new, |&last| pair(last)),
                results.len(),
                list(&names)
            )
        }
        Finding::NotPlayed { pool, pairs } => not_played(pool, pairs),
        Finding::ResultInDoubt { result, doubt } => format!(
            "{}: {} Cuenta tal como está.",
            pair(*result),
            self::doubt(&called(*result), *doubt)
        ),
        Finding::SetCannotBe { result, set } => {
            let (home, away) = pool.results[*result].sets[*set];
            format!(
                "{}: un set no puede terminar {home}:{away}. Cuenta tal como está escrito. \
                 Revísalo en el acta.",
                pair(*result)
            )
        }
        Finding::SetsCannotBe { result } => format!(
            "{}: estos sets no forman un partido completo. Cuentan tal como están. Revisa su \
             número y su orden.",
            pair(*result)
        ),
        Finding::NoMatchPoints { result, won, lost } => format!(
            "{}: match_points no dice nada para {won}-{lost}, así que ningún equipo recibe puntos. \
             Añade \"{won}-{lost}\" a match_points.",
            pair(*result)
        ),
        Finding::DefaultWon { result } => format!(
            "{}: el equipo no presentado gana según lo escrito, y así cuenta. Corrige los sets o \
             quién no se presentó.",
            pair(*result)
        ),
        Finding::NamesAlike { one, other } => format!(
            "\u{201c}{one}\u{201d} y \u{201c}{other}\u{201d} cuentan como dos equipos. Si es el \
             mismo, escribe el nombre siempre igual."
        ),
    }
}

/// Which matches are missing; of many the first ones.
fn not_played(pool: &str, pairs: &[(String, String, usize)]) -> String {
    const MOST: usize = 12;
    let missing = match pairs.iter().map(|pair| pair.2).sum::<usize>() {
        1 => "Falta un partido".to_owned(),
        n => format!("Faltan {n} partidos"),
    };
    let from = match pool {
        "" => String::new(),
        pool => format!(" de {pool}"),
    };
    let named = pairs.iter().take(MOST);
    let named = named.map(|(home, away, times)| match times {
        1 => format!("{home} – {away}"),
        times => format!("{home} – {away} ({times} veces)"),
    });
    let mut named: Vec<String> = named.collect();
    if pairs.len() > MOST {
        named.push(format!("y {} más", pairs.len() - MOST));
    }
    format!("{missing}{from}: {}.", named.join(", "))
}

fn doubt(name: &str, doubt: Doubt) -> String {
    match doubt {
        Doubt::Seal => format!(
            "el sello de {name} no coincide, así que algo cambió después de sellar. Pide el \
             registro sellado."
        ),
        Doubt::Damaged => {
            format!("una parte de {name} está dañada o se cambió. Pide otra vez el registro.")
        }
        Doubt::Paper => {
            format!("las casillas de {name} no coinciden en el resultado. Revísalas una por una.")
        }
    }
}

fn scheme(scheme: Scheme) -> &'static str {
    match scheme {
        Scheme::ByMargin => "3 por ganar; 2 y 1 si se llegó al último set",
        Scheme::Appearance => "2 por ganar, 1 por perder, 0 por no presentarse",
        Scheme::Loss => "2 por ganar, 1 por perder",
        Scheme::Two => "2 por ganar",
        Scheme::Three => "3 por ganar",
    }
}
