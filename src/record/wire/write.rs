//! An entry as JSON.

use serde_json::Value;

use super::frozen_rules;
use crate::fields::Writer;
use game::entry as mem;
use rules::{ByTeam, Cause, Coded, Score, Team};

/// An entry as JSON without line breaks; the order of the fields is always the same.
pub(crate) fn write(entry: &mem::Entry) -> String {
    write_all(entry, None)
}

/// The same with the rules as they were given, where an entry has rules.
pub(crate) fn write_with_rules(entry: &mem::Entry, given: &Value) -> String {
    write_all(entry, Some(given))
}

fn write_all(entry: &mem::Entry, given_rules: Option<&Value>) -> String {
    let mut w = Writer::new();
    w.number("n", entry.n.into());
    if let Some(at) = entry.at {
        w.number("at", at);
    }
    write_kind(&mut w, &entry.kind, given_rules);
    w.some_text("insist", entry.insist.as_deref());
    w.end()
}

fn write_kind(w: &mut Writer, kind: &mem::Kind, given_rules: Option<&Value>) {
    use mem::Kind as K;
    let written = |rules| match given_rules {
        Some(given) => given.clone(),
        None => frozen_rules::write(rules),
    };
    w.text("kind", code(kind));
    match kind {
        K::Match(h) => {
            write_details(w, &h.details);
            write_names(w, &ByTeam::new(|t| Some(h.names[t].as_str())));
            w.value("rules", &written(&h.rules));
            w.flag("practice", h.practice);
        }
        K::Heading(given) => {
            write_details(w, &given.details);
            write_names(w, &ByTeam::new(|t| given.names[t].as_deref()));
            if let Some(rules) = &given.rules {
                w.value("rules", &written(rules));
            }
        }
        K::TeamList(list) => {
            w.text("team", list.team.letter());
            w.objects("players", &list.players, |w, p| {
                w.number("number", p.number.0.into());
                w.some_text("name", p.name.as_deref());
                w.flag("captain", p.captain);
                w.flag("libero", p.libero);
            });
            if !list.staff.is_empty() {
                w.objects("staff", &list.staff, |w, s| {
                    w.text("role", &s.role);
                    w.some_text("name", s.name.as_deref());
                });
            }
        }
        K::Check(c) => {
            w.text("item", &c.item);
            w.value("ok", &Value::Bool(c.ok));
            w.some_text("note", c.note.as_deref());
        }
        K::Toss(t) => {
            w.text("first_service", t.first_service.letter());
            w.text("left", t.left.letter());
            if let Some(won) = t.won {
                w.text("won_by", won.by.letter());
                w.text("chose", won.chose.code());
            }
        }
        K::FirstService { team, left } => {
            w.text("team", team.letter());
            w.text("left", left.letter());
        }
        K::Joined(joined) => {
            if !joined.sets.is_empty() {
                w.objects("sets", &joined.sets, |w, score| write_score(w, *score));
            }
            if let Some(score) = joined.score {
                w.object("score", |w| write_score(w, score));
            }
            w.some_text("serving", joined.serving.map(Team::letter));
            w.some_text("left", joined.left.map(Team::letter));
        }
        K::ScoreCorrection {
            score,
            serving,
            why,
        } => {
            w.object("score", |w| write_score(w, *score));
            w.some_text("serving", serving.map(Team::letter));
            w.text("why", why);
        }
        K::WrongInformation { score, why } => {
            w.object("score", |w| write_score(w, *score));
            w.text("why", why);
        }
        K::Discrepancy {
            team,
            changes,
            kept,
        } => {
            w.text("team", team.letter());
            if !changes.is_empty() {
                w.objects("changes", changes, write_change);
            }
            w.flag("kept", *kept);
        }
        K::LineUp { team, positions } => {
            w.text("team", team.letter());
            w.shirts("positions", positions);
        }
        K::BeginSet | K::ChangeCourts | K::TimeUp => {}
        K::Rally { won_by, cause, by } => {
            w.text("won_by", won_by.letter());
            w.some_text("cause", cause.map(Cause::code));
            write_by(w, *by);
        }
        K::Explain {
            entry,
            cause,
            by,
            seen_by,
        } => {
            w.number("entry", (*entry).into());
            w.text("cause", cause.code());
            write_by(w, *by);
            w.some_text("seen_by", seen_by.map(Coded::code));
        }
        K::Replay { why, hurt, rally } => {
            w.text("why", why.code());
            if let Some(hurt) = hurt {
                write_person(w, *hurt);
            }
            if let Some(rally) = rally {
                w.number("rally", (*rally).into());
            }
        }
        K::TimeOut { team }
        | K::ImproperRequest { team }
        | K::LateReplacement { team }
        | K::Default { team } => {
            w.text("team", team.letter());
        }
        K::Substitution {
            team,
            changes,
            reason,
        } => {
            w.text("team", team.letter());
            w.objects("changes", changes, write_change);
            w.some_text("reason", reason.map(Coded::code));
        }
        K::LiberoReplacement { team, change } => {
            w.text("team", team.letter());
            write_change(w, change);
        }
        K::NewLibero {
            team,
            replaces,
            number,
            why,
        } => {
            w.text("team", team.letter());
            match replaces[..] {
                [one] => w.number("replaces", one.0.into()),
                _ => w.shirts("replaces", replaces),
            }
            w.number("number", number.0.into());
            w.some_text("why", why.map(Coded::code));
        }
        K::Delay { team, request } => {
            w.text("team", team.letter());
            w.flag("request", *request);
        }
        K::Misconduct {
            team,
            who,
            sanction,
        } => {
            w.text("team", team.letter());
            w.object("who", |w| match who {
                mem::Who::Player(number) => w.number("player", number.0.into()),
                mem::Who::Staff(role) => w.text("staff", role),
            });
            w.text("sanction", sanction.code());
        }
        K::LateFault(fault) => write_late_fault(w, fault),
        K::Recovery { team, number } => {
            w.text("team", team.letter());
            w.number("number", number.0.into());
        }
        K::Incomplete { team, scope } => {
            w.text("team", team.letter());
            w.text("scope", scope.code());
        }
        K::Suspend { why } => w.text("why", why),
        K::Resume { court } => w.text("court", court.code()),
        K::Timer(t) => {
            w.text("what", t.what.code());
            w.some_text("team", t.team.map(Team::letter));
            w.number("seconds", t.seconds.into());
            w.text("action", t.action.code());
        }
        K::Remark { text, team } => {
            w.text("text", text);
            w.some_text("team", team.map(Team::letter));
        }
        K::GameCaptain { team, number } => {
            w.text("team", team.letter());
            w.number("number", number.0.into());
        }
        K::Protest { team, number, text } => {
            w.text("team", team.letter());
            if let Some(number) = number {
                w.number("number", number.0.into());
            }
            w.text("text", text);
        }
        K::ProtestStatement { about, text } => {
            match about {
                mem::Protested::Entry(entry) => w.number("entry", (*entry).into()),
                mem::Protested::Unannounced(team) => w.text("team", team.letter()),
            }
            w.text("text", text);
        }
        K::Sign { role, name } => {
            w.text("role", role);
            w.some_text("name", name.as_deref());
        }
        K::Strike { entry, why } => {
            w.number("entry", (*entry).into());
            w.some_text("why", why.as_deref());
        }
        K::Answer { entry, choice } => {
            w.number("entry", (*entry).into());
            w.text("choice", choice);
        }
        K::Seal { code } => w.text("code", code),
        K::Reopen { why } => w.some_text("why", why.as_deref()),
    }
}

