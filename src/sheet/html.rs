//! The sheet as HTML: the same paper on the phone's screen, on its printer, and in a file of its own.
//!
//! Contents after the published practice of scorers (FIVB Official Volleyball Rules 2025-2028, 27.2 and
//! 28.2; what a sheet holds beyond the text is common practice); layout our own. Every word that
//! somebody typed is written with the signs of the markup made harmless.

use std::fmt::{Display, Write};

use super::clock::WallClock;
use super::words;
use super::{PointMark, ResultBox, SealBox, SetSheet, Sheet, Signed, TeamBlock};
use crate::game::entry::{Detail, Heading, Player};
use crate::game::PointFor;
use crate::rules::{ByTeam, Team};

/// The style of the paper, in the page and in the file.
const STYLE: &str = include_str!("../../style/paper.css");

/// The paper as a file of its own, with nothing outside of it.
#[must_use]
pub fn document(sheet: &Sheet, clock: WallClock) -> String {
    let [a, b] = Team::BOTH.map(|team| escaped(&sheet.teams[team].name));
    format!(
        "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n\
         <title>{a} \u{2013} {b}</title>\n<style>\n{STYLE}</style>\n</head>\n\
         <body class=\"paper-alone\">\n{}</body>\n</html>\n",
        paper(sheet, clock)
    )
}

/// The paper itself.
#[must_use]
pub fn paper(sheet: &Sheet, clock: WallClock) -> String {
    let mut out = Paper {
        html: String::new(),
        clock,
        names: ByTeam::new(|team| escaped(&sheet.teams[team].name)),
    };
    out.all(sheet);
    out.html
}

/// A text in which nothing is markup.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            // No page may hold these, and nobody means them.
            c if c.is_control() && c != '\n' => out.push(' '),
            c => out.push(c),
        }
    }
    out
}

/// What is being written.
struct Paper {
    html: String,
    clock: WallClock,
    /// Names of the teams, harmless already.
    names: ByTeam<String>,
}

impl Paper {
    fn put(&mut self, html: &str) {
        self.html.push_str(html);
    }

    fn word(&mut self, text: &str) {
        self.html.push_str(&escaped(text));
    }

    /// An element with a text.
    fn element(&mut self, tag: &str, class: &str, text: impl Display) {
        let text = escaped(&text.to_string());
        // Writing into a string cannot fail.
        let _ = if class.is_empty() {
            write!(self.html, "<{tag}>{text}</{tag}>")
        } else {
            write!(self.html, "<{tag} class=\"{class}\">{text}</{tag}>")
        };
    }

    /// A list under a heading; nothing where there is nothing.
    fn list(&mut self, heading: &str, lines: impl IntoIterator<Item = (String, String)>) {
        let mut lines = lines.into_iter().peekable();
        if lines.peek().is_none() {
            return;
        }
        self.put("<section class=\"sheet-part\">");
        self.element("h2", "", heading);
        self.put("<ul class=\"lines\">");
        for (at, text) in lines {
            self.put("<li>");
            if !at.is_empty() {
                self.element("span", "sheet-at tabular", at);
                self.put(" ");
            }
            self.word(&text);
            self.put("</li>");
        }
        self.put("</ul></section>");
    }

    fn all(&mut self, sheet: &Sheet) {
        self.put("<article class=\"paper\">");
        self.head(sheet);
        self.result(&sheet.result, &sheet.sets);
        if sheet.sets.is_empty() {
            self.element("p", "", words::NOTHING_PLAYED);
        }
        for set in &sheet.sets {
            self.set(set);
        }
        self.put("<div class=\"sheet-notes\">");
        let sanctions: Vec<(String, String)> = sheet
            .sanctions
            .iter()
            .map(|s| {
                let name = &sheet.teams[s.team].name;
                (words::at(s.set, s.score), words::sanction(s, name))
            })
            .collect();
        self.list(words::SANCTIONS, sanctions);
        let remarks = sheet.remarks.iter();
        let remarks: Vec<(String, String)> = remarks
            .map(|line| (words::at(line.set, line.score), line.text.clone()))
            .collect();
        self.list(words::REMARKS, remarks);
        self.put("</div>");
        self.players(&sheet.teams);
        self.signatures(&sheet.signatures);
        self.seal(&sheet.seal);
        self.put("</article>");
    }

    fn mark(&mut self, team: Team) {
        let class = match team {
            Team::A => "disc",
            Team::B => "ring",
        };
        let _ = write!(
            self.html,
            "<svg viewBox=\"0 0 24 24\" class=\"team-mark {class}\" aria-hidden=\"true\">\
             <circle cx=\"12\" cy=\"12\" r=\"10\"/>\
             <text x=\"12\" y=\"16.5\" text-anchor=\"middle\">{team}</text></svg>"
        );
    }

