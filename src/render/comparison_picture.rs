//! Where two records part, as a picture.

use std::fmt::Write;

use crate::Picture;
use game::Timeline;
use reports::compare::{winners, Comparison};
use rules::Team;

const WIDE: usize = 320;
/// Where the lines begin and how far they may go.
const LEFT: usize = 16;
const RIGHT: usize = WIDE - 16;
/// Where neither team leads, and how far the lines go from there.
const MIDDLE: i32 = 64;
const HIGH: i32 = 46;

/// How the lead went in both records in the set in which they part: one line as far as they agree, then
/// a drawn one for the first and a broken one for the second; none where no point differs.
#[must_use]
pub fn parting(comparison: &Comparison, records: [&Timeline; 2]) -> Option<Picture> {
    let parting = comparison.parting()?;
    let (set, rally, score) = (parting.set?, parting.rally?, parting.score?);
    let exchanged = comparison.is_exchanged();
    let leads = [
        leads(&winners(records[0].state(), set), false),
        leads(&winners(records[1].state(), set), exchanged),
    ];
    let longest = leads.iter().map(Vec::len).max()?.max(1);
    let all = leads.iter().flatten();
    let most = all.map(|lead| lead.abs()).max()?.max(4);
    let x = |i: usize| LEFT + i * (RIGHT - LEFT) / longest;
    let y = |lead: i32| MIDDLE - lead * HIGH / most;
    let mut inside = format!(
        "<path class=\"axis\" d=\"M{LEFT} {MIDDLE}H{RIGHT}\"/>\
         <text x=\"2\" y=\"34\">A</text><text x=\"2\" y=\"102\">B</text>"
    );
    // Writing into a string cannot fail.
    let at = x(rally.saturating_sub(1));
    let _ = write!(
        inside,
        "<path class=\"upright\" d=\"M{at} 12V118\"/>\
         <text x=\"{at}\" y=\"10\" class=\"mid\">{score}</text>"
    );
    let from = rally.saturating_sub(1);
    for (number, (class, leads)) in (1..).zip([("line", &leads[0]), ("line broken", &leads[1])]) {
        // As far as they agree the first line is that of both.
        let from = if number == 1 {
            0
        } else {
            from.min(leads.len())
        };
        let before = from.checked_sub(1).and_then(|i| leads.get(i));
        let mut line = format!("M{} {}", x(from), y(before.copied().unwrap_or(0)));
        for (i, lead) in leads.iter().enumerate().skip(from) {
            let _ = write!(line, "V{}H{}", y(*lead), x(i + 1));
        }
        let end = y(leads.last().copied().unwrap_or(0)) + 4;
        let _ = write!(
            inside,
            "<path class=\"{class}\" d=\"{line}\"/>\
             <text x=\"{}\" y=\"{end}\" class=\"strong\">{number}</text>",
            x(leads.len()) + 3
        );
    }
    let ends = [&leads[0], &leads[1]].map(Vec::len);
    Some(Picture {
        size: (WIDE as u32, 128),
        inside,
        say: text::comparison::parting(set, from, score, ends),
    })
}

/// By how much A leads after each point.
fn leads(winners: &[Team], turned: bool) -> Vec<i32> {
    let mut lead = 0;
    let of_a = |w: &Team| (*w == Team::A) != turned;
    winners
        .iter()
        .map(|w| {
            lead += if of_a(w) { 1 } else { -1 };
            lead
        })
        .collect()
}
