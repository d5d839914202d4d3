//! Time-outs, substitutions and sanctions, entered as they stand on the sheet.

use super::Table;
use crate::paper::{BoxKind, Fault, PaperSanction, PaperSubstitution};
use game::entry::{Change, Forced};
use game::{Barred, Entry, Kind, OutFor, Refusal, SanctionKind, State, Timeline};
use rules::{Shirt, Team};

impl Table<'_> {
    pub(super) fn time_out(&mut self, number: u8, i: usize, team: Team) {
        let kind = Kind::TimeOut { team };
        if let Err(refusal) = self.enter(kind.clone()) {
            let place = format!("time_outs[{i}]");
            self.against(Some(number), place, BoxKind::TimeOut, &refusal);
            self.insist(kind, &refusal);
        }
    }

    pub(super) fn request(
        &mut self,
        number: u8,
        team: Team,
        asked: &[(usize, &PaperSubstitution)],
        doubtful: bool,
    ) {
        let change = |s: &PaperSubstitution| Change {
            out: s.out,
            into: s.into,
        };
        let reason = asked
            .iter()
            .find(|(_, s)| s.exceptional)
            .map(|(_, s)| self.why_exceptional(team, s.out, number));
        let kind = |changes: Vec<Change>| Kind::Substitution {
            team,
            changes,
            reason,
        };
        let exceptional = |state: &State| state.play().map_or(0, |p| p.sides[team].exceptional);
        let before = exceptional(self.state());
        let changes: Vec<Change> = asked.iter().map(|(_, s)| change(s)).collect();
        let Err(refusal) = self.enter(kind(changes)) else {
            let place = format!("substitutions[{}]", asked[0].0);
            if reason.is_some() && exceptional(self.state()) == before && !doubtful {
                self.found(Some(number), place, Fault::NotExceptional);
            }
            return;
        };
        // Which of them it is about: alone, and behind those that can be granted.
        let legal = match &refusal {
            Refusal::PartlyIllegal { legal, .. } => legal.clone(),
            _ => Vec::new(),
        };
        if !legal.is_empty() {
            self.push(kind(legal.clone()));
        }
        for (i, s) in asked.iter().filter(|(_, s)| !legal.contains(&change(s))) {
            let alone = Entry::new(self.timeline.next_number(), kind(vec![change(s)]));
            let why = match (self.timeline.check(&alone), &refusal) {
                (Err(Refusal::SecondRequest { .. }), Refusal::PartlyIllegal { because, .. }) => {
                    (**because).clone()
                }
                (Err(why), _) => why,
                (Ok(()), _) => {
                    self.push(alone.kind);
                    continue;
                }
            };
            // Two requests at one score are one on paper; they are two here only where one of the scores
            // never stood, which is said already.
            let said = matches!(why, Refusal::SecondRequest { .. })
                || doubtful
                    && !matches!(
                        why,
                        Refusal::UnlistedSubstitute { .. } | Refusal::NoSubstitutionLeft { .. }
                    );
            if !said {
                let place = format!("substitutions[{i}]");
                self.against(Some(number), place, BoxKind::Substitution, &why);
            }
            self.insist(alone.kind, &why);
        }
    }

    /// Why an exceptional substitution was made: what the sanctions say, else an injury.
    fn why_exceptional(&self, team: Team, out: Shirt, number: u8) -> Forced {
        match self.state().team(team).barred(out, number) {
            Some(Barred::Expelled) => Forced::Expelled,
            Some(Barred::Out(OutFor::Disqualified)) => Forced::Disqualified,
            _ => Forced::Injury,
        }
    }

    /// A sanction without a point.
    pub(super) fn sanction(&mut self, i: usize, s: &PaperSanction) {
        let place = format!("sanctions[{i}]");
        let kind = entry_of(s);
        let mut trial = self.timeline.clone();
        let entry = Entry::new(trial.next_number(), kind.clone());
        if let Err(refusal) = trial.check(&entry) {
            self.against(None, place, BoxKind::Sanction, &refusal);
            self.insist(kind, &refusal);
            return;
        }
        trial.push(entry);
        let by_rule = trial.state().sanctions().last().map(|s| s.kind);
        if by_rule == Some(s.kind) {
            self.timeline = trial;
        } else {
            let written = s.kind;
            self.found(None, place, Fault::OtherSanction { written, by_rule });
            self.made_up();
        }
    }

    /// A sanction with a point, which is the next one on the sheet.
    pub(super) fn penalty(&mut self, i: usize, s: &PaperSanction, letter: &mut Option<Team>) {
        let to = s.team.other();
        if *letter != Some(to) {
            let place = format!("sanctions[{i}]");
            self.found(None, place, Fault::PointMissing { to });
            self.made_up();
            return;
        }
        let points = |timeline: &Timeline| {
            let score = timeline.state().score();
            (timeline.state().sets().count(), score[to])
        };
        let before = points(&self.timeline);
        self.sanction(i, s);
        if points(&self.timeline) != before {
            *letter = None;
        }
    }
}

fn entry_of(s: &PaperSanction) -> Kind {
    match (s.kind, &s.who) {
        (SanctionKind::Misconduct(sanction), Some(who)) => Kind::Misconduct {
            team: s.team,
            who: who.clone(),
            sanction,
        },
        (SanctionKind::ImproperRequest, _) => Kind::ImproperRequest { team: s.team },
        // Misconduct without a person is turned away by the reader.
        _ => Kind::Delay {
            team: s.team,
            request: false,
        },
    }
}