    fn team(&mut self, team: Team) {
        self.mark(team);
        let _ = write!(self.html, " <span>{}</span>", self.names[team]);
    }

    fn head(&mut self, sheet: &Sheet) {
        self.put("<header class=\"sheet-head\"><p class=\"sheet-teams\">");
        for team in Team::BOTH {
            self.put("<span>");
            self.team(team);
            self.put("</span>");
        }
        self.put("</p><dl class=\"sheet-about\">");
        let (began, ended) = sheet.result.times;
        let mut facts = sheet.heading.as_ref().map(about).unwrap_or_default();
        if let Some(began) = began {
            facts.push((words::DATE, self.clock.date(began)));
            facts.push((words::BEGAN, self.clock.time(began)));
        }
        if let Some(ended) = ended.filter(|_| sheet.result.ended.is_some()) {
            facts.push((words::ENDED, self.clock.time(ended)));
        }
        if began.is_some() {
            facts.push((words::CLOCK, self.clock.name()));
        }
        for (what, fact) in facts {
            self.put("<div>");
            self.element("dt", "", what);
            self.element("dd", "", fact);
            self.put("</div>");
        }
        self.put("</dl></header>");
    }

    fn result(&mut self, result: &ResultBox, sets: &[SetSheet]) {
        let outcome = match (result.winner, result.ended) {
            (Some(winner), how) => {
                let how = how.and_then(words::how).map(|how| format!(", {how}"));
                let (sets, how) = (result.sets, how.unwrap_or_default());
                format!("{}{how}", words::won_by(&self.names[winner], sets, winner))
            }
            (None, Some(_)) => words::LEVEL_END.to_owned(),
            (None, None) => words::NOT_OVER.to_owned(),
        };
        // The name in it is harmless already.
        let _ = write!(
            self.html,
            "<section class=\"sheet-part sheet-result\"><h2 id=\"outcome\" class=\"outcome\">{outcome}</h2>\
             <div class=\"sheet-scrolls\" tabindex=\"0\" role=\"group\" aria-label=\"{}\">\
             <table class=\"sheet-table tabular\"><thead><tr>",
            words::RESULT
        );
        for column in words::COLUMNS {
            self.put("<th scope=\"col\">");
            self.word(column);
            self.put("</th>");
        }
        self.put("</tr></thead><tbody>");
        for set in sets {
            self.put("<tr><th scope=\"row\">");
            self.word(&set.number.to_string());
            self.put("</th>");
            for team in Team::BOTH {
                let won = set.won.is_some_and(|(winner, _)| winner == team);
                self.element("td", if won { "won" } else { "" }, set.score[team]);
            }
            let time_outs = |team| set.time_outs.iter().filter(|t| t.team == team).count();
            let changes = |team| set.substitutions.iter().filter(|s| s.team == team).count();
            let minutes = set.minutes().map(|m| m.to_string()).unwrap_or_default();
            self.element("td", "", minutes);
            self.pair(ByTeam::new(time_outs));
            self.pair(ByTeam::new(changes));
            self.put("</tr>");
        }
        self.put("</tbody><tfoot><tr>");
        let _ = write!(self.html, "<th scope=\"row\">{}</th>", words::TOTAL);
        for team in Team::BOTH {
            self.element("td", "", result.points[team]);
        }
        let minutes = result.minutes.map(|m| m.to_string()).unwrap_or_default();
        self.element("td", "", minutes);
        self.pair(result.time_outs);
        self.pair(result.substitutions);
        self.put("</tr></tfoot></table></div></section>");
    }

    fn pair<T: Display>(&mut self, counts: ByTeam<T>) {
        self.element("td", "", format!("{} / {}", counts.a, counts.b));
    }

    /// One set: who started where, who served how long, every point, every interruption.
    fn set(&mut self, set: &SetSheet) {
        self.put("<section class=\"sheet-part sheet-set\"><div class=\"sheet-set-head\"><h2>");
        self.word(&words::set_heading(set.number));
        self.put(" ");
        self.element("span", "tabular", set.score.to_string());
        self.put("</h2>");
        let time = |at: Option<i64>| at.map(|at| self.clock.time(at));
        let (began, ended) = (time(set.began), time(set.ended));
        let mut times = words::times(began.as_deref(), ended.as_deref(), set.minutes());
        if let Some(how) = set.won.and_then(|(_, how)| words::how(how)) {
            times = format!("{times}, {how}");
        }
        self.element("p", "muted tabular", times.trim_start_matches(", "));
        if let Some(left) = set.left {
            let _ = write!(
                self.html,
                "<p class=\"muted\">{}: {}</p>",
                words::LEFT,
                self.names[left]
            );
        }
        if let Some((by, choice)) = set.won_toss {
            // The names are safe to print by now.
            let words = words::won_toss(&self.names[by], choice);
            let _ = write!(self.html, "<p class=\"muted\">{words}</p>");
        }
        self.put("</div><div class=\"sheet-sides\">");
        for team in Team::BOTH {
            self.side(set, team);
        }
        self.put("</div>");
        if !set.running.is_empty() {
            self.running(&set.running);
        }
        self.put("</section>");
    }

