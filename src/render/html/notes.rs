//! What stands below the sets: sanctions, remarks, the record of the liberos, the lists, and how to read
//! the sheet.

use std::fmt::Write;

use super::{escaped, Paper};
use game::entry::Player;
use game::PointFor;
use reports::libero_turns;
use reports::{SetSheet, Sheet, TeamBlock};
use rules::{ByTeam, Team};
use text::score_sheet as words;

impl Paper {
    /// Things in one line after their name; nothing where there is nothing.
    pub(super) fn listed(&mut self, what: &str, things: &[String]) {
        if things.is_empty() {
            return;
        }
        self.put("<p class=\"listed tabular\">");
        self.element("span", "listed-what", format!("{what}:"));
        self.put(" ");
        self.word(&things.join(", "));
        self.put("</p>");
    }

    /// The sanctions box.
    pub(super) fn sanctions(&mut self, sheet: &Sheet) {
        if sheet.sanctions.is_empty() {
            return;
        }
        self.part("sheet-sanctions", words::sanctions());
        self.put("<ul class=\"sheet-lines\">");
        for sanction in &sheet.sanctions {
            self.line(&words::at(sanction.set, sanction.score));
            self.mark(sanction.team);
            let _ = write!(
                self.html,
                "<span class=\"visually-hidden\">{}</span> {}</li>",
                self.names[sanction.team],
                escaped(&words::sanction(sanction))
            );
        }
        self.put("</ul></section>");
    }

    pub(super) fn remarks(&mut self, sheet: &Sheet) {
        if sheet.remarks.is_empty() {
            return;
        }
        self.part("sheet-remarks", words::remarks());
        self.put("<ul class=\"sheet-lines\">");
        for line in &sheet.remarks {
            self.line(&words::at(line.set, line.score));
            self.word(&text::remark(&line.remark, sheet.into()));
            self.put("</li>");
        }
        self.put("</ul></section>");
    }

    /// The beginning of a line: where in the match it belongs.
    fn line(&mut self, at: &str) {
        self.put("<li>");
        self.element("span", "sheet-at tabular", at);
        self.put(" ");
    }

    /// The record of the liberos' replacements, kept apart from the sheet proper (28.2).
    pub(super) fn liberos(&mut self, sets: &[SetSheet]) {
        if sets.iter().all(|set| set.liberos.is_empty()) {
            return;
        }
        self.part("sheet-liberos", words::liberos());
        for set in sets {
            for team in Team::BOTH {
                let of: Vec<String> = libero_turns(set, team)
                    .iter()
                    .map(|turn| words::libero_turn(turn, team))
                    .collect();
                if of.is_empty() {
                    continue;
                }
                self.put("<p class=\"tabular\">");
                self.element("span", "sheet-at", words::set_heading(set.number));
                self.put(" ");
                self.mark(team);
                self.put(" ");
                self.word(&of.join(", "));
                self.put("</p>");
            }
        }
        self.put("</section>");
    }

    /// Who was on the lists.
    pub(super) fn players(&mut self, teams: &ByTeam<TeamBlock>) {
        if teams.a.players.is_empty() && teams.b.players.is_empty() {
            return;
        }
        self.part("sheet-players", words::players());
        for team in Team::BOTH {
            let block = &teams[team];
            self.put("<div><h3>");
            self.team(team);
            // Names want a line each, numbers do not.
            let named = block.players.iter().any(|p| p.name.is_some());
            let class = if named { "list-names" } else { "list-numbers" };
            let _ = write!(self.html, "</h3><ul class=\"{class} tabular\">");
            for player in &block.players {
                self.player(player);
            }
            for person in &block.staff {
                self.put("<li>");
                self.element("span", "muted", &person.role);
                if let Some(name) = &person.name {
                    let _ = write!(self.html, " {}", escaped(name));
                }
                self.put("</li>");
            }
            self.put("</ul></div>");
        }
        self.put("</section>");
    }

    /// A player; the captain's number is ringed, as custom has it, and said.
    fn player(&mut self, player: &Player) {
        let captain = if player.captain { " captain" } else { "" };
        let _ = write!(
            self.html,
            "<li><b class=\"shirt{captain}\">{}</b>",
            player.number
        );
        for (is, word) in [
            (player.captain, words::captain()),
            (player.libero, words::libero()),
        ] {
            if is {
                let (short, long) = word;
                let _ = write!(self.html, " <abbr title=\"{long}\">{short}</abbr>");
            }
        }
        if let Some(name) = &player.name {
            let _ = write!(self.html, " {}", escaped(name));
        }
        self.put("</li>");
    }

    /// What the signs mean that this sheet has.
    pub(super) fn key(&mut self, sheet: &Sheet) {
        let sets = &sheet.sets;
        if sets.is_empty() {
            return;
        }
        let points = || sets.iter().flat_map(|s| &s.running);
        let changes = || sets.iter().flat_map(|s| &s.substitutions);
        let places = sets.iter().any(|s| !s.line_ups.a.is_empty());
        let with_liberos = sheet.heading.as_ref().is_none_or(|h| h.rules.liberos > 0);
        let keys = [
            (true, words::key_result()),
            (with_liberos, words::key_rounds()),
            (!with_liberos, words::key_rounds_no_libero()),
            (places, words::key_places()),
            (places && changes().next().is_some(), words::key_entered()),
            (changes().any(|c| c.exceptional), words::key_exceptional()),
            (
                points().any(|p| p.given_for != PointFor::Rally),
                words::key_penalty(),
            ),
            (
                points().any(|p| p.cancelled_by.is_some()),
                words::key_cancelled(),
            ),
        ];
        let keys: Vec<&str> = keys.iter().filter(|k| k.0).map(|k| k.1).collect();
        self.element("p", "sheet-key", keys.join(" "));
    }
}
