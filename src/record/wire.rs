//! How an entry is written down in JSON: types of their own, apart from those in memory.
//!
//! The names here leave the program; `FORMAT.md` beside this file describes them.

use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};

use crate::game::entry as mem;
use crate::rules::{
    ByTeam, Cause, Decider, Edition, Preset, Roster, Rules, Score, SetTarget, Sets, Shirt,
    SubstitutionPolicy, Substitutions, Team, TimeOuts, UnderNet, WarmUp, WarmUpStyle,
};

#[derive(Clone, Copy, Serialize, Deserialize)]
enum WTeam {
    A,
    B,
}

#[derive(Serialize, Deserialize)]
struct Pair<T> {
    #[serde(rename = "A")]
    a: T,
    #[serde(rename = "B")]
    b: T,
}

#[derive(Serialize, Deserialize)]
pub(super) struct WEntry {
    n: u32,
    #[serde(skip_serializing_if = "Option::is_none")]
    at: Option<i64>,
    #[serde(flatten)]
    kind: WKind,
    #[serde(skip_serializing_if = "Option::is_none")]
    insist: Option<String>,
}

#[derive(Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
enum WKind {
    Match {
        #[serde(skip_serializing_if = "Option::is_none")]
        competition: Option<String>,
        #[serde(skip_serializing_if = "Option::is_none")]
        division: Option<String>,
        #[serde(skip_serializing_if = "Option::is_none")]
        venue: Option<String>,
        #[serde(skip_serializing_if = "Option::is_none")]
        court: Option<String>,
        #[serde(skip_serializing_if = "Option::is_none")]
        match_no: Option<String>,
        #[serde(skip_serializing_if = "Option::is_none")]
        scheduled: Option<String>,
        teams: Pair<WName>,
        rules: Map<String, Value>,
    },
    Heading {
        #[serde(skip_serializing_if = "Option::is_none")]
        competition: Option<String>,
        #[serde(skip_serializing_if = "Option::is_none")]
        division: Option<String>,
        #[serde(skip_serializing_if = "Option::is_none")]
        venue: Option<String>,
        #[serde(skip_serializing_if = "Option::is_none")]
        court: Option<String>,
        #[serde(skip_serializing_if = "Option::is_none")]
        match_no: Option<String>,
        #[serde(skip_serializing_if = "Option::is_none")]
        scheduled: Option<String>,
        #[serde(default, skip_serializing_if = "WNames::is_empty")]
        teams: WNames,
        #[serde(skip_serializing_if = "Option::is_none")]
        rules: Option<Map<String, Value>>,
    },
    TeamList {
        team: WTeam,
        players: Vec<WPlayer>,
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        staff: Vec<WStaff>,
    },
    Check {
        item: String,
        ok: bool,
        #[serde(skip_serializing_if = "Option::is_none")]
        note: Option<String>,
    },
    Toss {
        first_service: WTeam,
        left: WTeam,
    },
    LineUp {
        team: WTeam,
        positions: Vec<u16>,
    },
    BeginSet,
    Rally {
        won_by: WTeam,
        #[serde(skip_serializing_if = "Option::is_none")]
        cause: Option<WCause>,
        #[serde(skip_serializing_if = "Option::is_none")]
        by: Option<WBy>,
    },
    Explain {
        entry: u32,
        cause: WCause,
        #[serde(skip_serializing_if = "Option::is_none")]
        by: Option<WBy>,
    },
    Replay {
        why: WReplay,
        #[serde(skip_serializing_if = "Option::is_none")]
        team: Option<WTeam>,
        #[serde(skip_serializing_if = "Option::is_none")]
        number: Option<u16>,
    },
    TimeOut {
        team: WTeam,
    },
    Substitution {
        team: WTeam,
        changes: Vec<WChange>,
        #[serde(skip_serializing_if = "Option::is_none")]
        reason: Option<WForced>,
    },
    LiberoReplacement {
        team: WTeam,
        out: u16,
        #[serde(rename = "in")]
        into: u16,
    },
    NewLibero {
        team: WTeam,
        replaces: OneOrMany,
        number: u16,
        #[serde(skip_serializing_if = "Option::is_none")]
        why: Option<WLiberoWhy>,
    },
    ImproperRequest {
        team: WTeam,
    },
    Delay {
        team: WTeam,
        #[serde(default, skip_serializing_if = "std::ops::Not::not")]
        request: bool,
    },
    Misconduct {
        team: WTeam,
        who: WWho,
        sanction: WLevel,
    },
    LateFault {
        team: WTeam,
        fault: WFault,
        since: Option<WSince>,
        during: WFound,
        #[serde(skip_serializing_if = "Option::is_none")]
        positions: Option<Vec<u16>>,
    },
    Recovery {
        team: WTeam,
        number: u16,
    },
    Incomplete {
        team: WTeam,
        scope: WScope,
    },
    Default {
        team: WTeam,
    },
    ChangeCourts,
    Suspend {
        #[serde(default)]
        why: String,
    },
    Resume {
        court: WCourt,
    },
    Timer {
        what: String,
        #[serde(skip_serializing_if = "Option::is_none")]
        team: Option<WTeam>,
        seconds: u32,
        action: WAction,
    },
    Remark {
        text: String,
        #[serde(skip_serializing_if = "Option::is_none")]
        team: Option<WTeam>,
    },
    Sign {
        role: String,
        #[serde(skip_serializing_if = "Option::is_none")]
        name: Option<String>,
    },
    Strike {
        entry: u32,
        #[serde(skip_serializing_if = "Option::is_none")]
        why: Option<String>,
    },
    Answer {
        entry: u32,
        choice: String,
    },
    Seal {
        code: String,
    },
    Reopen {
        #[serde(skip_serializing_if = "Option::is_none")]
        why: Option<String>,
    },
}

