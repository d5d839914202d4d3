//! The sheet as HTML: the same paper on the phone's screen, on its printer, and in a file of its own.
//!
//! Contents after the published practice of scorers (FIVB Official Volleyball Rules 2025-2028, 27.2 and
//! 28.2; what a sheet holds beyond the text is common practice); layout our own. Every word that
//! somebody typed is written with the signs of the markup made harmless.
//!
//! A set has a fixed height on paper: a line for each place of the rotation, whatever happened there. So
//! three sets fit one page and five fit two, with the lists and remarks of an ordinary match.

mod heading;
mod notes;
mod set;
mod signatures;

use std::fmt::{Display, Write};

use game::isolated;
use reports::{Sheet, SheetBox, WallClock};
use rules::{ByTeam, Team};
use text::score_sheet as words;

/// The style of the paper, in the page and in the file.
const STYLE: &str = include_str!("../../../style/paper.css");
/// Sets on the first page of paper; the others begin the second one.
const FIRST_PAGE: usize = 3;

/// The paper as a file of its own, with nothing outside of it.
#[must_use]
pub fn document(sheet: &Sheet, clock: WallClock) -> String {
    let [a, b] = Team::BOTH.map(|team| escaped(&isolated(&sheet.teams[team].name)));
    format!(
        "<!doctype html>\n<html lang=\"{}\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n\
         <title>{a} \u{2013} {b}</title>\n<style>\n{STYLE}</style>\n</head>\n\
         <body class=\"paper-alone\">\n{}</body>\n</html>\n",
        text::language().code(),
        paper(sheet, clock)
    )
}

/// The paper itself.
fn paper(sheet: &Sheet, clock: WallClock) -> String {
    let parts: String = parts(sheet, clock)
        .iter()
        .map(|part| format!("<div class=\"paper-part\">{}</div>", part.html))
        .collect();
    format!("<article class=\"paper\">{parts}</article>")
}

/// A part of the paper.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PaperPart {
    /// The box that it holds.
    pub holds: SheetBox,
    /// What stands there.
    pub html: String,
}

/// What stands on the paper, part by part: a screen shows one after the other, and anew only what differs.
#[must_use]
pub fn parts(sheet: &Sheet, clock: WallClock) -> Vec<PaperPart> {
    let mut out = Paper {
        parts: Vec::new(),
        html: String::new(),
        clock,
        names: ByTeam::new(|team| escaped(&sheet.teams[team].name)),
    };
    out.all(sheet);
    out.parts
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
    /// The parts that are whole.
    parts: Vec<PaperPart>,
    /// The one at hand.
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

    /// The beginning of a part of the sheet.
    fn part(&mut self, class: &str, heading: &str) {
        let _ = write!(self.html, "<section class=\"sheet-part {class}\">");
        self.element("h2", "", heading);
    }

    /// Here a part ends, if one has begun.
    fn cut(&mut self, holds: SheetBox) {
        if !self.html.is_empty() {
            let html = std::mem::take(&mut self.html);
            self.parts.push(PaperPart { holds, html });
        }
    }

    fn all(&mut self, sheet: &Sheet) {
        self.heading(sheet);
        if sheet.heading.as_ref().is_some_and(|h| h.practice) {
            self.part("sheet-broken", words::practice());
            self.put("</section>");
        }
        self.broken(&sheet.broken);
        self.cut(SheetBox::Heading);
        if sheet.sets.is_empty() {
            self.element("p", "", words::nothing_played());
        }
        for (i, set) in sheet.sets.iter().enumerate() {
            if i == FIRST_PAGE {
                self.second_page(sheet);
            }
            let first = i == 0 || i == FIRST_PAGE;
            self.set(set, sheet.time_outs, first);
            self.cut(SheetBox::Set(set.number));
        }
        self.sanctions(sheet);
        self.cut(SheetBox::Sanctions);
        self.remarks(sheet);
        self.cut(SheetBox::Remarks);
        self.players(&sheet.teams);
        self.cut(SheetBox::Teams);
        self.signatures(sheet);
        self.cut(SheetBox::Signatures);
        self.seal(sheet);
        self.cut(SheetBox::Seal);
        self.key(sheet);
        self.cut(SheetBox::Key);
        // A record of its own (28.2): where a page is full, this is what goes on to the next.
        self.liberos(&sheet.sets);
        self.cut(SheetBox::Liberos);
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
