//! An entry from its JSON.

use serde_json::Value;

use super::frozen_rules;
use crate::entry_problem::EntryProblem;
use crate::fields::Fields;
use game::entry as mem;
use game::{Joined, Timed};
use rules::{ByTeam, Cause, Score, Shirt, Team};

/// An entry from its JSON.
///
/// # Errors
/// What cannot be read.
pub(crate) fn read(value: &Value) -> Result<mem::Entry, EntryProblem> {
    let fields = Fields::of(value).ok_or(EntryProblem::EntryNoObject)?;
    Ok(mem::Entry {
        at: fields.some_time("at")?,
        insist: fields.some_text("insist")?,
        ..mem::Entry::new(fields.u32("n")?, read_kind(&fields)?)
    })
}

fn read_kind(f: &Fields) -> Result<mem::Kind, EntryProblem> {
    use mem::Kind as K;
    let kind = f.text("kind")?;
    let team = || f.code("team");
    Ok(match kind.as_str() {
        "match" => {
            let names = f.object("teams")?;
            let name = |team: &str| names.object(team)?.name_or_empty("name");
            let names = ByTeam {
                a: name("A")?,
                b: name("B")?,
            };
            K::Match(Box::new(mem::Heading {
                details: read_details(f)?,
                practice: f.flag("practice")?,
                ..mem::Heading::new(names, frozen_rules::read(f.object("rules")?.0)?)
            }))
        }
        "heading" => {
            let mut given = mem::Amendment {
                details: read_details(f)?,
                ..mem::Amendment::default()
            };
            if let Some(names) = f.some_object("teams")? {
                for team in Team::BOTH {
                    let key = team.letter();
                    if let Some(name) = names.some_object(key)? {
                        given.names[team] = Some(name.name_or_empty("name")?);
                    }
                }
            }
            if let Some(rules) = f.some_object("rules")? {
                given.rules = Some(frozen_rules::read(rules.0)?);
            }
            K::Heading(Box::new(given))
        }
        "team_list" => {
            let mut list = mem::TeamList {
                team: team()?,
                players: Vec::new(),
                staff: Vec::new(),
            };
            for p in f.objects("players")? {
                list.players.push(mem::Player {
                    number: p.shirt("number")?,
                    name: p.some_name("name")?,
                    captain: p.flag("captain")?,
                    libero: p.flag("libero")?,
                });
            }
            if f.has("staff") {
                for s in f.objects("staff")? {
                    list.staff.push(mem::Staff {
                        role: s.text("role")?,
                        name: s.some_name("name")?,
                    });
                }
            }
            K::TeamList(list)
        }
        "check" => K::Check(mem::Check {
            item: f.text("item")?,
            ok: f.given_flag("ok")?,
            note: f.some_text("note")?,
        }),
        "toss" => K::Toss(mem::Toss {
            first_service: f.code("first_service")?,
            left: f.code("left")?,
            won: if f.has("won_by") || f.has("chose") {
                Some(mem::Won {
                    by: f.code("won_by")?,
                    chose: f.code("chose")?,
                })
            } else {
                None
            },
        }),
        "first_service" => K::FirstService {
            team: team()?,
            left: f.code("left")?,
        },
        "joined" => K::Joined(Joined {
            sets: if f.has("sets") {
                let sets = f.objects("sets")?;
                sets.iter().map(read_score).collect::<Result<_, _>>()?
            } else {
                Vec::new()
            },
            score: match f.some_object("score")? {
                Some(score) => Some(read_score(&score)?),
                None => None,
            },
            serving: f.some_code("serving")?,
            left: f.some_code("left")?,
        }),
        "score_correction" => K::ScoreCorrection {
            score: read_score(&f.object("score")?)?,
            serving: f.some_code("serving")?,
            why: f.text("why")?,
        },
        "wrong_information" => K::WrongInformation {
            score: read_score(&f.object("score")?)?,
            why: f.text("why")?,
        },
        "discrepancy" => {
            let mut changes = Vec::new();
            if f.has("changes") {
                for c in f.objects("changes")? {
                    changes.push(read_change(&c)?);
                }
            }
            K::Discrepancy {
                team: team()?,
                changes,
                kept: f.flag("kept")?,
            }
        }
        "late_replacement" => K::LateReplacement { team: team()? },
        "time_up" => K::TimeUp,
        "line_up" => K::LineUp {
            team: team()?,
            positions: f.shirts("positions")?,
        },
        "begin_set" => K::BeginSet,
        "rally" => K::Rally {
            won_by: f.code("won_by")?,
            cause: if f.has("cause") {
                Some(read_cause(f)?)
            } else {
                None
            },
            by: read_by(f)?,
        },
        "explain" => K::Explain {
            entry: f.u32("entry")?,
            cause: read_cause(f)?,
            by: read_by(f)?,
            seen_by: f.some_code("seen_by")?,
        },
        "replay" => K::Replay {
            why: f.code("why")?,
            hurt: read_person(f)?,
            rally: f.some_u32("rally")?,
        },
        "time_out" => K::TimeOut { team: team()? },
        "substitution" => {
            let mut changes = Vec::new();
            for c in f.objects("changes")? {
                changes.push(read_change(&c)?);
            }
            K::Substitution {
                team: team()?,
                changes,
                reason: f.some_code("reason")?,
            }
        }
        "libero_replacement" => K::LiberoReplacement {
            team: team()?,
            change: read_change(f)?,
        },
        "new_libero" => K::NewLibero {
            team: team()?,
            replaces: if f.has_list("replaces") {
                f.shirts("replaces")?
            } else {
                vec![f.shirt("replaces")?]
            },
            number: f.shirt("number")?,
            why: f.some_code("why")?,
        },
        "improper_request" => K::ImproperRequest { team: team()? },
        "delay" => K::Delay {
            team: team()?,
            request: f.flag("request")?,
        },
        "misconduct" => K::Misconduct {
            team: team()?,
            who: read_who(&f.object("who")?)?,
            sanction: f.code("sanction")?,
        },
        "late_fault" => K::LateFault(mem::LateFault {
            team: team()?,
            fault: f.code("fault")?,
            since: match f.some_object("since")? {
                Some(since) => Some(mem::Since {
                    score: read_score(&since)?,
                    set: since.some_u8("set")?,
                }),
                None => None,
            },
            during: f.code("during")?,
            positions: if f.has("positions") {
                Some(f.shirts("positions")?)
            } else {
                None
            },
        }),
        "recovery" => K::Recovery {
            team: team()?,
            number: f.shirt("number")?,
        },
        "incomplete" => K::Incomplete {
            team: team()?,
            scope: f.code("scope")?,
        },
        "default" => K::Default { team: team()? },
        "change_courts" => K::ChangeCourts,
        "suspend" => K::Suspend {
            why: f.text_or_empty("why")?,
        },
        "resume" => K::Resume {
            court: f.code("court")?,
        },
        "timer" => K::Timer(mem::Timer {
            what: Timed::of_code(&f.text("what")?),
            team: f.some_code("team")?,
            seconds: f.u32("seconds")?,
            action: f.code("action")?,
        }),
        "remark" => K::Remark {
            text: f.text("text")?,
            team: f.some_code("team")?,
        },
        "game_captain" => K::GameCaptain {
            team: team()?,
            number: f.shirt("number")?,
        },
        "protest" => K::Protest {
            team: team()?,
            number: f.some_u16("number")?.map(Shirt),
            text: f.text_or_empty("text")?,
        },
        "protest_statement" => K::ProtestStatement {
            about: match f.some_u32("entry")? {
                Some(entry) => mem::Protested::Entry(entry),
                None => mem::Protested::Unannounced(team()?),
            },
            text: f.text("text")?,
        },
        "sign" => K::Sign {
            role: f.text("role")?,
            name: f.some_name("name")?,
        },
        "strike" => K::Strike {
            entry: f.u32("entry")?,
            why: f.some_text("why")?,
        },
        "answer" => K::Answer {
            entry: f.u32("entry")?,
            choice: f.text("choice")?,
        },
        "seal" => K::Seal {
            code: f.text("code")?,
        },
        "reopen" => K::Reopen {
            why: f.some_text("why")?,
        },
        _ => return Err(EntryProblem::UnknownKind(kind)),
    })
}