/// The name of a kind in the record.
fn code(kind: &mem::Kind) -> &'static str {
    use mem::Kind as K;
    match kind {
        K::Match(_) => "match",
        K::Heading(_) => "heading",
        K::TeamList(_) => "team_list",
        K::Check(_) => "check",
        K::Toss(_) => "toss",
        K::FirstService { .. } => "first_service",
        K::Joined(_) => "joined",
        K::ScoreCorrection { .. } => "score_correction",
        K::WrongInformation { .. } => "wrong_information",
        K::Discrepancy { .. } => "discrepancy",
        K::LateReplacement { .. } => "late_replacement",
        K::TimeUp => "time_up",
        K::LineUp { .. } => "line_up",
        K::BeginSet => "begin_set",
        K::Rally { .. } => "rally",
        K::Explain { .. } => "explain",
        K::Replay { .. } => "replay",
        K::TimeOut { .. } => "time_out",
        K::Substitution { .. } => "substitution",
        K::LiberoReplacement { .. } => "libero_replacement",
        K::NewLibero { .. } => "new_libero",
        K::ImproperRequest { .. } => "improper_request",
        K::Delay { .. } => "delay",
        K::Misconduct { .. } => "misconduct",
        K::LateFault(_) => "late_fault",
        K::Recovery { .. } => "recovery",
        K::Incomplete { .. } => "incomplete",
        K::Default { .. } => "default",
        K::ChangeCourts => "change_courts",
        K::Suspend { .. } => "suspend",
        K::Resume { .. } => "resume",
        K::Timer(_) => "timer",
        K::Remark { .. } => "remark",
        K::GameCaptain { .. } => "game_captain",
        K::Protest { .. } => "protest",
        K::ProtestStatement { .. } => "protest_statement",
        K::Sign { .. } => "sign",
        K::Strike { .. } => "strike",
        K::Answer { .. } => "answer",
        K::Seal { .. } => "seal",
        K::Reopen { .. } => "reopen",
    }
}

fn write_details(w: &mut Writer, details: &mem::Details) {
    for detail in mem::Detail::ALL {
        w.some_text(detail.code(), details[detail].as_deref());
    }
}

/// The names that are given; nothing where none is.
fn write_names(w: &mut Writer, names: &ByTeam<Option<&str>>) {
    if names.iter().all(|(_, name)| name.is_none()) {
        return;
    }
    w.object("teams", |w| {
        for (team, name) in names.iter() {
            if let Some(name) = name {
                w.object(team.letter(), |w| w.text("name", name));
            }
        }
    });
}

fn write_by(w: &mut Writer, by: Option<mem::By>) {
    if let Some(by) = by {
        w.object("by", |w| write_person(w, by));
    }
}

fn write_person(w: &mut Writer, person: mem::By) {
    w.text("team", person.team.letter());
    if let Some(number) = person.number {
        w.number("number", number.0.into());
    }
}

fn write_score(w: &mut Writer, score: Score) {
    w.number("A", score.a.into());
    w.number("B", score.b.into());
}

fn write_change(w: &mut Writer, change: &mem::Change) {
    w.number("out", change.out.0.into());
    w.number("in", change.into.0.into());
}

fn write_late_fault(w: &mut Writer, fault: &mem::LateFault) {
    w.text("team", fault.team.letter());
    w.text("fault", fault.fault.code());
    match fault.since {
        Some(since) => w.object("since", |w| {
            write_score(w, since.score);
            if let Some(set) = since.set {
                w.number("set", set.into());
            }
        }),
        None => w.value("since", &Value::Null),
    }
    w.text("during", fault.during.code());
    if let Some(positions) = &fault.positions {
        w.shirts("positions", positions);
    }
}
