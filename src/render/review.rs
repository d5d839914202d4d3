//! The pictures of a review.

use std::fmt::Write;

use crate::Picture;
use reports::review::{Calls, Review, SetReview, TimeOut};
use rules::{ByTeam, Team};
use text::review as words;

/// Upper ends of the spans into which the times between rallies are sorted, in seconds; the last has none.
const SPANS: [i64; 5] = [10, 20, 30, 45, 60];

/// How the lead went: above the middle line A leads, below it B; a T stands at each time-out.
#[must_use]
pub fn lead(set: &SetReview, names: &ByTeam<String>) -> Picture {
    const WIDE: u32 = 320;
    let leads: Vec<i32> = set
        .points
        .iter()
        .map(|p| i32::from(p.score.a) - i32::from(p.score.b))
        .collect();
    let most = leads
        .iter()
        .map(|l| l.unsigned_abs())
        .max()
        .unwrap_or(0)
        .max(4);
    let across = |i: usize| 14 + i as u32 * (WIDE - 24) / leads.len().max(1) as u32;
    let up = |lead: i32| 60 - lead * 44 / most as i32;
    let mut inside = String::from("<path class=\"axis\" d=\"M14 60H314\"/><text x=\"2\" y=\"34\">A</text><text x=\"2\" y=\"94\">B</text>");
    let mut line = String::from("M14 60");
    for (i, lead) in leads.iter().enumerate() {
        // Writing into a string cannot fail.
        let _ = write!(line, "V{}H{}", up(*lead), across(i + 1));
    }
    let _ = write!(inside, "<path class=\"line\" d=\"{line}\"/>");
    for t in &set.time_outs {
        let at = set
            .points
            .iter()
            .position(|p| p.score == t.score)
            .map_or(0, |i| i + 1);
        let (x, y) = (across(at), if t.team == Team::A { 10 } else { 118 });
        let _ = write!(
            inside,
            "<path class=\"upright\" d=\"M{x} 14V108\"/><text x=\"{x}\" y=\"{y}\" class=\"mid\">T</text>"
        );
    }
    let best = |sign: i32| {
        let most = leads.iter().map(|l| l * sign).max();
        u16::try_from(most.unwrap_or(0)).unwrap_or(0)
    };
    let changes = leads
        .iter()
        .filter(|l| **l != 0)
        .map(|l| l.signum())
        .fold((0, 0), |(last, n), now| {
            (now, n + usize::from(last != 0 && last != now))
        })
        .1;
    Picture {
        size: (WIDE, 122),
        inside,
        say: words::lead(
            set.number,
            set.score,
            [(&names.a, best(1)), (&names.b, best(-1))],
            changes,
        ),
    }
}

/// Points won and lost from each place in a team's order of service: filled upwards won, empty
/// downwards lost.
#[must_use]
pub fn rotation(set: &SetReview, team: Team, name: &str) -> Option<Picture> {
    let all = &set.rotations[team];
    if all.is_empty() {
        return None;
    }
    let most = all.iter().map(|(w, l)| *w.max(l)).max().unwrap_or(0).max(1);
    let mut inside = String::from("<path class=\"axis\" d=\"M4 62H316\"/>");
    for (i, (won, lost)) in all.iter().enumerate() {
        let x = 10 + i as u32 * 52;
        let long = |n: u16| u32::from(n) * 36 / u32::from(most);
        let (up, down) = (long(*won), long(*lost));
        let _ = write!(
            inside,
            "<rect class=\"won\" x=\"{x}\" y=\"{}\" width=\"22\" height=\"{up}\"/>\
             <rect class=\"lost\" x=\"{}\" y=\"62\" width=\"22\" height=\"{down}\"/>\
             <text x=\"{}\" y=\"{}\" class=\"mid\">{won}</text>\
             <text x=\"{}\" y=\"{}\" class=\"mid\">{lost}</text>\
             <text x=\"{}\" y=\"124\" class=\"mid strong\">{}</text>",
            62 - up,
            x + 22,
            x + 11,
            58 - up,
            x + 33,
            76 + down,
            x + 22,
            i + 1
        );
    }
    Some(Picture {
        size: (320, 128),
        inside,
        say: words::rotations(name, set.number, all),
    })
}

