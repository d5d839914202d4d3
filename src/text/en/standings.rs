//! The words of the standings: the reason for each place, and each finding.

use crate::standings::*;
use reports::standings::{Criterion, Cut, Doubt, Finding, Pool, Row, Scheme};

/// In English.
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
            "{} is level in every criterion and shares place {}.",
            row.team, row.place
        );
    }
    match &row.cut {
        None => "There is no other team in the pool.".to_owned(),
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
            "{over} before {under} by {}: {above} to {below}.",
            criterion(cut.criterion)
        ),
        Some((teams, Criterion::Wins)) if teams.len() == 2 => format!(
            "{over} before {under} by the matches between the two: won {above}, lost {below}."
        ),
        Some((teams, by)) => format!(
            "{over} before {under} by {} in the matches among {}: {above} to {below}.",
            criterion(*by),
            list(teams)
        ),
    }
}

fn criterion(criterion: Criterion) -> &'static str {
    match criterion {
        Criterion::Wins => "matches won",
        Criterion::MatchPoints => "match points",
        Criterion::SetRatio => "sets won to lost",
        Criterion::PointRatio => "points won to lost",
        Criterion::SetDifference => "sets won minus sets lost",
        Criterion::PointDifference => "points won minus points lost",
        Criterion::SetsWon => "sets won",
        Criterion::HeadToHead => "the matches among the level teams",
    }
}

fn list(teams: &[String]) -> String {
    match teams {
        [all @ .., last] if !all.is_empty() => format!("{} and {last}", all.join(", ")),
        _ => teams.concat(),
    }
}

fn finding(finding: &Finding, pool: &Pool) -> String {
    let pair = |result: usize| {
        let played = &pool.results[result];
        format!("{} against {}", played.home, played.away)
    };
    let called = |result: usize| match pool.results[result].source.name.as_str() {
        "" => format!("result {}", result + 1),
        name => name.to_owned(),
    };
    match finding {
        Finding::AgainstItself { result } => format!(
            "{} is not possible, so the match is left out. Correct one of the names.",
            pair(*result)
        ),
        Finding::NoSets { result } => format!(
            "{} has no sets, so the match is left out until they are keyed in.",
            pair(*result)
        ),
        Finding::PoolsMixed { pools } => format!(
            "This table mixes matches of {}. Make one table for each of them.",
            list(pools)
        ),
        Finding::NotOver { result } => format!(
            "{} is not over in {}: the match does not count yet.",
            pair(*result),
            called(*result)
        ),
        Finding::MatchTwice {
            result,
            counts,
            other_points,
        } => {
            let more = if *other_points {
                " The points differ: compare the two."
            } else {
                ""
            };
            format!(
                "{} is there twice: {} counts, {} does not count.{more}",
                pair(*counts),
                called(*counts),
                called(*result)
            )
        }
        Finding::MetAgain { results } => {
            let names: Vec<String> = results.iter().map(|&result| called(result)).collect();
            format!(
                "{} counts as {} matches: {}. Remove what is the same match.",
                results.last().map_or_else(String::new, |&last| pair(last)),
                results.len(),
                list(&names)
            )
        }
        Finding::NotPlayed { pool, pairs } => not_played(pool, pairs),
        Finding::ResultInDoubt { result, doubt } => format!(
            "{}: {} It counts as it stands.",
            pair(*result),
            self::doubt(&called(*result), *doubt)
        ),
        Finding::SetCannotBe { result, set } => {
            let (home, away) = pool.results[*result].sets[*set];
            format!(
                "{}: a set cannot end {home}:{away}. It counts as written. Check it on the sheet.",
                pair(*result)
            )
        }
        Finding::SetsCannotBe { result } => format!(
            "{}: these sets are not a whole match. They count as written. Check their number and order.",
            pair(*result)
        ),
        Finding::NoMatchPoints { result, won, lost } => format!(
            "{}: match_points has nothing for {won}-{lost}, so both teams get none. Add \"{won}-{lost}\" \
             to match_points.",
            pair(*result)
        ),
        Finding::DefaultWon { result } => format!(
            "{}: the team in default has won on paper. It counts as written. Correct the sets or the \
             default.",
            pair(*result)
        ),
        Finding::NamesAlike { one, other } => format!(
            "\"{one}\" and \"{other}\" count as two teams. Write the name one way if it is one team."
        ),
    }
}

/// Which matches are missing; of many the first ones.
fn not_played(pool: &str, pairs: &[(String, String, usize)]) -> String {
    const MOST: usize = 12;
    let missing = match pairs.iter().map(|pair| pair.2).sum::<usize>() {
        1 => "One match is missing".to_owned(),
        n => format!("{n} matches are missing"),
    };
    let from = match pool {
        "" => String::new(),
        pool => format!(" from {pool}"),
    };
    let named = pairs.iter().take(MOST);
    let named = named.map(|(home, away, times)| match times {
        1 => format!("{home} – {away}"),
        times => format!("{home} – {away} ({times} times)"),
    });
    let mut named: Vec<String> = named.collect();
    if pairs.len() > MOST {
        named.push(format!("and {} more", pairs.len() - MOST));
    }
    format!("{missing}{from}: {}.", named.join(", "))
}

fn doubt(name: &str, doubt: Doubt) -> String {
    match doubt {
        Doubt::Seal => format!(
            "the seal of {name} does not fit, so something was changed after sealing. Ask for the sealed \
             record."
        ),
        Doubt::Damaged => {
            format!("a part of {name} is damaged or was changed. Ask for the record again.")
        }
        Doubt::Paper => {
            format!("the boxes of {name} do not agree on the result. Check it box by box.")
        }
    }
}

fn scheme(scheme: Scheme) -> &'static str {
    match scheme {
        Scheme::ByMargin => "3 for a win, 2 and 1 if it went to the last set",
        Scheme::Appearance => "2 for a win, 1 for a loss, 0 for a default",
        Scheme::Loss => "2 for a win, 1 for a loss",
        Scheme::Two => "2 for a win",
        Scheme::Three => "3 for a win",
    }
}
