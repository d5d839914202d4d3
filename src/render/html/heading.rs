//! What stands above the sets: who plays what where and when, and the results box.

use std::fmt::Write;

use super::{escaped, Paper};
use game::entry::{Detail, Heading};
use reports::{ResultBox, SetSheet, Sheet};
use rules::Team;
use text::score_sheet as words;

impl Paper {
    pub(super) fn heading(&mut self, sheet: &Sheet) {
        self.put(
            "<header class=\"sheet-head\"><div class=\"sheet-what\"><p class=\"sheet-teams\">",
        );
        for team in Team::BOTH {
            self.put("<span>");
            self.team(team);
            self.put("</span>");
        }
        self.put("</p>");
        self.outcome(&sheet.result);
        self.put("<dl class=\"sheet-about\">");
        for (what, fact) in self.facts(sheet) {
            self.put("<div>");
            self.element("dt", "", what);
            self.element("dd", "", fact);
            self.put("</div>");
        }
        self.put("</dl></div>");
        self.result(&sheet.result, &sheet.sets);
        self.put("</header>");
    }

    fn facts(&self, sheet: &Sheet) -> Vec<(&'static str, String)> {
        let (began, ended) = sheet.result.times;
        let mut facts = sheet.heading.as_ref().map(about).unwrap_or_default();
        if let Some(began) = began {
            facts.push((words::date(), self.clock.date(began)));
            facts.push((words::began(), self.clock.time(began)));
        }
        if let Some(ended) = ended.filter(|_| sheet.result.ended.is_some()) {
            facts.push((words::ended(), self.clock.time(ended)));
        }
        if let Some(minutes) = sheet.result.lasted() {
            facts.push((words::lasted_label(), words::lasted(minutes)));
        }
        if began.is_some() {
            facts.push((words::clock(), self.clock.name()));
        }
        facts
    }

    fn outcome(&mut self, result: &ResultBox) {
        let outcome = match (result.winner, result.ended) {
            (Some(winner), how) => {
                let how = how.and_then(words::how).map(|how| format!(", {how}"));
                let (sets, how) = (result.sets, how.unwrap_or_default());
                format!("{}{how}", words::won_by(&self.names[winner], sets, winner))
            }
            (None, Some(_)) => words::level_end().to_owned(),
            (None, None) => words::not_over().to_owned(),
        };
        // The name in it is harmless already.
        let _ = write!(
            self.html,
            "<h2 id=\"outcome\" class=\"outcome\">{outcome}</h2>"
        );
    }

    /// The results box: for each set and team points, sets won, time-outs and substitutions, and the
    /// minutes.
    fn result(&mut self, result: &ResultBox, sets: &[SetSheet]) {
        if sets.is_empty() {
            return;
        }
        let _ = write!(
            self.html,
            "<table class=\"sheet-table tabular\"><caption class=\"visually-hidden\">{}</caption>\
             <thead><tr><th scope=\"col\" rowspan=\"2\">{}</th><th scope=\"col\" rowspan=\"2\">{}</th>",
            words::result(),
            words::set(),
            words::minutes()
        );
        for team in Team::BOTH {
            self.put("<th scope=\"colgroup\" colspan=\"4\">");
            self.mark(team);
            let _ = write!(
                self.html,
                "<span class=\"visually-hidden\">{}</span></th>",
                self.names[team]
            );
        }
        self.put("</tr><tr>");
        for _ in Team::BOTH {
            for (short, long) in words::columns() {
                let _ = write!(
                    self.html,
                    "<th scope=\"col\"><abbr title=\"{long}\">{short}</abbr></th>"
                );
            }
        }
        self.put("</tr></thead><tbody>");
        for set in sets {
            let minutes = set.minutes().map(|m| m.to_string()).unwrap_or_default();
            self.put("<tr>");
            self.head_cell(&set.number.to_string());
            self.element("td", "", minutes);
            for team in Team::BOTH {
                let won = set.won.map(|(winner, _)| winner == team);
                self.element("td", "points", set.score[team]);
                self.element(
                    "td",
                    won_class(won),
                    won.map_or("", |w| if w { "1" } else { "0" }),
                );
                let time_outs = set.time_outs.iter().filter(|t| t.team == team);
                self.element("td", "", time_outs.count());
                let changes = set.substitutions.iter().filter(|s| s.team == team);
                self.element("td", "", changes.count());
            }
            self.put("</tr>");
        }
        self.put("</tbody><tfoot><tr>");
        self.head_cell(words::total());
        let minutes = result.minutes.map(|m| m.to_string()).unwrap_or_default();
        self.element("td", "", minutes);
        for team in Team::BOTH {
            self.element("td", "points", result.points[team]);
            self.element(
                "td",
                won_class(result.winner.map(|w| w == team)),
                result.sets[team],
            );
            self.element("td", "", result.time_outs[team]);
            self.element("td", "", result.substitutions[team]);
        }
        self.put("</tr></tfoot></table>");
    }

    fn head_cell(&mut self, text: &str) {
        let _ = write!(self.html, "<th scope=\"row\">{}</th>", escaped(text));
    }

    /// Over the sets that do not fit the first page: what tells that the pages belong together.
    pub(super) fn second_page(&mut self, sheet: &Sheet) {
        let _ = write!(
            self.html,
            "<p class=\"second-page\" aria-hidden=\"true\"><strong>{} \u{2013} {}</strong>",
            self.names.a, self.names.b
        );
        for (what, fact) in self.facts(sheet) {
            if [words::match_no(), words::competition(), words::date()].contains(&what) {
                let _ = write!(self.html, " <span>{what} {}</span>", escaped(&fact));
            }
        }
        let _ = write!(self.html, " <span>{}</span></p>", words::second_page());
    }
}

fn won_class(won: Option<bool>) -> &'static str {
    match won {
        Some(true) => "set-won",
        Some(false) | None => "",
    }
}

/// What is known of the match, each under its name.
fn about(heading: &Heading) -> Vec<(&'static str, String)> {
    let fields = [
        (words::competition(), Detail::Competition),
        (words::division(), Detail::Division),
        (words::match_no(), Detail::MatchNo),
        (words::venue(), Detail::Venue),
        (words::court(), Detail::Court),
    ];
    let scheduled = heading.details[Detail::Scheduled]
        .as_deref()
        .unwrap_or_default();
    // A day and a time are one word in the record.
    let scheduled = (words::scheduled(), scheduled.replacen('T', " ", 1));
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
