//! What a fold prints: the state of a match as one JSON object, for scripts and for comparing two
//! implementations.

use serde_json::{json, Map, Value};

use game::{notices, speaker, Notice, Outcome, Refusal, SetPlay, State, Timeline, Who};
use record::Reading;
use rules::{ByTeam, Score, Shirt, Team};

/// The fold of a file: its good entries folded, its unreadable ones among the refused.
#[must_use]
pub fn fold(reading: &Reading) -> Value {
    let timeline = Timeline::of(reading.log.entries.clone());
    let mut refused: Vec<(u32, Value)> = timeline
        .outcomes()
        .filter_map(|(entry, outcome)| match outcome {
            Outcome::Refused(refusal) => {
                Some((entry.n, refusal_json(entry.n, refusal, timeline.state())))
            }
            _ => None,
        })
        .collect();
    for &n in &reading.unreadable {
        let why = reading.problems.iter().find(|p| p.entry == Some(n));
        let say = why.map(text::problem::problem);
        refused.push((n, json!({ "entry": n, "rule": "log", "say": say })));
    }
    rules::sort_by_key(&mut refused, |(n, _)| *n);
    let mut out = state_json(timeline.state());
    out.insert("entries".into(), reading.entries.into());
    out.insert(
        "refused".into(),
        refused.into_iter().map(|(_, r)| r).collect(),
    );
    let others = reading
        .problems
        .iter()
        .filter(|p| p.entry.is_none_or(|n| !reading.unreadable.contains(&n)))
        .map(|p| json!({ "entry": p.entry, "say": text::problem::problem(p) }));
    let others: Vec<Value> = others.collect();
    if !others.is_empty() {
        out.insert("problems".into(), others.into());
    }
    Value::Object(out)
}

fn refusal_json(n: u32, refusal: &Refusal, state: &State) -> Value {
    json!({ "entry": n, "rule": refusal.rule(), "say": text::refusal(refusal, state.into()) })
}

/// A state as JSON, without what only the whole log knows.
fn state_json(state: &State) -> Map<String, Value> {
    let shown = state.shown();
    let count =
        |f: fn(&SetPlay, Team) -> u8| by_team(|team| shown.map_or(0, |play| f(play, team)).into());
    let on_court = match shown.filter(|_| state.rules().line_ups) {
        Some(play) => by_team(|team| shirts(play.sides[team].on_court())),
        None => Value::Null,
    };
    let sets: Vec<Value> = state
        .sets()
        .map(|s| json!({ "A": s.score.a, "B": s.score.b, "winner": s.winner.letter() }))
        .collect();
    let won = state.sets_won();
    let sanctions: Vec<Value> = state
        .sanctions()
        .iter()
        .map(|s| {
            json!({ "entry": s.entry, "set": s.set, "team": s.team.letter(), "kind": s.kind.code(),
                "who": s.who.as_ref().map(who), "score": score(s.score) })
        })
        .collect();
    let mut out = Map::new();
    let mut put = |key: &str, value: Value| {
        out.insert(key.to_owned(), value);
    };
    put("phase", state.phase().code().into());
    put("set", state.set_number().into());
    put("score", score(state.score()));
    put("sets_won", json!({ "A": won.a, "B": won.b }));
    put("sets", sets.into());
    put("serving", serving(state));
    put("on_court", on_court);
    put("left", state.left().map(Team::letter).into());
    put("time_outs_used", count(|p, t| p.sides[t].time_outs));
    put("substitutions_used", count(|p, t| p.sides[t].substitutions));
    put(
        "exceptional_substitutions",
        count(|p, t| p.sides[t].exceptional),
    );
    put("sanctions", sanctions.into());
    put("notices", notices(state).iter().map(notice).collect());
    put("questions", questions(state));
    put("cancelled", cancelled(state));
    put(
        "game_captain",
        by_team(|team| speaker(state, team).map(|s| s.number().0).into()),
    );
    put("protests", protests(state));
    put("winner", state.winner().map(Team::letter).into());
    out
}

fn by_team(f: impl FnMut(Team) -> Value) -> Value {
    let ByTeam { a, b } = ByTeam::new(f);
    json!({ "A": a, "B": b })
}

fn score(score: Score) -> Value {
    json!({ "A": score.a, "B": score.b })
}

fn shirts(list: impl Iterator<Item = Shirt>) -> Value {
    list.map(|s| Value::from(s.0)).collect()
}

fn who(who: &Who) -> Value {
    match who {
        Who::Player(number) => json!({ "player": number.0 }),
        Who::Staff(role) => json!({ "staff": role }),
    }
}

fn serving(state: &State) -> Value {
    match state.serving() {
        None => Value::Null,
        Some((team, None)) => json!({ "team": team.letter() }),
        Some((team, Some(number))) => json!({ "team": team.letter(), "number": number.0 }),
    }
}

fn notice(notice: &Notice) -> Value {
    let mut out = Map::new();
    out.insert("code".into(), notice.code().into());
    if let Some(team) = notice.team() {
        out.insert("team".into(), team.letter().into());
    }
    match notice {
        Notice::MustSubstitute { player, .. } | Notice::LiberoMustLeave { player, .. } => {
            out.insert("player".into(), player.0.into());
        }
        Notice::SubstitutionsLeft { left, .. } => {
            out.insert("left".into(), (*left).into());
        }
        Notice::DoNotStart { item } => {
            out.insert("item".into(), item.as_str().into());
        }
        Notice::Question { entry } | Notice::CauseDropped { entry } => {
            out.insert("entry".into(), (*entry).into());
        }
        _ => {}
    }
    Value::Object(out)
}

fn questions(state: &State) -> Value {
    state
        .questions()
        .iter()
        .map(|question| {
            let (say, _) = text::question(question, state.into());
            json!({ "entry": question.entry, "code": question.ask.code(),
                "choices": question.ask.choices(), "say": say })
        })
        .collect()
}

/// Every protest that was announced, with what was written.
fn protests(state: &State) -> Value {
    state
        .protests()
        .iter()
        .map(|p| {
            json!({ "entry": p.entry, "team": p.team.letter(), "number": p.number.map(|n| n.0),
                "text": p.text, "set": p.set, "score": score(p.score),
                "written": p.written.as_ref().map(|(entry, text)| json!({ "entry": entry, "text": text })) })
        })
        .collect()
}

/// Every cancelled point of the match: whose, which entry had given it, which entry took it.
fn cancelled(state: &State) -> Value {
    let finished = state.sets().filter_map(|s| s.play.as_ref());
    finished
        .chain(state.play())
        .flat_map(|play| play.points.iter().map(move |p| (play.number, p)))
        .filter_map(|(set, p)| {
            p.cancelled_by.map(|by| {
                json!({ "set": set, "team": p.to.letter(), "entry": p.entry, "given_for": p.why.code(),
                    "cancelled_by": by })
            })
        })
        .collect()
}