#[derive(Serialize, Deserialize)]
struct WName {
    #[serde(default)]
    name: String,
}

/// Names given later, each team's for itself.
#[derive(Default, Serialize, Deserialize)]
struct WNames {
    #[serde(rename = "A", skip_serializing_if = "Option::is_none")]
    a: Option<WName>,
    #[serde(rename = "B", skip_serializing_if = "Option::is_none")]
    b: Option<WName>,
}

impl WNames {
    fn is_empty(&self) -> bool {
        self.a.is_none() && self.b.is_none()
    }
}

#[derive(Serialize, Deserialize)]
struct WPlayer {
    number: u16,
    #[serde(skip_serializing_if = "Option::is_none")]
    name: Option<String>,
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    captain: bool,
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    libero: bool,
}

#[derive(Serialize, Deserialize)]
struct WStaff {
    role: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    name: Option<String>,
}

#[derive(Serialize, Deserialize)]
struct WBy {
    team: WTeam,
    #[serde(skip_serializing_if = "Option::is_none")]
    number: Option<u16>,
}

#[derive(Serialize, Deserialize)]
struct WChange {
    out: u16,
    #[serde(rename = "in")]
    into: u16,
}

#[derive(Serialize, Deserialize)]
#[serde(untagged)]
enum OneOrMany {
    One(u16),
    Many(Vec<u16>),
}

