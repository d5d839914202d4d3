//! How an entry is written down in JSON and read again, apart from the types in memory.
//!
//! The names here leave the program; `FORMAT.md` beside this file describes them. Fields are read and
//! written by hand with the helpers of [`super::fields`]: derived code for a tagged, flattened type made
//! 150 KB of WebAssembly.

use serde_json::{Map, Value};

use super::fields::{Fields, Writer};
use crate::game::entry as mem;
use crate::game::Timed;
use crate::rules::{
    ByTeam, Cause, Decider, Edition, Preset, Roster, Rules, Score, SetTarget, Sets, Shirt,
    SubstitutionPolicy, Substitutions, Team, TimeOuts, UnderNet, WarmUp, WarmUpStyle,
};

type Words<T> = [(&'static str, T)];

const TEAMS: &Words<Team> = &[("A", Team::A), ("B", Team::B)];
const CHOSE: &Words<mem::About> = &[("service", mem::About::Service), ("side", mem::About::Side)];
const STOPS: &Words<mem::ReplayWhy> = &[
    ("double_fault", mem::ReplayWhy::DoubleFault),
    ("interference", mem::ReplayWhy::Interference),
    ("injury", mem::ReplayWhy::Injury),
    ("other", mem::ReplayWhy::Other),
];
const SEEN_BY: &Words<mem::SeenBy> = &[
    ("second_referee", mem::SeenBy::SecondReferee),
    ("line_judge", mem::SeenBy::LineJudge),
    ("scorer", mem::SeenBy::Scorer),
];
const FORCED: &Words<mem::Forced> = &[
    ("injury", mem::Forced::Injury),
    ("expelled", mem::Forced::Expelled),
    ("disqualified", mem::Forced::Disqualified),
];
const LIBERO_WHY: &Words<mem::LiberoWhy> = &[
    ("unable", mem::LiberoWhy::Unable),
    ("declared", mem::LiberoWhy::Declared),
];
const LEVELS: &Words<mem::Level> = &[
    ("warning", mem::Level::Warning),
    ("penalty", mem::Level::Penalty),
    ("expulsion", mem::Level::Expulsion),
    ("disqualification", mem::Level::Disqualification),
];
const FAULTS: &Words<mem::Fault> = &[
    ("rotation", mem::Fault::Rotation),
    ("illegal_substitution", mem::Fault::IllegalSubstitution),
    ("illegal_libero", mem::Fault::IllegalLibero),
    ("wrong_line_up", mem::Fault::WrongLineUp),
    ("unregistered_player", mem::Fault::UnregisteredPlayer),
];
const FOUND: &Words<mem::Found> = &[
    ("rally", mem::Found::Rally),
    ("after_rally", mem::Found::AfterRally),
];
const SCOPES: &Words<mem::Scope> = &[("set", mem::Scope::Set), ("match", mem::Scope::Match)];
const COURTS: &Words<mem::Court> = &[("same", mem::Court::Same), ("other", mem::Court::Other)];
const ACTIONS: &Words<mem::TimerAction> = &[
    ("start", mem::TimerAction::Start),
    ("stop", mem::TimerAction::Stop),
];
const POLICIES: &Words<SubstitutionPolicy> = &[
    ("paired", SubstitutionPolicy::Paired),
    ("same_place", SubstitutionPolicy::SamePlace),
    ("free", SubstitutionPolicy::Free),
];
const STYLES: &Words<WarmUpStyle> = &[
    ("shared", WarmUpStyle::Shared),
    ("separate", WarmUpStyle::Separate),
];
const UNDER_NET: &Words<UnderNet> = &[
    ("standard", UnderNet::Standard),
    ("junior", UnderNet::Junior),
];
const EDITIONS: &Words<Edition> = &[("2025", Edition::E2025), ("2021", Edition::E2021)];

/// The word for a value; every value of these lists has one.
fn word<T: Copy + PartialEq>(words: &Words<T>, value: T) -> &'static str {
    let found = words.iter().find(|(_, v)| *v == value);
    found.map_or("", |(word, _)| word)
}

// ---- reading -----------------------------------------------------------------------------------

/// An entry from its JSON.
///
/// # Errors
/// One sentence about what cannot be read.
pub(super) fn read(value: &Value) -> Result<mem::Entry, String> {
    let fields = Fields::of(value).ok_or("the entry is not an object")?;
    Ok(mem::Entry {
        n: fields.u32("n")?,
        at: fields.some_time("at")?,
        insist: fields.some_text("insist")?,
        kind: read_kind(&fields)?,
    })
}

fn read_kind(f: &Fields) -> Result<mem::Kind, String> {
    use mem::Kind as K;
    let kind = f.text("kind")?;
    let team = || f.word("team", TEAMS);
    Ok(match kind.as_str() {
        "match" => {
            let names = f.object("teams")?;
            let name = |team: &str| names.object(team)?.text_or_empty("name");
            let names = ByTeam {
                a: name("A")?,
                b: name("B")?,
            };
            K::Match(Box::new(mem::Heading {
                details: read_details(f)?,
                ..mem::Heading::new(names, read_rules(f.object("rules")?.0)?)
            }))
        }
        "heading" => {
            let mut given = mem::Amendment {
                details: read_details(f)?,
                ..mem::Amendment::default()
            };
            if let Some(names) = f.some_object("teams")? {
                for (key, team) in TEAMS {
                    if let Some(name) = names.some_object(key)? {
                        given.names[*team] = Some(name.text_or_empty("name")?);
                    }
                }
            }
            if let Some(rules) = f.some_object("rules")? {
                given.rules = Some(read_rules(rules.0)?);
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
                    name: p.some_text("name")?,
                    captain: p.flag("captain")?,
                    libero: p.flag("libero")?,
                });
            }
            if f.has("staff") {
                for s in f.objects("staff")? {
                    list.staff.push(mem::Staff {
                        role: s.text("role")?,
                        name: s.some_text("name")?,
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
            first_service: f.word("first_service", TEAMS)?,
            left: f.word("left", TEAMS)?,
            won: if f.has("won_by") || f.has("chose") {
                Some(mem::Won {
                    by: f.word("won_by", TEAMS)?,
                    chose: f.word("chose", CHOSE)?,
                })
            } else {
                None
            },
        }),
        "line_up" => K::LineUp {
            team: team()?,
            positions: f.shirts("positions")?,
        },
        "begin_set" => K::BeginSet,
        "rally" => K::Rally {
            won_by: f.word("won_by", TEAMS)?,
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
            seen_by: f.some_word("seen_by", SEEN_BY)?,
        },
        "replay" => K::Replay {
            why: f.word("why", STOPS)?,
            hurt: read_person(f)?,
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
                reason: f.some_word("reason", FORCED)?,
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
            why: f.some_word("why", LIBERO_WHY)?,
        },
        "improper_request" => K::ImproperRequest { team: team()? },
        "delay" => K::Delay {
            team: team()?,
            request: f.flag("request")?,
        },
        "misconduct" => K::Misconduct {
            team: team()?,
            who: read_who(&f.object("who")?)?,
            sanction: f.word("sanction", LEVELS)?,
        },
        "late_fault" => K::LateFault(mem::LateFault {
            team: team()?,
            fault: f.word("fault", FAULTS)?,
            since: match f.some_object("since")? {
                Some(since) => Some(mem::Since {
                    score: Score {
                        a: since.u16("A")?,
                        b: since.u16("B")?,
                    },
                    set: since.some_u8("set")?,
                }),
                None => None,
            },
            during: f.word("during", FOUND)?,
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
            scope: f.word("scope", SCOPES)?,
        },
        "default" => K::Default { team: team()? },
        "change_courts" => K::ChangeCourts,
        "suspend" => K::Suspend {
            why: f.text_or_empty("why")?,
        },
        "resume" => K::Resume {
            court: f.word("court", COURTS)?,
        },
        "timer" => K::Timer(mem::Timer {
            what: Timed::of_code(&f.text("what")?),
            team: f.some_word("team", TEAMS)?,
            seconds: f.u32("seconds")?,
            action: f.word("action", ACTIONS)?,
        }),
        "remark" => K::Remark {
            text: f.text("text")?,
            team: f.some_word("team", TEAMS)?,
        },
        "sign" => K::Sign {
            role: f.text("role")?,
            name: f.some_text("name")?,
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
        _ => return Err(format!("the kind `{kind}` is not known")),
    })
}

fn read_cause(f: &Fields) -> Result<Cause, String> {
    let code = f.text("cause")?;
    Cause::from_code(&code).ok_or_else(|| format!("the cause `{code}` is not known"))
}

fn read_by(f: &Fields) -> Result<Option<mem::By>, String> {
    let Some(by) = f.some_object("by")? else {
        return Ok(None);
    };
    by.word("team", TEAMS)?;
    read_person(&by)
}

/// A person of a team, where a team is named.
fn read_person(f: &Fields) -> Result<Option<mem::By>, String> {
    let number = f.some_u16("number")?.map(Shirt);
    let team = f.some_word("team", TEAMS)?;
    Ok(team.map(|team| mem::By { team, number }))
}

fn read_change(f: &Fields) -> Result<mem::Change, String> {
    Ok(mem::Change {
        out: f.shirt("out")?,
        into: f.shirt("in")?,
    })
}

fn read_who(who: &Fields) -> Result<mem::Who, String> {
    match (who.has("player"), who.has("staff")) {
        (true, false) => Ok(mem::Who::Player(who.shirt("player")?)),
        (false, true) => Ok(mem::Who::Staff(who.text("staff")?)),
        _ => Err("`who` names one `player` or one of the `staff`".to_owned()),
    }
}

// ---- writing -----------------------------------------------------------------------------------

/// An entry as JSON without line breaks; the order of the fields is always the same.
pub(super) fn write(entry: &mem::Entry) -> String {
    let mut w = Writer::new();
    w.number("n", entry.n.into());
    if let Some(at) = entry.at {
        w.number("at", at);
    }
    write_kind(&mut w, &entry.kind);
    w.some_text("insist", entry.insist.as_deref());
    w.end()
}

fn write_kind(w: &mut Writer, kind: &mem::Kind) {
    use mem::Kind as K;
    w.text("kind", code(kind));
    match kind {
        K::Match(h) => {
            write_details(w, &h.details);
            write_names(w, &ByTeam::new(|t| Some(h.names[t].as_str())));
            w.value("rules", &Value::Object(write_rules(&h.rules)));
        }
        K::Heading(given) => {
            write_details(w, &given.details);
            write_names(w, &ByTeam::new(|t| given.names[t].as_deref()));
            if let Some(rules) = &given.rules {
                w.value("rules", &Value::Object(write_rules(rules)));
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
                w.text("chose", word(CHOSE, won.chose));
            }
        }
        K::LineUp { team, positions } => {
            w.text("team", team.letter());
            w.shirts("positions", positions);
        }
        K::BeginSet | K::ChangeCourts => {}
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
            w.some_text("seen_by", seen_by.map(|s| word(SEEN_BY, s)));
        }
        K::Replay { why, hurt } => {
            w.text("why", word(STOPS, *why));
            if let Some(hurt) = hurt {
                write_person(w, *hurt);
            }
        }
        K::TimeOut { team } | K::ImproperRequest { team } | K::Default { team } => {
            w.text("team", team.letter());
        }
        K::Substitution {
            team,
            changes,
            reason,
        } => {
            w.text("team", team.letter());
            w.objects("changes", changes, write_change);
            w.some_text("reason", reason.map(|r| word(FORCED, r)));
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
            w.some_text("why", why.map(|y| word(LIBERO_WHY, y)));
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
            w.text("sanction", word(LEVELS, *sanction));
        }
        K::LateFault(fault) => write_late_fault(w, fault),
        K::Recovery { team, number } => {
            w.text("team", team.letter());
            w.number("number", number.0.into());
        }
        K::Incomplete { team, scope } => {
            w.text("team", team.letter());
            w.text("scope", word(SCOPES, *scope));
        }
        K::Suspend { why } => w.text("why", why),
        K::Resume { court } => w.text("court", word(COURTS, *court)),
        K::Timer(t) => {
            w.text("what", t.what.code());
            w.some_text("team", t.team.map(Team::letter));
            w.number("seconds", t.seconds.into());
            w.text("action", word(ACTIONS, t.action));
        }
        K::Remark { text, team } => {
            w.text("text", text);
            w.some_text("team", team.map(Team::letter));
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
        K::Sign { .. } => "sign",
        K::Strike { .. } => "strike",
        K::Answer { .. } => "answer",
        K::Seal { .. } => "seal",
        K::Reopen { .. } => "reopen",
    }
}

fn read_details(f: &Fields) -> Result<mem::Details, String> {
    let mut details = mem::Details::default();
    for detail in mem::Detail::ALL {
        details[detail] = f.some_text(detail.code())?;
    }
    Ok(details)
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

fn write_change(w: &mut Writer, change: &mem::Change) {
    w.number("out", change.out.0.into());
    w.number("in", change.into.0.into());
}

fn write_late_fault(w: &mut Writer, fault: &mem::LateFault) {
    w.text("team", fault.team.letter());
    w.text("fault", word(FAULTS, fault.fault));
    match fault.since {
        Some(since) => w.object("since", |w| {
            w.number("A", since.score.a.into());
            w.number("B", since.score.b.into());
            if let Some(set) = since.set {
                w.number("set", set.into());
            }
        }),
        None => w.value("since", &Value::Null),
    }
    w.text("during", word(FOUND, fault.during));
    if let Some(positions) = &fault.positions {
        w.shirts("positions", positions);
    }
}

// ---- rules -------------------------------------------------------------------------------------

/// Rules from a preset name and the fields that differ from it: nested fields merge one by one,
/// `sets` is replaced whole.
///
/// # Errors
/// One sentence about what cannot be read.
pub(super) fn read_rules(given: &Map<String, Value>) -> Result<Rules, String> {
    let preset = match given.get("preset") {
        None => Preset::International,
        Some(Value::String(code)) => {
            Preset::from_code(code).ok_or_else(|| format!("unknown preset `{code}`"))?
        }
        Some(_) => return Err("the preset is not a name".to_owned()),
    };
    let mut full = full_map(&preset.rules());
    for (key, value) in given.iter().filter(|(key, _)| *key != "preset") {
        let Some(base) = full.get_mut(key) else {
            return Err(format!("unknown rule `{key}`"));
        };
        match (base, value) {
            (Value::Object(base), Value::Object(fields)) if key != "sets" => {
                for (name, field) in fields {
                    match base.get_mut(name) {
                        Some(slot) => *slot = field.clone(),
                        None => return Err(format!("unknown rule `{key}.{name}`")),
                    }
                }
            }
            // A year may stand there as a number.
            (base, Value::Number(year)) if key == "edition" => *base = year.to_string().into(),
            (base, value) => *base = value.clone(),
        }
    }
    rules_of(preset, &Fields(&full)).map_err(|e| format!("rules: {e}"))
}

fn rules_of(preset: Preset, f: &Fields) -> Result<Rules, String> {
    let target = |f: &Fields| {
        Ok::<_, String>(SetTarget {
            target: f.u16("target")?,
            lead: f.u16("lead")?,
            cap: f.some_u16("cap")?,
        })
    };
    let sets = f.object("sets")?;
    let decider = f.object("decider")?;
    let time_outs = f.object("time_outs")?;
    let substitutions = f.object("substitutions")?;
    let roster = f.object("roster")?;
    let warm_up = f.object("warm_up")?;
    Ok(Rules {
        preset,
        edition: f.word("edition", EDITIONS)?,
        sets: match (sets.has("best_of"), sets.has("fixed")) {
            (true, false) => Sets::BestOf(sets.u8("best_of")?),
            (false, true) => Sets::Fixed(sets.u8("fixed")?),
            _ => return Err("`sets` has one number, `best_of` or `fixed`".to_owned()),
        },
        set: target(&f.object("set")?)?,
        decider: Decider {
            to: target(&decider)?,
            change_courts_at: decider.some_u16("change_courts_at")?,
        },
        time_outs: TimeOuts {
            per_set: time_outs.some_u8("per_set")?,
            seconds: time_outs.u16("seconds")?,
        },
        substitutions: Substitutions {
            policy: substitutions.word("policy", POLICIES)?,
            per_set: substitutions.some_u8("per_set")?,
            entries_per_player: substitutions.some_u8("entries_per_player")?,
        },
        liberos: f.u8("liberos")?,
        line_ups: f.given_flag("line_ups")?,
        players_on_court: f.u8("players_on_court")?,
        roster: Roster {
            max: roster.u8("max")?,
            min_number: roster.u16("min_number")?,
            max_number: roster.u16("max_number")?,
        },
        warm_up: WarmUp {
            style: warm_up.word("style", STYLES)?,
            minutes: warm_up.u8("minutes")?,
        },
        interval_seconds: f.u16("interval_seconds")?,
        service_seconds: f.u16("service_seconds")?,
        under_net: f.word("under_net", UNDER_NET)?,
    })
}

/// The preset and the fields that differ from it.
fn write_rules(rules: &Rules) -> Map<String, Value> {
    let base = full_map(&rules.preset.rules());
    let mut out = Map::new();
    out.insert("preset".to_owned(), rules.preset.code().into());
    for (key, value) in full_map(rules) {
        let same = &base[&key];
        match (&value, same) {
            (Value::Object(fields), Value::Object(base)) if key != "sets" => {
                let differing: Map<String, Value> = fields
                    .iter()
                    .filter(|(name, field)| base.get(*name) != Some(field))
                    .map(|(name, field)| (name.clone(), field.clone()))
                    .collect();
                if !differing.is_empty() {
                    out.insert(key, Value::Object(differing));
                }
            }
            _ if value == *same => {}
            _ => {
                out.insert(key, value);
            }
        }
    }
    out
}

fn full_map(r: &Rules) -> Map<String, Value> {
    let some = |n: Option<u16>| n.map_or(Value::Null, Value::from);
    let small = |n: Option<u8>| some(n.map(u16::from));
    let target = |t: &SetTarget| {
        [
            ("target", Value::from(t.target)),
            ("lead", t.lead.into()),
            ("cap", some(t.cap)),
        ]
    };
    let sets = match r.sets {
        Sets::BestOf(n) => ("best_of", Value::from(n)),
        Sets::Fixed(n) => ("fixed", n.into()),
    };
    let mut decider = map(&target(&r.decider.to));
    let change = some(r.decider.change_courts_at);
    decider.insert("change_courts_at".to_owned(), change);
    let time_outs = [
        ("per_set", small(r.time_outs.per_set)),
        ("seconds", r.time_outs.seconds.into()),
    ];
    let limits = r.substitutions;
    let substitutions = [
        ("policy", word(POLICIES, limits.policy).into()),
        ("per_set", small(limits.per_set)),
        ("entries_per_player", small(limits.entries_per_player)),
    ];
    let roster = [
        ("max", r.roster.max.into()),
        ("min_number", r.roster.min_number.into()),
        ("max_number", r.roster.max_number.into()),
    ];
    let warm_up = [
        ("style", word(STYLES, r.warm_up.style).into()),
        ("minutes", r.warm_up.minutes.into()),
    ];
    map(&[
        ("edition", word(EDITIONS, r.edition).into()),
        ("sets", map(&[sets]).into()),
        ("set", map(&target(&r.set)).into()),
        ("decider", decider.into()),
        ("time_outs", map(&time_outs).into()),
        ("substitutions", map(&substitutions).into()),
        ("liberos", r.liberos.into()),
        ("line_ups", r.line_ups.into()),
        ("players_on_court", r.players_on_court.into()),
        ("roster", map(&roster).into()),
        ("warm_up", map(&warm_up).into()),
        ("interval_seconds", r.interval_seconds.into()),
        ("service_seconds", r.service_seconds.into()),
        ("under_net", word(UNDER_NET, r.under_net).into()),
    ])
}

fn map(fields: &[(&str, Value)]) -> Map<String, Value> {
    let own = |(key, value): &(&str, Value)| ((*key).to_owned(), value.clone());
    fields.iter().map(own).collect()
}
