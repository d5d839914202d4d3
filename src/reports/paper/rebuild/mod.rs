//! The rebuilt order entered into a log, box by box. What the reducer refuses is a finding; it is then
//! entered against its advice, because so it stands on the sheet.

mod asked;
mod place;
mod players;

use sha2::{Digest, Sha256};

use super::check::leader;
use super::finding::{BoxKind, Fault, Finding};
use super::rounds::Order;
use super::{PaperSet, PaperSheet};
use game::entry::{Heading, Toss};
use game::{Entry, Kind, Phase, Refusal, State, Timeline};
use place::Asked;
use record::Log;
use rules::{ByTeam, Team};

/// The remark that ends a rebuilt record. Like everything in a record it is the same in every language:
/// a sheet makes the same record wherever it is keyed in (FORMAT.md).
const REBUILT: &str =
    "Rebuilt from a paper sheet: times and causes of rallies, sides and libero replacements are not on \
     it.";
/// The remark where a record cannot be rebuilt further.
const REBUILT_SO_FAR: &str =
    "Rebuilt from a paper sheet up to here; what follows on it cannot be rebuilt.";
/// Why the record goes on against the advice of the rules.
const ON_THE_SHEET: &str = "So it stands on the paper sheet.";

/// The scorer's table at which the sheet is played through once more.
pub(super) struct Table<'a> {
    sheet: &'a PaperSheet,
    timeline: Timeline,
    /// How many entries stand on the sheet; those after it were made up to look further.
    on_sheet: Option<usize>,
    /// Who was due to open the last set.
    due: Option<Team>,
    pub findings: Vec<Finding>,
}