    /// One team's half of a set.
    fn side(&mut self, set: &SetSheet, team: Team) {
        let _ = write!(
            self.html,
            "<div class=\"sheet-side team-{}\"><h3>",
            team.letter().to_ascii_lowercase()
        );
        self.team(team);
        if let Some(first) = set.first_service {
            let (short, long) = words::opens(first == team);
            let _ = write!(
                self.html,
                " <abbr class=\"opens\" title=\"{long}\">{short}</abbr>"
            );
        }
        self.put("</h3>");
        if !set.line_ups[team].is_empty() {
            self.element("h4", "", words::LINE_UP);
            self.put("<ol class=\"starters tabular\">");
            for (place, shirt) in set.line_ups[team].iter().enumerate() {
                self.put("<li>");
                self.element("span", "place-number", words::roman(place + 1));
                self.put(" ");
                self.element("strong", "", shirt);
                self.put("</li>");
            }
            self.put("</ol>");
        }
        self.element("h4", "", words::SERVICE_ROUNDS);
        self.put("<ol class=\"rounds tabular\">");
        for round in &set.rounds[team] {
            self.put("<li>");
            self.element(
                "span",
                "visually-hidden",
                words::round(round.server, round.total),
            );
            let server = round.server.map(|s| s.to_string()).unwrap_or_default();
            let _ = write!(
                self.html,
                "<span class=\"round-server\" aria-hidden=\"true\">{server}</span>\
                 <span class=\"round-total\" aria-hidden=\"true\">{}</span></li>",
                round.total
            );
        }
        self.put("</ol>");
        let own = |of: Team| of == team;
        let time_outs = set.time_outs.iter().filter(|t| own(t.team));
        let time_outs = time_outs.map(|t| words::own_first(t.score, team)).collect();
        self.listed(words::TIME_OUTS, time_outs);
        let changes = set.substitutions.iter().filter(|s| own(s.team)).map(|s| {
            let how = if s.exceptional {
                words::EXCEPTIONAL
            } else {
                ""
            };
            let change = words::change(s.change.out, s.change.into);
            format!("{change} {}{how}", words::own_first(s.score, team))
        });
        let changes = changes.collect();
        self.listed(words::SUBSTITUTIONS, changes);
        let liberos = set.liberos.iter().filter(|r| own(r.team)).map(|r| {
            let change = words::change(r.change.out, r.change.into);
            format!("{change} {}", words::own_first(r.score, team))
        });
        let liberos = liberos.collect();
        self.listed(words::LIBEROS, liberos);
        self.put("</div>");
    }

    fn listed(&mut self, heading: &str, lines: Vec<String>) {
        if lines.is_empty() {
            return;
        }
        self.put("<p class=\"listed tabular\">");
        self.element("span", "listed-what", format!("{heading}:"));
        self.put(" ");
        self.word(&lines.join(", "));
        self.put("</p>");
    }

    /// Every point in its order, A's above, B's below.
    fn running(&mut self, points: &[PointMark]) {
        let last = |team: Team| {
            let total = points.iter().rev().filter(|p| p.team == team);
            total.filter_map(|p| p.total).next().unwrap_or_default()
        };
        let label = Team::BOTH.map(|team| words::running(&self.names[team], last(team)));
        let _ = write!(
            self.html,
            "<h4>{}</h4><div class=\"running-score tabular\" role=\"img\" aria-label=\"{}\">",
            words::RUNNING_SCORE,
            label.join(", ")
        );
        // A cancelled point shows the total it would have made.
        let mut stood = ByTeam::<u16>::default();
        for point in points {
            let shown = point.total.unwrap_or(stood[point.team] + 1);
            if point.total.is_some() {
                stood[point.team] = shown;
            }
            let side = match point.team {
                Team::A => "of-a",
                Team::B => "of-b",
            };
            let penalty = match point.given_for {
                PointFor::Rally => "",
                _ => " penalty",
            };
            let cancelled = match point.cancelled_by {
                None => "",
                Some(_) => " cancelled",
            };
            let _ = write!(
                self.html,
                "<span class=\"point {side}{penalty}{cancelled}\"><span>{shown}</span></span>"
            );
        }
        self.put("</div>");
        let marked = |p: &PointMark| p.given_for != PointFor::Rally || p.cancelled_by.is_some();
        if points.iter().any(marked) {
            self.element("p", "muted", words::RUNNING_KEY);
        }
    }

