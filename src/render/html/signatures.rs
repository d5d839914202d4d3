//! Signatures and the seal.

use std::fmt::Write;

use super::{escaped, Paper};
use record::{spaced, Broken, HEIGHT, WIDTH};
use reports::{Sheet, Signed};
use text::score_sheet as words;

impl Paper {
    /// A box for everybody who signs: what was drawn, the name, the time; or room for a pen.
    pub(super) fn signatures(&mut self, sheet: &Sheet) {
        self.part("signatures", words::signatures());
        let lists = sheet.has_lists();
        let before: &[_] = if lists { &words::SIGNERS_BEFORE } else { &[] };
        for (when, first, roles) in [
            (words::signed_before(), true, before),
            (words::signed_after(), false, &words::SIGNERS[..]),
        ] {
            let given: Vec<&Signed> = sheet
                .signatures
                .iter()
                .filter(|s| s.before == first)
                .collect();
            if roles.is_empty() && given.is_empty() {
                continue;
            }
            self.put("<div>");
            self.element("h3", "", when);
            if !first && given.is_empty() {
                self.element("p", "muted", words::not_signed());
            }
            self.put("<ul class=\"sign-boxes\">");
            for role in roles {
                let of_role = |s: &&&Signed| words::same_role(&s.role, role);
                self.sign_box(
                    &words::signer(role),
                    given.iter().rev().find(of_role).copied(),
                );
            }
            for other in given {
                if !roles.iter().any(|r| words::same_role(&other.role, r)) {
                    self.sign_box(&words::signer(&other.role), Some(other));
                }
            }
            self.put("</ul></div>");
        }
        self.put("</section>");
    }

    fn sign_box(&mut self, who: &str, signed: Option<&Signed>) {
        let Some(signed) = signed else {
            let _ = write!(
                self.html,
                "<li class=\"sign-box open\"><span class=\"pen\"></span><b>{}</b> \
                 <span class=\"muted on-screen-only\">{}</span></li>",
                escaped(who),
                words::sign_open()
            );
            return;
        };
        self.put("<li class=\"sign-box\">");
        // What was drawn stands under the result that its hand saw.
        match &signed.drawn {
            _ if signed.outdated => {
                let _ = write!(
                    self.html,
                    "<span class=\"pen by-tap\">{}</span>",
                    words::signed_another_result()
                );
            }
            Some(strokes) => {
                let _ = write!(
                    self.html,
                    "<svg class=\"pen\" viewBox=\"0 0 {WIDTH} {HEIGHT}\" role=\"img\" \
                     aria-label=\"{}\"><path d=\"{}\"/></svg>",
                    words::drawn(),
                    strokes.path()
                );
            }
            None => {
                let _ = write!(
                    self.html,
                    "<span class=\"pen by-tap\">\u{2713} {}</span>",
                    words::signed_by_tap()
                );
            }
        }
        let time = signed.at.map(|at| self.clock.time(at)).unwrap_or_default();
        let name = signed.name.as_deref().unwrap_or_default();
        let _ = write!(
            self.html,
            "<b>{}</b> <span>{}</span> <span class=\"tabular\">{time}</span></li>",
            escaped(who),
            escaped(name)
        );
    }

    /// What was changed after it was written, before anything else is read.
    pub(super) fn broken(&mut self, broken: &[Broken]) {
        if broken.is_empty() {
            return;
        }
        self.part("sheet-broken", words::changed());
        for sentence in words::broken(broken) {
            self.element("p", "", sentence);
        }
        self.put("</section>");
    }

    pub(super) fn seal(&mut self, sheet: &Sheet) {
        let seal = &sheet.seal;
        let Some(last) = seal.seals.last() else {
            return;
        };
        self.part("sheet-seal", words::seal_label());
        let at = last
            .at
            .map(|at| format!("{} {}", self.clock.date(at), self.clock.time(at)));
        self.element("p", "", words::seal(seal, last, at.as_deref()));
        if last.fits() && seal.holds {
            self.element("p", "seal-code tabular", spaced(&last.code));
        }
        if let Some(open) = words::left_open(sheet) {
            self.element("p", "seal-open", open);
        }
        self.element("p", "muted", words::seal_shows());
        self.put("</section>");
    }
}
