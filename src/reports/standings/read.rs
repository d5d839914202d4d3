//! Reading the results of a pool.

use std::collections::BTreeMap;

use super::{Criterion, Played, Pool, Side, Source};
use crate::form::{Field, Form, Reader};
use crate::FormProblemKind;

/// What the file says of itself.
pub(crate) const NAME: &str = "volleyball-pool";
/// Larger pools are no pools: a double round of 40 teams has 1560 matches.
const MAX_RESULTS: usize = 2_000;
/// Likewise.
const MAX_TEAMS: usize = 200;
/// Nobody meets oftener.
pub const MAX_MEETINGS: u8 = 9;

/// Reads a pool. What cannot be read is named with its place.
#[must_use]
pub fn read(text: &str) -> Form<Pool> {
    let fields = [
        "rank_by",
        "restart",
        "match_points",
        "rules",
        "teams",
        "meetings",
        "results",
    ];
    Reader::form(text, NAME, &fields, pool)
}

fn pool(reader: &mut Reader, root: &Field) -> Option<Pool> {
    let words = Criterion::ALL.map(|c| (c.code(), c));
    let rank_by = reader.need(root, "rank_by");
    let rank_by = rank_by.and_then(|f| {
        let list = reader.all(&f, Criterion::ALL.len(), |r, item| r.word(item, &words))?;
        if list.is_empty() {
            reader.wrong("rank_by", FormProblemKind::NoCriterion);
        }
        Some(list)
    });
    let restart = match root.get("restart") {
        Some(field) => reader.yes(&field),
        None => Some(true),
    };
    let (match_points, default_points) = match root.get("match_points") {
        Some(field) => match_points(reader, &field),
        None => Default::default(),
    };
    let rules = root.get("rules").and_then(|f| reader.rules(&f));
    let teams = match root.get("teams") {
        Some(field) => reader.all(&field, MAX_TEAMS, |r, f| r.text(f)),
        None => Some(Vec::new()),
    };
    let meetings = root
        .get("meetings")
        .and_then(|f| reader.whole(&f, 1, i64::from(MAX_MEETINGS)))
        .and_then(|n| u8::try_from(n).ok());
    let results = reader
        .need(root, "results")
        .and_then(|f| reader.all(&f, MAX_RESULTS, result));
    let pool = Pool {
        rank_by: rank_by?,
        restart: restart?,
        match_points,
        default_points,
        rules,
        teams: teams?,
        meetings,
        results: results?,
    };
    let teams = super::rank::names(&pool, &pool.results).len();
    if teams > MAX_TEAMS {
        reader.wrong(
            "results",
            FormProblemKind::TooManyTeams {
                teams,
                most: MAX_TEAMS,
            },
        );
    }
    Some(pool)
}

type Points = (BTreeMap<(u8, u8), (i32, i32)>, Option<(i32, i32)>);

fn match_points(reader: &mut Reader, field: &Field) -> Points {
    let (mut points, mut default) = (BTreeMap::new(), None);
    if field.members().is_empty() {
        reader.wrong("match_points", FormProblemKind::NotMatchPoints);
    }
    for (key, value) in field.members() {
        let given = reader.all(&value, 2, |r, f| r.whole(f, -1000, 1000));
        let Some(given) = given else { continue };
        let [winner, loser] = given[..] else {
            reader.wrong(
                &format!("match_points.{key}"),
                FormProblemKind::NotTwoPoints,
            );
            continue;
        };
        let small = |n: i64| i32::try_from(n).unwrap_or_default();
        let pair = (small(winner), small(loser));
        match (key, result_key(key)) {
            ("default", _) => default = Some(pair),
            (_, Some(result)) => {
                points.insert(result, pair);
            }
            (_, None) => reader.wrong(&format!("match_points.{key}"), FormProblemKind::NotResult),
        }
    }
    (points, default)
}

/// `3-1` as a pair.
fn result_key(key: &str) -> Option<(u8, u8)> {
    let (won, lost) = key.split_once('-')?;
    let digit = |s: &str| s.parse::<u8>().ok().filter(|n| *n <= 9);
    let (won, lost) = (digit(won)?, digit(lost)?);
    (won >= lost && won > 0).then_some((won, lost))
}

fn result(reader: &mut Reader, field: &Field) -> Option<Played> {
    reader.object(field, &["home", "away", "sets", "default"])?;
    let name =
        |reader: &mut Reader, key: &str| reader.need(field, key).and_then(|f| reader.text(&f));
    let (home, away) = (name(reader, "home"), name(reader, "away"));
    let sets = reader
        .need(field, "sets")
        .and_then(|f| reader.all(&f, 9, set));
    let sides = [("home", Side::Home), ("away", Side::Away)];
    let default = field.get("default").and_then(|f| reader.word(&f, &sides));
    Some(Played {
        home: home?,
        away: away?,
        sets: sets?,
        default,
        source: Source::default(),
    })
}

fn set(reader: &mut Reader, field: &Field) -> Option<(u16, u16)> {
    let points = reader.all(field, 2, |r, f| r.number(f))?;
    match points[..] {
        [home, away] => Some((home, away)),
        _ => {
            reader.wrong(field.place(), FormProblemKind::NotSet);
            None
        }
    }
}