    /// Who was on the lists.
    fn players(&mut self, teams: &ByTeam<TeamBlock>) {
        if teams.a.players.is_empty() && teams.b.players.is_empty() {
            return;
        }
        let _ = write!(
            self.html,
            "<section class=\"sheet-part sheet-players\"><h2>{}</h2>",
            words::PLAYERS
        );
        for team in Team::BOTH {
            let block = &teams[team];
            let staff = block.staff.iter().map(|s| match &s.name {
                Some(name) => format!("{}: {name}", s.role),
                None => s.role.clone(),
            });
            let all: Vec<String> = block.players.iter().map(player).chain(staff).collect();
            self.put("<p>");
            self.team(team);
            self.put(": ");
            self.element("span", "tabular", all.join(", "));
            self.put("</p>");
        }
        self.put("</section>");
    }

    /// Signatures in the record, and lines for the pen where one is missing.
    fn signatures(&mut self, signatures: &[Signed]) {
        let _ = write!(
            self.html,
            "<section class=\"sheet-part signatures\"><h2>{}</h2>",
            words::SIGNATURES
        );
        for (when, before) in [(words::SIGNED_BEFORE, true), (words::SIGNED_AFTER, false)] {
            let given = signatures.iter().filter(|s| s.before == before);
            let lines = given.map(|s| {
                let name = s.name.as_ref().map(|n| format!(": {n}"));
                let at = s.at.map(|at| format!(" {}", self.clock.time(at)));
                let (name, at) = (name.unwrap_or_default(), at.unwrap_or_default());
                format!("{}{name}{at}", words::signer(&s.role))
            });
            let lines: Vec<String> = lines.collect();
            if lines.is_empty() && !before {
                self.element("p", "muted", words::NOT_SIGNED);
            }
            self.listed(when, lines);
        }
        self.put("<ul class=\"pen-lines\">");
        for (role, who) in words::SIGNERS {
            let signs = |s: &&Signed| !s.before && words::same_role(&s.role, role);
            let given = signatures.iter().find(signs);
            let class = if given.is_some() {
                "pen-line given"
            } else {
                "pen-line"
            };
            self.element("li", class, who);
        }
        self.put("</ul></section>");
    }

    fn seal(&mut self, seal: &SealBox) {
        let Some(last) = seal.seals.last() else {
            return;
        };
        let _ = write!(
            self.html,
            "<section class=\"sheet-part sheet-seal\"><h2>{}</h2>",
            words::SEAL
        );
        let at = last
            .at
            .map(|at| format!("{} {}", self.clock.date(at), self.clock.time(at)));
        self.element("p", "", words::seal(seal, last, at.as_deref()));
        if last.fits() && seal.holds {
            let code = crate::record::spaced(&last.code);
            self.element("p", "seal-code tabular", code);
        }
        self.element("p", "muted", words::SEAL_SHOWS);
        self.put("</section>");
    }
}

/// What is known of the match, each under its name.
fn about(heading: &Heading) -> Vec<(&'static str, String)> {
    let fields = [
        (words::COMPETITION, Detail::Competition),
        (words::DIVISION, Detail::Division),
        (words::MATCH_NO, Detail::MatchNo),
        (words::VENUE, Detail::Venue),
        (words::COURT, Detail::Court),
    ];
    let scheduled = heading.details[Detail::Scheduled]
        .as_deref()
        .unwrap_or_default();
    // A day and a time are one word in the record.
    let scheduled = (words::SCHEDULED, scheduled.replacen('T', " ", 1));
    fields
        .into_iter()
        .filter_map(|(what, detail)| {
            let fact = heading.details[detail]
                .as_deref()
                .filter(|f| !f.is_empty())?;
            Some((what, fact.to_owned()))
        })
        .chain(Some(scheduled).filter(|s| !s.1.is_empty()))
        .collect()
}

fn player(player: &Player) -> String {
    let mut words = player.number.to_string();
    if player.captain {
        words.push_str(words::CAPTAIN);
    }
    if player.libero {
        words.push_str(words::LIBERO);
    }
    if let Some(name) = &player.name {
        words.push(' ');
        words.push_str(name);
    }
    words
}

#[cfg(test)]
mod tests {
    use super::*;

    proptest::proptest! {
        #[test]
        fn no_text_becomes_markup(text in "\\PC{0,60}") {
            let safe = escaped(&text);
            proptest::prop_assert!(!safe.contains(['<', '>', '"', '\'']));
            let back = safe
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&quot;", "\"")
                .replace("&#39;", "'")
                .replace("&amp;", "&");
            proptest::prop_assert_eq!(back, text);
        }
    }
}
