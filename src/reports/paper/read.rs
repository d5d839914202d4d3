//! Reading a paper sheet that was keyed in.

use super::{
    is_day, Minute, PaperHead, PaperResult, PaperSanction, PaperSet, PaperSheet, PaperSubstitution,
    PaperTeam, PaperTimeOut,
};
use crate::audit::SIGN_AFTER;
use crate::form::{Field, Form, Reader};
use crate::FormProblemKind;
use game::{Level, SanctionKind, Signer, Who};
use rules::{Preset, Score, Shirt, Team};

/// What the file says of itself.
pub(crate) const NAME: &str = "volleyball-paper-sheet";
/// The officials in the order of [`PaperHead::officials`].
pub(super) const OFFICIALS: [&str; 3] = ["first_referee", "second_referee", "scorer"];
/// No rules allow more.
const MAX_SETS: usize = 9;
/// More boxes than any set fills.
const MAX_BOXES: usize = 999;
/// More numbers than any team has.
const MAX_NUMBERS: usize = 99;

/// Names of the sanctions, as a fold prints them.
const SANCTIONS: [(&str, SanctionKind); 7] = [
    named(SanctionKind::ImproperRequest),
    named(SanctionKind::DelayWarning),
    named(SanctionKind::DelayPenalty),
    named(SanctionKind::Misconduct(Level::Warning)),
    named(SanctionKind::Misconduct(Level::Penalty)),
    named(SanctionKind::Misconduct(Level::Expulsion)),
    named(SanctionKind::Misconduct(Level::Disqualification)),
];

const fn named(kind: SanctionKind) -> (&'static str, SanctionKind) {
    (kind.code(), kind)
}

/// Reads a paper sheet. What cannot be read is named with its place.
#[must_use]
pub fn read(text: &str) -> Form<PaperSheet> {
    let fields = ["rules", "head", "teams", "sets", "sanctions", "result"];
    Reader::form(text, NAME, &fields, sheet)
}

fn sheet(reader: &mut Reader, root: &Field) -> Option<PaperSheet> {
    let rules = match root.get("rules") {
        Some(field) => reader.rules(&field),
        None => Some(Preset::International.rules()),
    };
    let head = root.get("head").and_then(|f| head(reader, &f));
    let teams = reader
        .need(root, "teams")
        .and_then(|f| reader.pair(&f, team));
    let sets = reader
        .need(root, "sets")
        .and_then(|f| reader.all(&f, MAX_SETS, set));
    let sanctions = match root.get("sanctions") {
        Some(field) => reader.all(&field, MAX_BOXES, sanction),
        None => Some(Vec::new()),
    };
    let result = root.get("result").and_then(|f| result(reader, &f));
    Some(PaperSheet {
        rules: rules?,
        head: head.unwrap_or_default(),
        teams: teams?,
        sets: sets?,
        sanctions: sanctions?,
        result,
    })
}

fn head(reader: &mut Reader, field: &Field) -> Option<PaperHead> {
    reader.object(field, &["match_no", "day", "officials", "signed"])?;
    let number = field.get("match_no").and_then(|f| reader.text(&f));
    let day = field.get("day").and_then(|f| {
        let day = reader.text(&f).filter(|day| is_day(day));
        if day.is_none() {
            reader.wrong(f.place(), FormProblemKind::NotText);
        }
        day
    });
    let mut officials: [String; 3] = Default::default();
    if let Some(field) = field.get("officials") {
        reader.object(&field, &OFFICIALS)?;
        for (name, key) in officials.iter_mut().zip(OFFICIALS) {
            let given = field.get(key).and_then(|f| reader.text(&f));
            *name = given.unwrap_or_default();
        }
    }
    let given = field
        .get("signed")
        .and_then(|f| reader.all(&f, SIGN_AFTER.len(), |r, f| r.text(f)));
    let given: Vec<Signer> = given
        .iter()
        .flatten()
        .filter_map(|role| Signer::of_role(role))
        .collect();
    let mut signed = SIGN_AFTER.to_vec();
    signed.retain(|signer| given.contains(signer));
    Some(PaperHead {
        number: number.unwrap_or_default(),
        day,
        officials,
        signed,
    })
}

fn team(reader: &mut Reader, field: &Field) -> Option<PaperTeam> {
    reader.object(field, &["name", "players", "liberos"])?;
    let name = field.get("name").and_then(|f| reader.text(&f));
    let players = field.get("players").and_then(|f| shirts(reader, &f));
    let liberos = field.get("liberos").and_then(|f| shirts(reader, &f));
    Some(PaperTeam {
        name: name.unwrap_or_default(),
        players,
        liberos: liberos.unwrap_or_default(),
    })
}

fn shirts(reader: &mut Reader, field: &Field) -> Option<Vec<Shirt>> {
    reader.all(field, MAX_NUMBERS, shirt)
}

fn shirt(reader: &mut Reader, field: &Field) -> Option<Shirt> {
    reader.number(field).map(Shirt)
}