/// How long it took from one rally to the next where nothing held play up.
#[must_use]
pub fn pauses(review: &Review) -> Option<Picture> {
    let points = review.sets.iter().flat_map(|s| &s.points);
    let pauses: Vec<i64> = points
        .filter_map(|p| p.pause.filter(|_| !p.held_up))
        .collect();
    if pauses.is_empty() {
        return None;
    }
    let mut counts = [0_u32; SPANS.len() + 1];
    for pause in &pauses {
        counts[SPANS
            .iter()
            .position(|end| pause < end)
            .unwrap_or(SPANS.len())] += 1;
    }
    let most = counts.iter().copied().max().unwrap_or(0).max(1);
    let mut inside = String::from("<path class=\"axis\" d=\"M4 92H316\"/>");
    let mut said = Vec::new();
    let mut from = 0;
    for (i, count) in counts.iter().enumerate() {
        let x = 10 + i as u32 * 52;
        let long = count * 70 / most;
        let span = SPANS
            .get(i)
            .map_or_else(|| format!("{from}+"), |end| format!("{from}–{end}"));
        let _ = write!(
            inside,
            "<rect class=\"won\" x=\"{x}\" y=\"{}\" width=\"40\" height=\"{long}\"/>\
             <text x=\"{}\" y=\"{}\" class=\"mid\">{count}</text>\
             <text x=\"{}\" y=\"108\" class=\"mid\">{span}</text>",
            92 - long,
            x + 20,
            88 - long,
            x + 20
        );
        said.push((span, *count));
        from = SPANS.get(i).copied().unwrap_or(from);
    }
    Some(Picture {
        size: (320, 112),
        inside,
        say: words::pauses(&said),
    })
}

/// When something was called: the whole match from left to right, a thin line between the sets.
#[must_use]
pub fn when_called(review: &Review, calls: &Calls) -> Picture {
    let all = review.points().max(1) as u32;
    let mut inside = String::from("<path class=\"axis\" d=\"M4 14H316\"/>");
    let mut before = 0;
    let mut each = Vec::new();
    for set in &review.sets {
        if before > 0 {
            let x = 4 + before * 312 / all;
            let _ = write!(inside, "<path class=\"upright\" d=\"M{x} 2V26\"/>");
        }
        let of: Vec<usize> = calls
            .when
            .iter()
            .filter(|w| w.0 == set.number)
            .map(|w| w.1)
            .collect();
        for i in &of {
            let x = 4 + (before + *i as u32) * 312 / all;
            let _ = write!(inside, "<path class=\"line\" d=\"M{x} 8V20\"/>");
            if calls.shown.contains(&(set.number, *i)) {
                let _ = write!(
                    inside,
                    "<circle class=\"lost\" cx=\"{x}\" cy=\"4\" r=\"3\"/>"
                );
            }
        }
        each.push((set.number, of.len()));
        before += set.points.len() as u32;
    }
    Picture {
        size: (320, 28),
        inside,
        say: words::when_called(&each, calls.shown.len()),
    }
}

/// The points after it: filled those of the team that took it, empty the other's.
#[must_use]
pub fn after_time_out(time_out: &TimeOut) -> Picture {
    let mut inside = String::new();
    for (i, team) in time_out.after.iter().enumerate() {
        let class = if *team == time_out.team {
            "won"
        } else {
            "lost"
        };
        let x = 2 + i * 24;
        let _ = write!(
            inside,
            "<rect class=\"{class}\" x=\"{x}\" y=\"2\" width=\"20\" height=\"20\"/>"
        );
    }
    let own = time_out
        .after
        .iter()
        .filter(|t| **t == time_out.team)
        .count();
    Picture {
        size: (124, 24),
        inside,
        say: words::after_time_out(time_out.after.len(), own),
    }
}
