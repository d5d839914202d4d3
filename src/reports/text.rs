//! The sheet as plain text, for the command line.

use std::fmt::Write;

use super::places::{libero_turns, Half, Place, Turn};
use super::{words, SetSheet, Sheet, WallClock};
use game::entry::{Detail, Player};
use game::{PointFor, Who};
use rules::Team;

/// The whole sheet as lines of text.
#[must_use]
pub fn text(sheet: &Sheet, clock: WallClock) -> String {
    let mut out = String::new();
    // Writing into a string cannot fail.
    let _ = write_all(&mut out, sheet, clock);
    out
}

fn write_all(out: &mut String, sheet: &Sheet, clock: WallClock) -> std::fmt::Result {
    let [a, b] = Team::BOTH.map(|team| sheet.teams[team].name.as_str());
    writeln!(out, "{a} (A) – {b} (B)")?;
    if let Some(h) = &sheet.heading {
        let parts = Detail::ALL.iter().filter_map(|&d| h.details[d].as_deref());
        let parts: Vec<&str> = parts.collect();
        if !parts.is_empty() {
            writeln!(out, "{}", parts.join(" · "))?;
        }
    }
    if !sheet.broken.is_empty() {
        writeln!(out, "{}", words::CHANGED.to_uppercase())?;
        for sentence in words::broken(&sheet.broken) {
            writeln!(out, "{sentence}")?;
        }
    }
    let (began, ended) = sheet.result.times;
    if let Some(began) = began {
        let ended = ended.filter(|_| sheet.result.ended.is_some());
        let ended = ended.map(|at| format!("\u{2013}{}", clock.time(at)));
        writeln!(
            out,
            "{} {}{} {}",
            clock.date(began),
            clock.time(began),
            ended.unwrap_or_default(),
            clock.name()
        )?;
    }
    for team in Team::BOTH {
        let block = &sheet.teams[team];
        if block.players.is_empty() {
            continue;
        }
        let players = block.players.iter().map(player);
        let staff = block.staff.iter().map(|s| match &s.name {
            Some(name) => format!("{} {name}", s.role),
            None => s.role.clone(),
        });
        writeln!(
            out,
            "{team}: {}",
            players.chain(staff).collect::<Vec<_>>().join(", ")
        )?;
    }
    for set in &sheet.sets {
        write_set(out, set, clock)?;
    }
    writeln!(out)?;
    for s in &sheet.sanctions {
        let who = match &s.who {
            Some(Who::Player(n)) => format!(" number {n}"),
            Some(Who::Staff(role)) => format!(" {role}"),
            None => String::new(),
        };
        writeln!(
            out,
            "{}: {}{who}, set {} at {}",
            s.kind.code(),
            s.team,
            s.set,
            s.score.marked()
        )?;
    }
    for r in &sheet.remarks {
        writeln!(
            out,
            "Remark (set {}, {}): {}",
            r.set,
            r.score.marked(),
            r.text
        )?;
    }
    for s in &sheet.signatures {
        let when = if s.before { "before" } else { "after" };
        let name = s.name.as_ref().map(|n| format!(" {n}"));
        let time = s.at.map(|at| format!(" {}", clock.time(at)));
        writeln!(
            out,
            "Signed {when} the match: {}{}{}",
            words::signer(&s.role),
            name.unwrap_or_default(),
            time.unwrap_or_default()
        )?;
    }
    if let Some(last) = sheet.seal.seals.last() {
        writeln!(out, "{}", words::seal(&sheet.seal, last, None))?;
        if sheet.seal.holds && last.fits() {
            writeln!(out, "Check code: {}", record::spaced(&last.code))?;
        }
        if let Some(open) = words::left_open(&sheet.seal.left_open) {
            writeln!(out, "{open}")?;
        }
        writeln!(out, "{}", words::SEAL_SHOWS)?;
    }
    let result = &sheet.result;
    writeln!(
        out,
        "Sets {}, points {}{}",
        result.sets.marked(),
        result.points.marked(),
        result
            .minutes
            .map(|m| format!(", {m} min"))
            .unwrap_or_default()
    )?;
    match (result.ended, result.winner) {
        (Some(_), Some(team)) => writeln!(out, "Winner: {}", sheet.teams[team].name),
        (Some(_), None) => writeln!(out, "Ended level"),
        (None, _) => writeln!(out, "Not finished"),
    }
}

fn player(player: &Player) -> String {
    let mut words = player.number.to_string();
    for (is, (short, _)) in [
        (player.captain, words::CAPTAIN),
        (player.libero, words::LIBERO),
    ] {
        if is {
            words.push(' ');
            words.push_str(short);
        }
    }
    if let Some(name) = &player.name {
        words.push(' ');
        words.push_str(name);
    }
    words
}

