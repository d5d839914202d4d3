//! One set: who started where, who came in there, who served how long, every point in its order.

use std::fmt::Write;

use super::{escaped, Paper};
use game::PointFor;
use reports::{Entered, Half, Place, Turn};
use reports::{PointMark, Round, SetSheet};
use rules::{ByTeam, Shirt, Team};
use text::score_sheet as words;

impl Paper {
    /// A set, perhaps the first of its page; so many time-outs each team may take in it, where there is a
    /// limit.
    pub(super) fn set(&mut self, set: &SetSheet, time_outs: Option<u8>, first: bool) {
        self.put(if first {
            "<section class=\"sheet-part sheet-set\">"
        } else {
            "<section class=\"sheet-part sheet-set later\">"
        });
        self.put("<div class=\"sheet-set-head\"><h2>");
        self.word(&words::set_heading(set.number));
        self.put(" ");
        self.element("span", "tabular", set.score.marked());
        self.put("</h2>");
        let time = |at: Option<i64>| at.map(|at| self.clock.time(at));
        let (began, ended) = (time(set.began), time(set.ended));
        let mut facts = words::times(began.as_deref(), ended.as_deref(), set.minutes());
        facts.extend(words::kept_from(set, &time));
        facts.extend(
            set.won
                .and_then(|(_, how)| words::how(how))
                .map(str::to_owned),
        );
        facts.extend(set.courts_changed.map(words::courts_changed));
        self.element("p", "muted tabular", facts.join(", "));
        if let Some((by, choice)) = set.won_toss {
            self.put("<p class=\"muted\">");
            // The names are safe to print by now.
            let words = words::won_toss(&self.names[by], choice);
            self.put(&words);
            self.put("</p>");
        }
        self.put("</div><div class=\"sheet-sides\">");
        for team in Team::BOTH {
            self.side(set, team, time_outs);
        }
        self.put("</div>");
        if !set.running.is_empty() {
            self.running(&set.running);
        }
        self.put("</section>");
    }

    /// One team's half of a set.
    fn side(&mut self, set: &SetSheet, team: Team, time_outs: Option<u8>) {
        let _ = write!(
            self.html,
            "<div class=\"sheet-side team-{}\"><div class=\"side-head\"><h3>",
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
        if let Some(left) = set.left {
            self.element("span", "muted", words::side(left == team));
        }
        self.time_outs(set, team, time_outs);
        self.put("</div>");
        let half = Half::of(set, team);
        if half.places.is_empty() {
            self.turns(&set.rounds[team]);
        } else {
            self.places(&half.places, team);
        }
        if !half.elsewhere.is_empty() {
            let changes = half.elsewhere.iter().map(|s| {
                let change = words::change(s.change.out, s.change.into);
                format!("{change} {}", words::own_first(s.score, team))
            });
            let changes: Vec<String> = changes.collect();
            self.listed(words::substitutions(), &changes);
        }
        let spoke = words::game_captains(set, team);
        if !spoke.is_empty() {
            self.listed(words::game_captains_label(), &spoke);
        }
        self.put("</div>");
    }

    /// A box for each time-out that may be taken, with the own points first where it was.
    fn time_outs(&mut self, set: &SetSheet, team: Team, most: Option<u8>) {
        let taken = set.time_outs.iter().filter(|t| t.team == team);
        let taken: Vec<String> = taken.map(|t| words::own_first(t.score, team)).collect();
        // Where line-ups are not kept, nobody counts them either.
        let boxes = usize::from(most.unwrap_or(0)).max(taken.len());
        if boxes == 0 {
            return;
        }
        self.put("<p class=\"time-outs tabular\">");
        self.element("span", "muted", words::time_outs());
        for i in 0..boxes {
            let score = taken.get(i).map_or("", String::as_str);
            let _ = write!(self.html, " <span class=\"time-out-box\">{score}</span>");
        }
        if taken.is_empty() {
            self.element("span", "visually-hidden", words::none());
        }
        self.put("</p>");
    }

    fn places(&mut self, places: &[Place], team: Team) {
        self.put("<table class=\"sheet-places tabular\"><thead><tr>");
        for column in words::place_columns() {
            let _ = write!(self.html, "<th scope=\"col\">{column}</th>");
        }
        self.put("</tr></thead><tbody>");
        for (i, place) in places.iter().enumerate() {
            let _ = write!(
                self.html,
                "<tr><th scope=\"row\">{}</th><td class=\"starter\">{}</td><td class=\"entered\">",
                words::roman(i + 1),
                place.starter
            );
            for entered in &place.entered {
                self.entered(entered, team);
            }
            self.put("</td><td class=\"turns\">");
            for turn in &place.turns {
                self.turn(place, turn);
            }
            self.put("</td></tr>");
        }
        self.put("</tbody></table>");
    }

    /// Who came in, with the score; ringed where the starter has come back for them.
    fn entered(&mut self, entered: &Entered, team: Team) {
        let class = if entered.relieved {
            "came-in relieved"
        } else {
            "came-in"
        };
        let _ = write!(
            self.html,
            "<span class=\"{class}\"><b>{}</b> {}{}</span> ",
            entered.shirt,
            words::own_first(entered.score, team),
            if entered.exceptional {
                words::exceptional()
            } else {
                ""
            }
        );
    }

    fn turn(&mut self, place: &Place, turn: &Turn) {
        match turn {
            Turn::None => {
                let _ = write!(
                    self.html,
                    "<span class=\"turn none\"><span class=\"visually-hidden\">{}</span></span>",
                    words::no_turn()
                );
            }
            Turn::Ended { round, last } => self.ended(round, Some(place.starter), *last),
        }
    }

    /// Turns where nobody knows the places.
    fn turns(&mut self, rounds: &[Round]) {
        self.put("<p class=\"turns tabular\">");
        for round in rounds {
            self.ended(round, None, false);
        }
        self.put("</p>");
    }

    /// The total at the end of a turn; who served stands beside it where it was not the starter.
    fn ended(&mut self, round: &Round, starter: Option<Shirt>, last: bool) {
        let class = match (last, round.server) {
            (false, _) => "turn",
            (true, Some(_)) => "turn final",
            (true, None) => "turn final on-other",
        };
        let _ = write!(
            self.html,
            "<span class=\"{class}\"><span class=\"visually-hidden\">{}</span>",
            escaped(&words::round(round.server, round.total))
        );
        if let Some(server) = round.server.filter(|_| round.server != starter) {
            let _ = write!(self.html, "<sup aria-hidden=\"true\">{server}</sup>");
        }
        let _ = write!(
            self.html,
            "<span class=\"turn-total\" aria-hidden=\"true\">{}</span></span>",
            round.total
        );
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
            "<div class=\"running-line\"><h4>{}</h4><div class=\"running-score tabular\" role=\"img\" \
             aria-label=\"{}\"><span class=\"point whose\"><span>{}</span><span>{}</span></span>",
            words::running_score(),
            label.join(", "),
            Team::A,
            Team::B
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
        self.put("</div></div>");
    }
}
