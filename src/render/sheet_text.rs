//! The sheet as plain text, for the command line.

use std::fmt::Write;

use game::entry::{Detail, Player};
use game::PointFor;
use reports::{libero_turns, Half, Place, SetSheet, Sheet, Turn, WallClock};
use rules::Team;
use text::score_sheet as words;
use text::sheet_text as lines;

/// The whole sheet as lines of text.
#[must_use]
pub fn sheet_text(sheet: &Sheet, clock: WallClock) -> String {
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
    if sheet.heading.as_ref().is_some_and(|h| h.practice) {
        writeln!(out, "{}", words::practice())?;
    }
    if !sheet.broken.is_empty() {
        writeln!(out, "{}", words::changed().to_uppercase())?;
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
        writeln!(out, "{}", lines::sanction(s))?;
    }
    for r in &sheet.remarks {
        writeln!(out, "{}", lines::remark(r, sheet))?;
    }
    for s in &sheet.signatures {
        writeln!(out, "{}", lines::signed(s, s.at.map(|at| clock.time(at))))?;
    }
    if let Some(last) = sheet.seal.seals.last() {
        writeln!(out, "{}", words::seal(&sheet.seal, last, None))?;
        if sheet.seal.holds && last.fits() {
            writeln!(out, "{}", lines::check_code(&last.code))?;
        }
        if let Some(open) = words::left_open(sheet) {
            writeln!(out, "{open}")?;
        }
        writeln!(out, "{}", words::seal_shows())?;
    }
    let result = &sheet.result;
    writeln!(out, "{}", lines::totals(result))?;
    let winner = result.winner.map(|team| sheet.teams[team].name.as_str());
    writeln!(out, "{}", lines::end(result.ended.is_some(), winner))
}

fn player(player: &Player) -> String {
    let mut words = player.number.to_string();
    for (is, (short, _)) in [
        (player.captain, words::captain()),
        (player.libero, words::libero()),
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
    facts.extend(words::kept_from(set, &time));
    match set.won {
        None => facts.push(lines::not_finished().to_owned()),
        Some((_, how)) => facts.extend(words::how(how).map(str::to_owned)),
    }
    facts.extend(set.courts_changed.map(words::courts_changed));
    facts.extend(
        set.won_toss
            .map(|(by, choice)| words::won_toss(by.letter(), choice)),
    );
    writeln!(
        out,
        "\n{}  {}  {}",
        words::set_heading(set.number),
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
        named(lines::time_outs(), &time_outs)
    )?;
    let half = Half::of(set, team);
    for (i, place) in half.places.iter().enumerate() {
        let entered: Vec<String> = place
            .entered
            .iter()
            .map(|e| {
                let exceptional = if e.exceptional {
                    words::exceptional()
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
        writeln!(out, "    {} {}", lines::rounds(), totals.join(" "))?;
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
        writeln!(out, "    {} {}", lines::game_captain(), spoke.join(", "))?;
    }
    let liberos = libero_turns(set, team);
    let liberos: Vec<String> = liberos
        .iter()
        .map(|t| words::libero_turn(t, team))
        .collect();
    if !liberos.is_empty() {
        writeln!(out, "    {} {}", lines::liberos(), liberos.join(", "))?;
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
        _ => format!("  {name} {}", things.join(", ")),
    }
}