fn set(reader: &mut Reader, field: &Field) -> Option<PaperSet> {
    reader.object(
        field,
        &[
            "first_service",
            "line_up",
            "rounds",
            "final",
            "substitutions",
            "time_outs",
            "start",
            "end",
            "minutes",
        ],
    )?;
    let first_service = reader
        .need(field, "first_service")
        .and_then(|f| reader.team(&f));
    let line_up = field
        .get("line_up")
        .and_then(|f| reader.pair(&f, |r, f| shirts(r, f)));
    let rounds = reader
        .need(field, "rounds")
        .and_then(|f| reader.pair(&f, |r, f| r.all(f, MAX_BOXES, |r, f| r.number(f))));
    let points = field.get("final").and_then(|f| reader.score(&f));
    let substitutions = match field.get("substitutions") {
        Some(field) => reader.all(&field, MAX_BOXES, substitution),
        None => Some(Vec::new()),
    };
    let time_outs = match field.get("time_outs") {
        Some(field) => reader.all(&field, MAX_BOXES, time_out),
        None => Some(Vec::new()),
    };
    let start = field.get("start").and_then(|f| minute(reader, &f));
    let end = field.get("end").and_then(|f| minute(reader, &f));
    let minutes = field.get("minutes").and_then(|f| reader.number(&f));
    Some(PaperSet {
        first_service: first_service?,
        line_up,
        rounds: rounds?,
        points,
        substitutions: substitutions?,
        time_outs: time_outs?,
        start,
        end,
        minutes,
    })
}

fn minute(reader: &mut Reader, field: &Field) -> Option<Minute> {
    let minute = reader.text(field).as_deref().and_then(Minute::parse);
    if minute.is_none() {
        reader.wrong(field.place(), FormProblemKind::NotTime);
    }
    minute
}

fn team_and_score(reader: &mut Reader, field: &Field) -> Option<(Team, Score)> {
    let team = reader.need(field, "team").and_then(|f| reader.team(&f));
    let score = reader.need(field, "score").and_then(|f| reader.score(&f));
    Some((team?, score?))
}

fn substitution(reader: &mut Reader, field: &Field) -> Option<PaperSubstitution> {
    reader.object(field, &["team", "out", "in", "score", "exceptional"])?;
    let by = team_and_score(reader, field);
    let out = reader.need(field, "out").and_then(|f| shirt(reader, &f));
    let into = reader.need(field, "in").and_then(|f| shirt(reader, &f));
    let exceptional = field.get("exceptional").and_then(|f| reader.yes(&f));
    let (team, score) = by?;
    Some(PaperSubstitution {
        team,
        out: out?,
        into: into?,
        score,
        exceptional: exceptional.unwrap_or(false),
    })
}

fn time_out(reader: &mut Reader, field: &Field) -> Option<PaperTimeOut> {
    reader.object(field, &["team", "score"])?;
    let (team, score) = team_and_score(reader, field)?;
    Some(PaperTimeOut { team, score })
}

fn sanction(reader: &mut Reader, field: &Field) -> Option<PaperSanction> {
    // A fold prints the entry too; on paper there is none.
    reader.object(field, &["set", "team", "kind", "who", "score", "entry"])?;
    let by = team_and_score(reader, field);
    let set = reader
        .need(field, "set")
        .and_then(|f| reader.whole(&f, 1, 9));
    let kind = reader
        .need(field, "kind")
        .and_then(|f| reader.word(&f, &SANCTIONS));
    let who = field.get("who").and_then(|f| who(reader, &f));
    if matches!(kind, Some(SanctionKind::Misconduct(_))) && who.is_none() {
        reader.wrong(field.place(), FormProblemKind::NobodyNamed);
    }
    let (team, score) = by?;
    Some(PaperSanction {
        set: u8::try_from(set?).ok()?,
        team,
        kind: kind?,
        who,
        score,
    })
}

fn who(reader: &mut Reader, field: &Field) -> Option<Who> {
    reader.object(field, &["player", "staff"])?;
    match (field.get("player"), field.get("staff")) {
        (Some(player), None) => shirt(reader, &player).map(Who::Player),
        (None, Some(staff)) => reader.text(&staff).map(Who::Staff),
        _ => {
            reader.wrong(field.place(), FormProblemKind::NotOnePerson);
            None
        }
    }
}

fn result(reader: &mut Reader, field: &Field) -> Option<PaperResult> {
    reader.object(
        field,
        &[
            "winner",
            "sets",
            "points",
            "time_outs",
            "substitutions",
            "minutes",
        ],
    )?;
    let winner = field.get("winner").and_then(|f| reader.team(&f));
    let sets = reader.need(field, "sets").and_then(|f| {
        reader.pair(&f, |r, f| {
            r.whole(f, 0, 9).and_then(|n| u8::try_from(n).ok())
        })
    });
    let mut in_all = |key: &str| field.get(key).and_then(|f| reader.score(&f));
    let (points, time_outs) = (in_all("points"), in_all("time_outs"));
    let substitutions = in_all("substitutions");
    let minutes = field.get("minutes").and_then(|f| reader.number(&f));
    Some(PaperResult {
        winner,
        sets: sets?,
        points,
        time_outs,
        substitutions,
        minutes,
    })
}
