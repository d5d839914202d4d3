//! Before the first set, and the signatures after the last.

use std::ops::Range;

use super::{below, Table, NAMES};
use crate::entry::{
    About, Amendment, Check, Detail, Heading, Player, Protested, Staff, TeamList, Toss, Won,
};
use crate::{Kind, Signer, Timed};
use rules::{ByTeam, Rules, Shirt, Team};

impl Table {
    pub(super) fn prepare(&mut self, rules: Rules) {
        let first = below(&mut self.rng, NAMES.len());
        let second = (first + 1 + below(&mut self.rng, NAMES.len() - 1)) % NAMES.len();
        let match_no = self.rng.u32(1..99).to_string();
        let names = ByTeam {
            a: NAMES[first].to_owned(),
            b: NAMES[second].to_owned(),
        };
        let mut heading = Heading::new(names, rules);
        heading.details[Detail::Competition] = Some("Spring rehearsal".to_owned());
        heading.details[Detail::Court] = Some("2".to_owned());
        heading.details[Detail::MatchNo] = Some(match_no);
        self.enter(Kind::Match(Box::new(heading)), 0..1);
        let mut later = Amendment::default();
        later.details[Detail::Venue] = Some("North hall".to_owned());
        self.enter(Kind::Heading(Box::new(later)), 1..5);
        self.checks();
        if rules.line_ups {
            for team in Team::BOTH {
                let list = self.list(team, &rules);
                self.enter(Kind::TeamList(list), 60..120);
            }
        }
        if self.now_and_then(40) {
            let team = self.team();
            self.enter(Kind::Default { team }, 900..1200);
            return;
        }
        self.toss();
        let captains = Team::BOTH.map(Signer::Captain);
        let coaches = Team::BOTH.map(Signer::Coach);
        self.signatures(captains.into_iter().chain(coaches), 5..20);
        for team in Team::BOTH {
            self.time(Timed::WarmUp, team, 3);
        }
    }

    /// Each check is done; what fails is put right and cleared.
    fn checks(&mut self) {
        let check = |item: &str, ok: bool, note: Option<&str>| {
            Kind::Check(Check {
                item: item.to_owned(),
                ok,
                note: note.map(str::to_owned),
            })
        };
        for item in ["kit", "floor", "net", "ball", "first_aid", "briefing"] {
            let ok = !self.now_and_then(20);
            let note = (!ok).then_some("seen before the match");
            self.enter(check(item, ok, note), 20..90);
            if !ok {
                let note = Some("put right, cleared by the coach in charge");
                self.enter(check(item, true, note), 60..300);
            }
        }
    }

    fn list(&mut self, team: Team, rules: &Rules) -> TeamList {
        // Now and then a team comes with nobody on the bench.
        let least = u16::from(rules.players_on_court);
        let players = if self.now_and_then(12) {
            least
        } else {
            self.rng
                .u16(least + 2..=12.min(u16::from(rules.roster.max)))
        };
        let liberos = u16::from(rules.liberos).min(players.saturating_sub(least + 1));
        let players = (1..=players)
            .map(|n| Player {
                number: Shirt(n),
                name: None,
                captain: n == 2,
                libero: n > players - liberos,
            })
            .collect();
        let staff = vec![Staff {
            role: "coach".to_owned(),
            name: None,
        }];
        TeamList {
            team,
            players,
            staff,
        }
    }

    pub(super) fn toss(&mut self) {
        let (first_service, left) = (self.team(), self.team());
        // Noted now and then, and always fitting the outcome.
        let chose = if first_service == left {
            About::Service
        } else {
            About::Side
        };
        let toss = Toss {
            first_service,
            left,
            won: (first_service == Team::A).then_some(Won { by: left, chose }),
        };
        self.enter(Kind::Toss(toss), 30..120);
    }

    /// Who signs when the match is over.
    pub(super) fn sign(&mut self) {
        let announced: Vec<u32> = self.state().protests().iter().map(|p| p.entry).collect();
        for entry in announced {
            // A captain may let it rest: one in three does.
            if entry % 3 != 0 {
                let kind = Kind::ProtestStatement {
                    about: Protested::Entry(entry),
                    text: "The ball had touched the block before it went out.".to_owned(),
                };
                self.enter_aside(kind, 120);
            }
        }
        let after = [
            Signer::Scorer,
            Signer::Captain(Team::A),
            Signer::Captain(Team::B),
            Signer::SecondReferee,
            Signer::FirstReferee,
        ];
        self.signatures(after, 10..40);
    }

    fn signatures(&mut self, who: impl IntoIterator<Item = Signer>, seconds: Range<i64>) {
        for signer in who {
            let role = signer.role();
            self.enter(Kind::Sign { role, name: None }, seconds.clone());
        }
    }
}
