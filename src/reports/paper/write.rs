//! Writing a paper sheet as a file, and filling one in from the sheet of a log.

use serde_json::{json, Map, Value};

use super::read::{NAME, OFFICIALS};
use super::{
    Minute, PaperHead, PaperResult, PaperSanction, PaperSet, PaperSheet, PaperSubstitution,
    PaperTeam, PaperTimeOut,
};
use crate::{SetSheet, Sheet};
use game::Who;
use rules::{ByTeam, Rules, Score, Shirt, Team};

/// The sheet as a file.
#[must_use]
pub fn write(sheet: &PaperSheet) -> String {
    let sets: Vec<Value> = sheet.sets.iter().map(set).collect();
    let mut file = json!({
        "log": NAME, "version": 1, "rules": record::write_rules(&sheet.rules),
        "teams": pair(&sheet.teams, team), "sets": sets,
    });
    if sheet.head != PaperHead::default() {
        file["head"] = head(&sheet.head);
    }
    if !sheet.sanctions.is_empty() {
        file["sanctions"] = sheet.sanctions.iter().map(sanction).collect();
    }
    if let Some(result) = &sheet.result {
        file["result"] = json!({
            "winner": result.winner.map(Team::letter), "sets": pair(&result.sets, |n| json!(n)),
        });
        for (key, total) in [
            ("points", &result.points),
            ("time_outs", &result.time_outs),
            ("substitutions", &result.substitutions),
        ] {
            if let Some(total) = total {
                file["result"][key] = score(total);
            }
        }
        if let Some(minutes) = result.minutes {
            file["result"]["minutes"] = json!(minutes);
        }
    }
    file.to_string()
}

fn head(head: &PaperHead) -> Value {
    let mut out = Map::new();
    if !head.number.is_empty() {
        out.insert("match_no".into(), json!(head.number));
    }
    if let Some(day) = &head.day {
        out.insert("day".into(), json!(day));
    }
    let officials = OFFICIALS.into_iter().zip(&head.officials);
    let officials: Map<String, Value> = officials
        .filter(|(_, name)| !name.is_empty())
        .map(|(key, name)| (key.to_owned(), json!(name)))
        .collect();
    if !officials.is_empty() {
        out.insert("officials".into(), officials.into());
    }
    if !head.signed.is_empty() {
        let roles = head.signed.iter().map(|signer| json!(signer.role()));
        out.insert("signed".into(), roles.collect());
    }
    out.into()
}

fn pair<T>(both: &ByTeam<T>, each: impl Fn(&T) -> Value) -> Value {
    json!({ "A": each(&both.a), "B": each(&both.b) })
}

fn score(score: &Score) -> Value {
    pair(score, |n| json!(n))
}

fn shirts(list: &[Shirt]) -> Value {
    list.iter().map(|s| json!(s.0)).collect()
}

fn team(team: &PaperTeam) -> Value {
    let mut out = Map::new();
    if !team.name.is_empty() {
        out.insert("name".into(), json!(team.name));
    }
    if let Some(players) = &team.players {
        out.insert("players".into(), shirts(players));
    }
    if !team.liberos.is_empty() {
        out.insert("liberos".into(), shirts(&team.liberos));
    }
    out.into()
}

fn set(set: &PaperSet) -> Value {
    let substitutions: Vec<Value> = set.substitutions.iter().map(substitution).collect();
    let time_outs: Vec<Value> = set
        .time_outs
        .iter()
        .map(|t| json!({ "team": t.team.letter(), "score": score(&t.score) }))
        .collect();
    let mut out = json!({
        "first_service": set.first_service.letter(),
        "rounds": pair(&set.rounds, |r| json!(r)),
        "substitutions": substitutions,
        "time_outs": time_outs,
    });
    if let Some(line_up) = &set.line_up {
        out["line_up"] = pair(line_up, |l| shirts(l));
    }
    if let Some(points) = &set.points {
        out["final"] = score(points);
    }
    for (key, time) in [("start", set.start), ("end", set.end)] {
        if let Some(time) = time {
            out[key] = json!(time.to_string());
        }
    }
    if let Some(minutes) = set.minutes {
        out["minutes"] = json!(minutes);
    }
    out
}