fn read_cause(f: &Fields) -> Result<Cause, EntryProblem> {
    let code = f.text("cause")?;
    Cause::from_code(&code).ok_or(EntryProblem::UnknownCause(code))
}

fn read_by(f: &Fields) -> Result<Option<mem::By>, EntryProblem> {
    let Some(by) = f.some_object("by")? else {
        return Ok(None);
    };
    by.code::<Team>("team")?;
    read_person(&by)
}

/// A person of a team, where a team is named.
fn read_person(f: &Fields) -> Result<Option<mem::By>, EntryProblem> {
    let number = f.some_u16("number")?.map(Shirt);
    let team = f.some_code("team")?;
    Ok(team.map(|team| mem::By { team, number }))
}

fn read_score(f: &Fields) -> Result<Score, EntryProblem> {
    Ok(Score {
        a: f.u16("A")?,
        b: f.u16("B")?,
    })
}

fn read_change(f: &Fields) -> Result<mem::Change, EntryProblem> {
    Ok(mem::Change {
        out: f.shirt("out")?,
        into: f.shirt("in")?,
    })
}

fn read_who(who: &Fields) -> Result<mem::Who, EntryProblem> {
    match (who.has("player"), who.has("staff")) {
        (true, false) => Ok(mem::Who::Player(who.shirt("player")?)),
        (false, true) => Ok(mem::Who::Staff(who.text("staff")?)),
        _ => Err(EntryProblem::NobodyNamed),
    }
}

fn read_details(f: &Fields) -> Result<mem::Details, EntryProblem> {
    let mut details = mem::Details::default();
    for detail in mem::Detail::ALL {
        details[detail] = f.some_text(detail.code())?;
    }
    Ok(details)
}