impl<'a> Table<'a> {
    /// Opens the match: heading and team lists.
    pub fn open(sheet: &'a PaperSheet) -> Table<'a> {
        let mut table = Table {
            sheet,
            timeline: Timeline::new(),
            on_sheet: None,
            due: None,
            findings: Vec::new(),
        };
        let heading = Heading::new(sheet.teams.map(|_, t| t.name.clone()), sheet.rules);
        // Rules that cannot be played by are turned away by the reader.
        table.push(Kind::Match(Box::new(heading)));
        if sheet.rules.line_ups {
            for team in Team::BOTH {
                table.list(team);
            }
        }
        table
    }

    /// What was found, the record as far as it stands on the sheet, and whether that is all of it.
    pub fn close(mut self) -> (Vec<Finding>, Log, bool) {
        let mut entries = self.timeline.entries().to_vec();
        let whole = self.on_sheet.is_none();
        entries.truncate(self.on_sheet.unwrap_or(usize::MAX));
        let text = if whole { REBUILT } else { REBUILT_SO_FAR };
        let text = text.to_owned();
        let n = entries.last().map_or(1, |e| e.n + 1);
        entries.push(Entry::new(n, Kind::Remark { text, team: None }));
        // The order of the sheet: the match first, then set by set.
        rules::sort_by_key(&mut self.findings, |f| f.set);
        let digest = Sha256::digest(super::write(self.sheet).as_bytes());
        let hex: String = digest.iter().take(6).map(|b| format!("{b:02x}")).collect();
        let id = format!("paper-{hex}");
        (self.findings, Log { id, entries }, whole)
    }

    fn state(&self) -> &State {
        self.timeline.state()
    }

    fn found(&mut self, set: Option<u8>, place: String, fault: Fault) {
        self.findings.push(Finding { set, place, fault });
    }

    /// Enters something, if the rules have nothing against it.
    fn enter(&mut self, kind: Kind) -> Result<(), Refusal> {
        let entry = Entry::new(self.timeline.next_number(), kind);
        self.timeline.check(&entry)?;
        self.timeline.push(entry);
        Ok(())
    }

    /// Enters what is known to be legal, or is not worth a finding.
    fn push(&mut self, kind: Kind) {
        let _ = self.enter(kind);
    }

    /// Enters something against the advice; what has no object is left out, and the record is no
    /// longer whole.
    fn insist(&mut self, kind: Kind, refusal: &Refusal) {
        if refusal.is_final() {
            self.made_up();
            return;
        }
        let mut entry = Entry::new(self.timeline.next_number(), kind);
        entry.insist = Some(ON_THE_SHEET.to_owned());
        self.timeline.push(entry);
    }

    /// From here on the log no longer says what stands on the sheet.
    fn made_up(&mut self) {
        let len = self.timeline.entries().len();
        self.on_sheet.get_or_insert(len);
    }

    fn against(&mut self, set: Option<u8>, place: String, about: BoxKind, refusal: &Refusal) {
        let refusal = refusal.clone();
        self.found(set, place, Fault::Against { about, refusal });
    }

    /// Plays one set through.
    pub fn set(&mut self, number: u8, set: &PaperSet, order: &Order) {
        if self.state().phase() == Phase::Finished {
            let place = format!("sets[{}]", number.saturating_sub(1));
            self.found(None, place, Fault::SetTooMany);
            return;
        }
        if self.state().set_at_hand() != number {
            return; // An earlier set could not be played through.
        }
        self.toss(number, set);
        let doubtful = if self.sheet.rules.line_ups {
            Team::BOTH.map(|team| !self.line_up(number, set, team))
        } else {
            [false, false]
        };
        let doubtful = ByTeam {
            a: doubtful[0],
            b: doubtful[1],
        };
        if self.enter(Kind::BeginSet).is_err() {
            self.made_up();
            return;
        }
        self.play(number, set, order, &doubtful);
        self.finish(number, set, order);
    }

    fn toss(&mut self, number: u8, set: &PaperSet) {
        let toss = Kind::Toss(Toss::new(
            set.first_service,
            // Sides are not on the form. By custom A is the team on the scorer's left in set 1
            // (score-sheet practice), which is the referee's right; the deciding set is as good as any.
            Team::B,
        ));
        let in_log = self.state().opener_to_come();
        // One wrong box is one finding: the next set follows from who was due to open this one.
        let due = match (in_log, self.due) {
            (Some(_), Some(last)) => last.other(),
            _ => set.first_service,
        };
        self.due = Some(due);
        if due != set.first_service {
            self.found(
                Some(number),
                "first_service".to_owned(),
                Fault::FirstServiceOrder { due },
            );
        }
        if in_log != Some(set.first_service) {
            if let Err(refusal) = self.enter(toss.clone()) {
                self.insist(toss, &refusal);
            }
        }
    }

    /// The rallies, and what was asked between them.
    fn play(&mut self, number: u8, set: &PaperSet, order: &Order, doubtful: &ByTeam<bool>) {
        let mut asked = self.place_all(number, set, order);
        for (i, at) in asked.iter_mut().enumerate() {
            let mut letter = order.letters.get(i).copied();
            for asked in at.drain(..) {
                if self.state().play().is_none() {
                    // Said once: what was asked at a score after the end of the set.
                    let score = self.state().score();
                    if letter.is_none() {
                        let place = asked.place();
                        self.found(Some(number), place, Fault::AfterTheEnd { score });
                    }
                    continue;
                }
                match asked {
                    Asked::Sanction(i, s) => self.sanction(i, s),
                    Asked::TimeOut(i, team) => self.time_out(number, i, team),
                    Asked::Request(team, changes) => {
                        self.request(number, team, &changes, doubtful[team]);
                    }
                    Asked::Penalty(i, s) => self.penalty(i, s, &mut letter),
                }
            }
            let Some(won_by) = letter else { continue };
            if self.state().play().is_none() {
                continue; // Said once, when the set is finished.
            }
            self.push(Kind::Rally {
                won_by,
                cause: None,
                by: None,
            });
        }
    }

    /// Whether the set ended with its last point. One that did not is ended for the leading team, to
    /// look at the next one.
    fn finish(&mut self, number: u8, set: &PaperSet, order: &Order) {
        let Some(score) = self.state().play().map(|p| p.score) else {
            let over_at = self.state().score();
            let points = usize::from(over_at.a) + usize::from(over_at.b);
            if points < order.letters.len() {
                let place = match order.letters.last() {
                    Some(&team) => {
                        format!(
                            "rounds.{team}[{}]",
                            set.rounds[team].len().saturating_sub(1)
                        )
                    }
                    None => "rounds".to_owned(),
                };
                self.found(Some(number), place, Fault::PlayedOn { over_at });
                self.made_up();
            }
            return;
        };
        if order.whole {
            self.found(
                Some(number),
                "final".to_owned(),
                Fault::NotFinished { score },
            );
        }
        self.made_up();
        let won_by = leader(set).unwrap_or(Team::A);
        // No target is further away.
        for _ in 0..2000 {
            if self.state().play().is_none() {
                break;
            }
            self.push(Kind::Rally {
                won_by,
                cause: None,
                by: None,
            });
        }
    }
}