fn substitution(s: &PaperSubstitution) -> Value {
    let mut out = json!({
        "team": s.team.letter(), "out": s.out.0, "in": s.into.0, "score": score(&s.score),
    });
    if s.exceptional {
        out["exceptional"] = json!(true);
    }
    out
}

fn sanction(s: &PaperSanction) -> Value {
    let who = s.who.as_ref().map(|who| match who {
        Who::Player(number) => json!({ "player": number.0 }),
        Who::Staff(role) => json!({ "staff": role }),
    });
    json!({
        "set": s.set, "team": s.team.letter(), "kind": s.kind.code(), "who": who,
        "score": score(&s.score),
    })
}

/// The boxes that a sheet on paper would have for the sheet of a log, where clocks are so many minutes
/// ahead of UTC. Sets nobody played have none; nor have libero replacements and cancelled points.
#[must_use]
pub fn of_sheet(sheet: &Sheet, rules: Rules, ahead: i32) -> PaperSheet {
    let minute = |at: Option<i64>| at.map(|at| Minute::of_moment(at, ahead));
    let played = sheet
        .sets
        .iter()
        .filter_map(|s| Some((s, s.first_service?)));
    PaperSheet {
        rules,
        head: PaperHead::default(),
        teams: sheet.teams.map(|_, t| PaperTeam {
            name: t.name.clone(),
            players: Some(t.players.iter().map(|p| p.number).collect()),
            liberos: t
                .players
                .iter()
                .filter(|p| p.libero)
                .map(|p| p.number)
                .collect(),
        }),
        sets: played
            .map(|(s, first_service)| PaperSet {
                first_service,
                line_up: rules.line_ups.then(|| s.line_ups.clone()),
                rounds: rounds(s, first_service),
                points: Some(s.score),
                substitutions: substitutions(s),
                time_outs: s
                    .time_outs
                    .iter()
                    .map(|t| PaperTimeOut {
                        team: t.team,
                        score: t.score,
                    })
                    .collect(),
                start: minute(s.began),
                end: minute(s.ended),
                minutes: s.minutes().and_then(|n| u16::try_from(n).ok()),
            })
            .collect(),
        sanctions: sheet
            .sanctions
            .iter()
            .map(|s| PaperSanction {
                set: s.set,
                team: s.team,
                kind: s.kind,
                who: s.who.clone(),
                score: s.score,
            })
            .collect(),
        result: Some(PaperResult {
            winner: sheet.result.winner,
            sets: sheet.result.sets,
            points: in_all(&sheet.result.points),
            time_outs: in_all(&sheet.result.time_outs),
            substitutions: in_all(&sheet.result.substitutions),
            minutes: sheet.result.minutes.and_then(|n| u16::try_from(n).ok()),
        }),
    }
}

/// A total of both teams, where a box has room for it.
fn in_all(total: &ByTeam<u32>) -> Option<ByTeam<u16>> {
    let [a, b] = [total.a, total.b].map(|n| u16::try_from(n).ok());
    a.zip(b).map(|(a, b)| ByTeam { a, b })
}

/// The totals. Where a penalty between the sets has cost the first service, the team that was due to
/// serve writes the 0 at which it lost it.
fn rounds(set: &SetSheet, first_service: Team) -> ByTeam<Vec<u16>> {
    let mut rounds: ByTeam<Vec<u16>> = set.rounds.map(|_, r| r.iter().map(|r| r.total).collect());
    let first_point = set.running.iter().find(|p| p.cancelled_by.is_none());
    let lost_at_once = first_point.is_some_and(|p| p.team != first_service);
    let written = &mut rounds[first_service];
    if lost_at_once && written.first() != Some(&0) {
        written.insert(0, 0);
    }
    rounds
}

fn substitutions(set: &SetSheet) -> Vec<PaperSubstitution> {
    set.substitutions
        .iter()
        .map(|s| PaperSubstitution {
            team: s.team,
            out: s.change.out,
            into: s.change.into,
            score: s.score,
            exceptional: s.exceptional,
        })
        .collect()
}