fn write_set(out: &mut String, set: &SetSheet, clock: WallClock) -> std::fmt::Result {
    let time = |at: Option<i64>| at.map(|at| clock.time(at));
    let (began, ended) = (time(set.began), time(set.ended));
    let mut facts = words::times(began.as_deref(), ended.as_deref(), set.minutes());
    facts.extend(words::kept_from(set, time));
    match set.won {
        None => facts.push("not finished".to_owned()),
        Some((_, how)) => facts.extend(words::how(how).map(str::to_owned)),
    }
    facts.extend(set.courts_changed.map(words::courts_changed));
    facts.extend(
        set.won_toss
            .map(|(by, choice)| words::won_toss(by.letter(), choice)),
    );
    writeln!(
        out,
        "\nSet {}  {}  {}",
        set.number,
        set.score.marked(),
        facts.join(", ")
    )?;
    for team in Team::BOTH {
        write_half(out, set, team)?;
    }
    for team in Team::BOTH {
        // One column a point: whoever did not win it has a gap.
        write!(out, "  {team} |")?;
        for point in &set.running {
            let shown = point.total.map_or("--".to_owned(), |t| t.to_string());
            let sign = match point.given_for {
                PointFor::Rally => ' ',
                _ => '!',
            };
            match point.team == team {
                true => write!(out, "{shown:>3}{sign}")?,
                false => write!(out, "    ")?,
            }
        }
        writeln!(out)?;
    }
    Ok(())
}

fn write_half(out: &mut String, set: &SetSheet, team: Team) -> std::fmt::Result {
    let opens = set.first_service.map(|first| words::opens(first == team).0);
    let side = set.left.map(|left| words::side(left == team));
    let time_outs = set.time_outs.iter().filter(|t| t.team == team);
    let time_outs: Vec<String> = time_outs.map(|t| words::own_first(t.score, team)).collect();
    let heads = [opens, side].into_iter().flatten().collect::<Vec<_>>();
    writeln!(
        out,
        "  {team} {}{}",
        heads.join(" "),
        named("  time-outs ", &time_outs)
    )?;
    let half = Half::of(set, team);
    for (i, place) in half.places.iter().enumerate() {
        let entered: Vec<String> = place
            .entered
            .iter()
            .map(|e| {
                let exceptional = if e.exceptional {
                    words::EXCEPTIONAL
                } else {
                    ""
                };
                format!(
                    "{} {}{exceptional}",
                    e.shirt,
                    words::own_first(e.score, team)
                )
            })
            .collect();
        let turns: Vec<String> = place.turns.iter().map(turn(place)).collect();
        writeln!(
            out,
            "    {:>3} {:>2}  {:<26} {}",
            words::roman(i + 1),
            place.starter,
            entered.join(", "),
            turns.join(" ")
        )?;
    }
    if half.places.is_empty() {
        let totals: Vec<String> = set.rounds[team]
            .iter()
            .map(|r| r.total.to_string())
            .collect();
        writeln!(out, "    rounds {}", totals.join(" "))?;
    }
    for s in &half.elsewhere {
        let score = words::own_first(s.score, team);
        writeln!(
            out,
            "    {} {score}",
            words::change(s.change.out, s.change.into)
        )?;
    }
    let spoke = words::game_captains(set, team);
    if !spoke.is_empty() {
        writeln!(out, "    game captain {}", spoke.join(", "))?;
    }
    let liberos = libero_turns(set, team);
    let liberos: Vec<String> = liberos
        .iter()
        .map(|t| words::libero_turn(t, team))
        .collect();
    if !liberos.is_empty() {
        writeln!(out, "    liberos {}", liberos.join(", "))?;
    }
    Ok(())
}

/// A total: in brackets the last one, behind an `@` whoever served in the starter's place.
fn turn(place: &Place) -> impl Fn(&Turn) -> String + '_ {
    |turn| match turn {
        Turn::None => "x".to_owned(),
        Turn::Ended { round, last } => {
            let other = round.server.filter(|s| *s != place.starter);
            let other = other.map(|s| format!("@{s}")).unwrap_or_default();
            match last {
                true => format!("({}{other})", round.total),
                false => format!("{}{other}", round.total),
            }
        }
    }
}

fn named(name: &str, things: &[String]) -> String {
    match things {
        [] => String::new(),
        _ => format!("{name}{}", things.join(", ")),
    }
}