#[derive(Serialize, Deserialize)]
struct WSince {
    #[serde(rename = "A")]
    a: u16,
    #[serde(rename = "B")]
    b: u16,
    #[serde(skip_serializing_if = "Option::is_none")]
    set: Option<u8>,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
enum WWho {
    Player(u16),
    Staff(String),
}

/// A cause by its code.
#[derive(Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
#[derive(Clone, Copy)]
struct WCause(Cause);

impl TryFrom<String> for WCause {
    type Error = String;
    fn try_from(code: String) -> Result<Self, String> {
        Cause::from_code(&code)
            .map(WCause)
            .ok_or_else(|| format!("unknown cause `{code}`"))
    }
}

impl From<WCause> for String {
    fn from(cause: WCause) -> String {
        cause.0.code().to_owned()
    }
}

/// Plain lists of words on both sides: the wire's own enum and the way there and back.
macro_rules! words {
    ($($wire:ident = $mem:path { $($name:ident),+ })+) => { $(
        #[derive(Clone, Copy, Serialize, Deserialize)]
        #[serde(rename_all = "snake_case")]
        enum $wire { $($name),+ }
        impl From<$wire> for $mem {
            fn from(w: $wire) -> Self { match w { $($wire::$name => Self::$name),+ } }
        }
        impl From<$mem> for $wire {
            fn from(m: $mem) -> Self { match m { $(<$mem>::$name => $wire::$name),+ } }
        }
    )+ };
}

words! {
    WReplay = mem::ReplayWhy { DoubleFault, Interference, Injury, Other }
    WForced = mem::Forced { Injury, Expelled, Disqualified }
    WLiberoWhy = mem::LiberoWhy { Unable, Declared }
    WLevel = mem::Level { Warning, Penalty, Expulsion, Disqualification }
    WFault = mem::Fault { Rotation, IllegalSubstitution, IllegalLibero, WrongLineUp, UnregisteredPlayer }
    WFound = mem::Found { Rally, AfterRally }
    WScope = mem::Scope { Set, Match }
    WCourt = mem::Court { Same, Other }
    WAction = mem::TimerAction { Start, Stop }
    WPolicy = SubstitutionPolicy { Paired, SamePlace, Free }
    WStyle = WarmUpStyle { Shared, Separate }
    WUnder = UnderNet { Standard, Junior }
}

impl From<WTeam> for Team {
    fn from(team: WTeam) -> Team {
        match team {
            WTeam::A => Team::A,
            WTeam::B => Team::B,
        }
    }
}

impl From<Team> for WTeam {
    fn from(team: Team) -> WTeam {
        match team {
            Team::A => WTeam::A,
            Team::B => WTeam::B,
        }
    }
}

impl From<WBy> for mem::By {
    fn from(by: WBy) -> Self {
        mem::By {
            team: by.team.into(),
            number: by.number.map(Shirt),
        }
    }
}

impl From<mem::By> for WBy {
    fn from(by: mem::By) -> Self {
        WBy {
            team: by.team.into(),
            number: by.number.map(|s| s.0),
        }
    }
}

fn shirts(numbers: Vec<u16>) -> Vec<Shirt> {
    numbers.into_iter().map(Shirt).collect()
}

fn numbers(shirts: &[Shirt]) -> Vec<u16> {
    shirts.iter().map(|s| s.0).collect()
}

/// An entry from its JSON.
///
/// # Errors
/// One sentence about what cannot be read.
pub(super) fn read(value: &Value) -> Result<mem::Entry, String> {
    let wire = WEntry::deserialize(value).map_err(|e| {
        // What would have been known instead is a list too long for a phone.
        let say = e.to_string();
        say.split(", expected one of")
            .next()
            .unwrap_or(&say)
            .to_owned()
    })?;
    Ok(mem::Entry {
        n: wire.n,
        at: wire.at,
        insist: wire.insist,
        kind: read_kind(wire.kind)?,
    })
}

fn read_kind(kind: WKind) -> Result<mem::Kind, String> {
    use mem::Kind as K;
    Ok(match kind {
        WKind::Match {
            competition,
            division,
            venue,
            court,
            match_no,
            scheduled,
            teams,
            rules,
        } => K::Match(Box::new(mem::Heading {
            competition,
            division,
            venue,
            court,
            match_no,
            scheduled,
            names: ByTeam {
                a: teams.a.name,
                b: teams.b.name,
            },
            rules: read_rules(&rules)?,
        })),
        WKind::Heading {
            competition,
            division,
            venue,
            court,
            match_no,
            scheduled,
            teams,
            rules,
        } => K::Heading(Box::new(mem::Amendment {
            competition,
            division,
            venue,
            court,
            match_no,
            scheduled,
            rules: rules.as_ref().map(read_rules).transpose()?,
            names: ByTeam {
                a: teams.a.map(|n| n.name),
                b: teams.b.map(|n| n.name),
            },
        })),
        WKind::TeamList {
            team,
            players,
            staff,
        } => K::TeamList(mem::TeamList {
            team: team.into(),
            players: players
                .into_iter()
                .map(|p| mem::Player {
                    number: Shirt(p.number),
                    name: p.name,
                    captain: p.captain,
                    libero: p.libero,
                })
                .collect(),
            staff: staff
                .into_iter()
                .map(|s| mem::Staff {
                    role: s.role,
                    name: s.name,
                })
                .collect(),
        }),
        WKind::Check { item, ok, note } => K::Check(mem::Check { item, ok, note }),
        WKind::Toss {
            first_service,
            left,
        } => K::Toss(mem::Toss {
            first_service: first_service.into(),
            left: left.into(),
        }),
        WKind::LineUp { team, positions } => K::LineUp {
            team: team.into(),
            positions: shirts(positions),
        },
        WKind::BeginSet => K::BeginSet,
        WKind::Rally { won_by, cause, by } => K::Rally {
            won_by: won_by.into(),
            cause: cause.map(|c| c.0),
            by: by.map(Into::into),
        },
        WKind::Explain { entry, cause, by } => K::Explain {
            entry,
            cause: cause.0,
            by: by.map(Into::into),
        },
        WKind::Replay { why, team, number } => K::Replay {
            why: why.into(),
            hurt: team.map(|t| mem::By {
                team: t.into(),
                number: number.map(Shirt),
            }),
        },
        WKind::TimeOut { team } => K::TimeOut { team: team.into() },
        WKind::Substitution {
            team,
            changes,
            reason,
        } => K::Substitution {
            team: team.into(),
            changes: changes
                .into_iter()
                .map(|c| mem::Change {
                    out: Shirt(c.out),
                    into: Shirt(c.into),
                })
                .collect(),
            reason: reason.map(Into::into),
        },
        WKind::LiberoReplacement { team, out, into } => K::LiberoReplacement {
            team: team.into(),
            change: mem::Change {
                out: Shirt(out),
                into: Shirt(into),
            },
        },
        WKind::NewLibero {
            team,
            replaces,
            number,
            why,
        } => K::NewLibero {
            team: team.into(),
            replaces: match replaces {
                OneOrMany::One(n) => vec![Shirt(n)],
                OneOrMany::Many(list) => shirts(list),
            },
            number: Shirt(number),
            why: why.map(Into::into),
        },
        WKind::ImproperRequest { team } => K::ImproperRequest { team: team.into() },
        WKind::Delay { team, request } => K::Delay {
            team: team.into(),
            request,
        },
        WKind::Misconduct {
            team,
            who,
            sanction,
        } => K::Misconduct {
            team: team.into(),
            who: match who {
                WWho::Player(n) => mem::Who::Player(Shirt(n)),
                WWho::Staff(role) => mem::Who::Staff(role),
            },
            sanction: sanction.into(),
        },
        WKind::LateFault {
            team,
            fault,
            since,
            during,
            positions,
        } => K::LateFault(mem::LateFault {
            team: team.into(),
            fault: fault.into(),
            since: since.map(|s| mem::Since {
                score: Score { a: s.a, b: s.b },
                set: s.set,
            }),
            during: during.into(),
            positions: positions.map(shirts),
        }),
        WKind::Recovery { team, number } => K::Recovery {
            team: team.into(),
            number: Shirt(number),
        },
        WKind::Incomplete { team, scope } => K::Incomplete {
            team: team.into(),
            scope: scope.into(),
        },
        WKind::Default { team } => K::Default { team: team.into() },
        WKind::ChangeCourts => K::ChangeCourts,
        WKind::Suspend { why } => K::Suspend { why },
        WKind::Resume { court } => K::Resume {
            court: court.into(),
        },
        WKind::Timer {
            what,
            team,
            seconds,
            action,
        } => K::Timer(mem::Timer {
            what,
            team: team.map(Into::into),
            seconds,
            action: action.into(),
        }),
        WKind::Remark { text, team } => K::Remark {
            text,
            team: team.map(Into::into),
        },
        WKind::Sign { role, name } => K::Sign { role, name },
        WKind::Strike { entry, why } => K::Strike { entry, why },
        WKind::Answer { entry, choice } => K::Answer { entry, choice },
        WKind::Seal { code } => K::Seal { code },
        WKind::Reopen { why } => K::Reopen { why },
    })
}

/// An entry as it is written down; the order of the fields is always the same.
pub(super) fn write(entry: &mem::Entry) -> WEntry {
    WEntry {
        n: entry.n,
        at: entry.at,
        kind: write_kind(&entry.kind),
        insist: entry.insist.clone(),
    }
}

fn write_kind(kind: &mem::Kind) -> WKind {
    use mem::Kind as K;
    match kind {
        K::Match(h) => WKind::Match {
            competition: h.competition.clone(),
            division: h.division.clone(),
            venue: h.venue.clone(),
            court: h.court.clone(),
            match_no: h.match_no.clone(),
            scheduled: h.scheduled.clone(),
            teams: Pair {
                a: WName {
                    name: h.names.a.clone(),
                },
                b: WName {
                    name: h.names.b.clone(),
                },
            },
            rules: write_rules(&h.rules),
        },
        K::Heading(given) => WKind::Heading {
            competition: given.competition.clone(),
            division: given.division.clone(),
            venue: given.venue.clone(),
            court: given.court.clone(),
            match_no: given.match_no.clone(),
            scheduled: given.scheduled.clone(),
            rules: given.rules.as_ref().map(write_rules),
            teams: WNames {
                a: given.names.a.clone().map(|name| WName { name }),
                b: given.names.b.clone().map(|name| WName { name }),
            },
        },
        K::TeamList(list) => WKind::TeamList {
            team: list.team.into(),
            players: list
                .players
                .iter()
                .map(|p| WPlayer {
                    number: p.number.0,
                    name: p.name.clone(),
                    captain: p.captain,
                    libero: p.libero,
                })
                .collect(),
            staff: list
                .staff
                .iter()
                .map(|s| WStaff {
                    role: s.role.clone(),
                    name: s.name.clone(),
                })
                .collect(),
        },
        K::Check(c) => WKind::Check {
            item: c.item.clone(),
            ok: c.ok,
            note: c.note.clone(),
        },
        K::Toss(t) => WKind::Toss {
            first_service: t.first_service.into(),
            left: t.left.into(),
        },
        K::LineUp { team, positions } => WKind::LineUp {
            team: (*team).into(),
            positions: numbers(positions),
        },
        K::BeginSet => WKind::BeginSet,
        K::Rally { won_by, cause, by } => WKind::Rally {
            won_by: (*won_by).into(),
            cause: cause.map(WCause),
            by: by.map(Into::into),
        },
        K::Explain { entry, cause, by } => WKind::Explain {
            entry: *entry,
            cause: WCause(*cause),
            by: by.map(Into::into),
        },
        K::Replay { why, hurt } => WKind::Replay {
            why: (*why).into(),
            team: hurt.map(|h| h.team.into()),
            number: hurt.and_then(|h| h.number).map(|s| s.0),
        },
        K::TimeOut { team } => WKind::TimeOut {
            team: (*team).into(),
        },
        K::Substitution {
            team,
            changes,
            reason,
        } => WKind::Substitution {
            team: (*team).into(),
            changes: changes
                .iter()
                .map(|c| WChange {
                    out: c.out.0,
                    into: c.into.0,
                })
                .collect(),
            reason: reason.map(Into::into),
        },
        K::LiberoReplacement { team, change } => WKind::LiberoReplacement {
            team: (*team).into(),
            out: change.out.0,
            into: change.into.0,
        },
        K::NewLibero {
            team,
            replaces,
            number,
            why,
        } => WKind::NewLibero {
            team: (*team).into(),
            replaces: match replaces[..] {
                [one] => OneOrMany::One(one.0),
                _ => OneOrMany::Many(numbers(replaces)),
            },
            number: number.0,
            why: why.map(Into::into),
        },
        K::ImproperRequest { team } => WKind::ImproperRequest {
            team: (*team).into(),
        },
        K::Delay { team, request } => WKind::Delay {
            team: (*team).into(),
            request: *request,
        },
        K::Misconduct {
            team,
            who,
            sanction,
        } => WKind::Misconduct {
            team: (*team).into(),
            who: match who {
                mem::Who::Player(s) => WWho::Player(s.0),
                mem::Who::Staff(role) => WWho::Staff(role.clone()),
            },
            sanction: (*sanction).into(),
        },
        K::LateFault(f) => WKind::LateFault {
            team: f.team.into(),
            fault: f.fault.into(),
            since: f.since.map(|s| WSince {
                a: s.score.a,
                b: s.score.b,
                set: s.set,
            }),
            during: f.during.into(),
            positions: f.positions.as_deref().map(numbers),
        },
        K::Recovery { team, number } => WKind::Recovery {
            team: (*team).into(),
            number: number.0,
        },
        K::Incomplete { team, scope } => WKind::Incomplete {
            team: (*team).into(),
            scope: (*scope).into(),
        },
        K::Default { team } => WKind::Default {
            team: (*team).into(),
        },
        K::ChangeCourts => WKind::ChangeCourts,
        K::Suspend { why } => WKind::Suspend { why: why.clone() },
        K::Resume { court } => WKind::Resume {
            court: (*court).into(),
        },
        K::Timer(t) => WKind::Timer {
            what: t.what.clone(),
            team: t.team.map(Into::into),
            seconds: t.seconds,
            action: t.action.into(),
        },
        K::Remark { text, team } => WKind::Remark {
            text: text.clone(),
            team: team.map(Into::into),
        },
        K::Sign { role, name } => WKind::Sign {
            role: role.clone(),
            name: name.clone(),
        },
        K::Strike { entry, why } => WKind::Strike {
            entry: *entry,
            why: why.clone(),
        },
        K::Answer { entry, choice } => WKind::Answer {
            entry: *entry,
            choice: choice.clone(),
        },
        K::Seal { code } => WKind::Seal { code: code.clone() },
        K::Reopen { why } => WKind::Reopen { why: why.clone() },
    }
}

// ---- rules -------------------------------------------------------------------------------------

#[derive(Serialize, Deserialize)]
struct WRules {
    edition: WEdition,
    sets: WSets,
    set: WTarget,
    decider: WDecider,
    time_outs: WTimeOuts,
    substitutions: WSubstitutions,
    liberos: u8,
    line_ups: bool,
    players_on_court: u8,
    roster: WRoster,
    warm_up: WWarmUp,
    interval_seconds: u16,
    service_seconds: u16,
    under_net: WUnder,
}

#[derive(Serialize, Deserialize)]
enum WEdition {
    #[serde(rename = "2025")]
    E2025,
    #[serde(rename = "2021")]
    E2021,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
enum WSets {
    BestOf(u8),
    Fixed(u8),
}

#[derive(Serialize, Deserialize)]
struct WTarget {
    target: u16,
    lead: u16,
    cap: Option<u16>,
}

#[derive(Serialize, Deserialize)]
struct WDecider {
    target: u16,
    lead: u16,
    cap: Option<u16>,
    change_courts_at: Option<u16>,
}

#[derive(Serialize, Deserialize)]
struct WTimeOuts {
    per_set: Option<u8>,
    seconds: u16,
}

#[derive(Serialize, Deserialize)]
struct WSubstitutions {
    policy: WPolicy,
    per_set: Option<u8>,
    entries_per_player: Option<u8>,
}

#[derive(Serialize, Deserialize)]
struct WRoster {
    max: u8,
    min_number: u16,
    max_number: u16,
}

#[derive(Serialize, Deserialize)]
struct WWarmUp {
    style: WStyle,
    minutes: u8,
}

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
    let w = WRules::deserialize(Value::Object(full)).map_err(|e| format!("rules: {e}"))?;
    Ok(Rules {
        preset,
        edition: match w.edition {
            WEdition::E2025 => Edition::E2025,
            WEdition::E2021 => Edition::E2021,
        },
        sets: match w.sets {
            WSets::BestOf(n) => Sets::BestOf(n),
            WSets::Fixed(n) => Sets::Fixed(n),
        },
        set: SetTarget {
            target: w.set.target,
            lead: w.set.lead,
            cap: w.set.cap,
        },
        decider: Decider {
            to: SetTarget {
                target: w.decider.target,
                lead: w.decider.lead,
                cap: w.decider.cap,
            },
            change_courts_at: w.decider.change_courts_at,
        },
        time_outs: TimeOuts {
            per_set: w.time_outs.per_set,
            seconds: w.time_outs.seconds,
        },
        substitutions: Substitutions {
            policy: w.substitutions.policy.into(),
            per_set: w.substitutions.per_set,
            entries_per_player: w.substitutions.entries_per_player,
        },
        liberos: w.liberos,
        line_ups: w.line_ups,
        players_on_court: w.players_on_court,
        roster: Roster {
            max: w.roster.max,
            min_number: w.roster.min_number,
            max_number: w.roster.max_number,
        },
        warm_up: WarmUp {
            style: w.warm_up.style.into(),
            minutes: w.warm_up.minutes,
        },
        interval_seconds: w.interval_seconds,
        service_seconds: w.service_seconds,
        under_net: w.under_net.into(),
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
    let wire = WRules {
        edition: match r.edition {
            Edition::E2025 => WEdition::E2025,
            Edition::E2021 => WEdition::E2021,
        },
        sets: match r.sets {
            Sets::BestOf(n) => WSets::BestOf(n),
            Sets::Fixed(n) => WSets::Fixed(n),
        },
        set: WTarget {
            target: r.set.target,
            lead: r.set.lead,
            cap: r.set.cap,
        },
        decider: WDecider {
            target: r.decider.to.target,
            lead: r.decider.to.lead,
            cap: r.decider.to.cap,
            change_courts_at: r.decider.change_courts_at,
        },
        time_outs: WTimeOuts {
            per_set: r.time_outs.per_set,
            seconds: r.time_outs.seconds,
        },
        substitutions: WSubstitutions {
            policy: r.substitutions.policy.into(),
            per_set: r.substitutions.per_set,
            entries_per_player: r.substitutions.entries_per_player,
        },
        liberos: r.liberos,
        line_ups: r.line_ups,
        players_on_court: r.players_on_court,
        roster: WRoster {
            max: r.roster.max,
            min_number: r.roster.min_number,
            max_number: r.roster.max_number,
        },
        warm_up: WWarmUp {
            style: r.warm_up.style.into(),
            minutes: r.warm_up.minutes,
        },
        interval_seconds: r.interval_seconds,
        service_seconds: r.service_seconds,
        under_net: r.under_net.into(),
    };
    match serde_json::to_value(wire) {
        Ok(Value::Object(map)) => map,
        // A struct of plain fields is always an object.
        _ => Map::new(),
    }
}
