//! How a story is told: entries one after the other, each with what must become of it.

use game::entry::{
    By, Change, Court, Fault, Forced, Found, LateFault, LiberoWhy, ReplayWhy, Scope, Since, Toss,
};
use game::{notices, Entry, Kind, Level, Notice, Outcome, Phase, Refusal, Timeline, Who};
use rules::{Cause, Preset, Rules, Score, Shirt, Team};

use crate::support;

/// A match being told.
pub struct Story {
    timeline: Timeline,
}

impl Story {
    /// Opened by these rules, nothing else.
    pub fn opened(rules: Rules) -> Story {
        Story {
            timeline: Timeline::of(vec![Entry::new(1, support::heading(rules))]),
        }
    }

    /// Opened, and the lists of both teams given: players 1 to 12, the given liberos.
    pub fn listed(rules: Rules, liberos: &[u16]) -> Story {
        let mut story = Story::opened(rules);
        for team in Team::BOTH {
            story.enter(support::list(team, 12, liberos));
        }
        story
    }

    /// At the first service: A opens from the left, 1 to 6 start for both, 12 is the libero where
    /// there is one, 7 to 11 sit on the bench.
    pub fn by(rules: Rules) -> Story {
        let mut story = Story {
            timeline: Timeline::new(),
        };
        for kind in support::opening(rules) {
            story.enter(kind);
        }
        story
    }

    /// The same by the international text.
    pub fn international() -> Story {
        Story::by(Preset::International.rules())
    }

    /// The same with two liberos, 11 and 12.
    pub fn two_liberos() -> Story {
        let rules = Preset::International.rules();
        let mut story = Story::listed(rules, &[11, 12]);
        story.enter(toss(Team::A, Team::A)).sets_out();
        story
    }

    fn entry(&self, kind: Kind) -> Entry {
        Entry::new(self.timeline.next_number(), kind)
    }

    /// Must be taken up.
    #[track_caller]
    pub fn enter(&mut self, kind: Kind) -> &mut Story {
        let entry = self.entry(kind);
        self.enter_as(entry)
    }

    /// Must be taken up, at this time.
    #[track_caller]
    pub fn enter_at(&mut self, minutes: i64, kind: Kind) -> &mut Story {
        let at = Some(minutes * 60_000);
        let entry = Entry {
            at,
            ..self.entry(kind)
        };
        self.enter_as(entry)
    }

    #[track_caller]
    fn enter_as(&mut self, entry: Entry) -> &mut Story {
        let kind = entry.kind.clone();
        let outcome = self.timeline.push(entry).clone();
        assert_eq!(outcome, Outcome::Accepted, "{kind:?}");
        self
    }

    /// Must be refused for this, under this rule; nothing may change, and the sentence must name
    /// every number of the refusal.
    #[track_caller]
    pub fn refuses(&mut self, kind: Kind, rule: &str, why: Refusal) -> &mut Story {
        let entry = self.entry(kind);
        self.refuses_as(entry, rule, why)
    }

    /// The same at a given time.
    #[track_caller]
    pub fn refuses_at(&mut self, minutes: i64, kind: Kind, rule: &str, why: Refusal) -> &mut Story {
        let at = Some(minutes * 60_000);
        let entry = Entry {
            at,
            ..self.entry(kind)
        };
        self.refuses_as(entry, rule, why)
    }

    /// Refused although the official insists: there is nothing that could be carried out.
    #[track_caller]
    pub fn refuses_even_so(&mut self, kind: Kind, rule: &str, why: Refusal) -> &mut Story {
        let insist = Some("first referee's decision".to_owned());
        let entry = Entry {
            insist,
            ..self.entry(kind)
        };
        self.refuses_as(entry, rule, why)
    }

    #[track_caller]
    fn refuses_as(&mut self, entry: Entry, rule: &str, why: Refusal) -> &mut Story {
        let kind = entry.kind.clone();
        assert_eq!(
            self.timeline.check(&entry),
            Err(why.clone()),
            "asked before: {kind:?}"
        );
        let before = support::counts(self.timeline.state());
        let outcome = self.timeline.push(entry).clone();
        assert_eq!(outcome, Outcome::Refused(why.clone()), "{kind:?}");
        assert_eq!(
            support::counts(self.timeline.state()),
            before,
            "a refused entry changed something: {kind:?}"
        );
        assert_eq!(why.rule(), rule, "the rule of {why:?}");
        names_its_numbers(&why, &text::refusal(&why, self.timeline.state().into()));
        self
    }

    /// Must be refused under a rule that begins so, whatever the refusal is called.
    #[track_caller]
    pub fn refuses_under(&mut self, kind: Kind, rule: &str) -> &mut Story {
        let entry = self.entry(kind);
        let why = self.timeline.check(&entry).expect_err("must be refused");
        let full = why.rule();
        assert!(full.starts_with(rule), "{why:?} comes under {full}");
        self.refuses_as(entry, full, why)
    }

    /// Must be taken up against this advice.
    #[track_caller]
    pub fn insists(&mut self, kind: Kind, advice: Refusal) -> &mut Story {
        let insist = Some("first referee's decision".to_owned());
        let entry = Entry {
            insist,
            ..self.entry(kind)
        };
        assert_eq!(self.timeline.check(&entry), Err(advice.clone()));
        let outcome = self.timeline.push(entry.clone()).clone();
        assert_eq!(outcome, Outcome::Insisted(advice), "{:?}", entry.kind);
        self
    }

    /// Rallies, one for each letter.
    #[track_caller]
    pub fn rallies(&mut self, letters: &str) -> &mut Story {
        for kind in support::run(letters) {
            self.enter(kind);
        }
        self
    }

    /// A set that a team wins without losing a rally.
    #[track_caller]
    pub fn set_to(&mut self, team: Team) -> &mut Story {
        let set = self.timeline.state().sets().count();
        while self.timeline.state().sets().count() == set {
            self.rallies(team.letter());
        }
        self
    }

    /// Both line-ups 1 to 6, or as many as play.
    #[track_caller]
    pub fn line_ups(&mut self) -> &mut Story {
        let rules = *self.timeline.state().rules();
        for kind in support::set_begins(&rules) {
            if kind != Kind::BeginSet {
                self.enter(kind);
            }
        }
        self
    }

    /// The same and the first service.
    #[track_caller]
    pub fn sets_out(&mut self) -> &mut Story {
        self.line_ups().enter(Kind::BeginSet)
    }

    /// Four sets, two for each, and the toss for the fifth: B opens, A on the left.
    #[track_caller]
    pub fn until_the_decider(&mut self) -> &mut Story {
        for team in [Team::A, Team::B, Team::A] {
            self.set_to(team).sets_out();
        }
        self.set_to(Team::B)
            .enter(toss(Team::B, Team::A))
            .sets_out()
    }

    /// The number of the last entry.
    pub fn last(&self) -> u32 {
        self.timeline.next_number() - 1
    }

    /// The fold so far.
    pub fn timeline(&self) -> &Timeline {
        &self.timeline
    }

    /// The score.
    #[track_caller]
    pub fn score(&mut self, a: u16, b: u16) -> &mut Story {
        assert_eq!(self.timeline.state().score(), Score { a, b }, "score");
        self
    }

    /// Who serves next.
    #[track_caller]
    pub fn serves(&mut self, team: Team, number: u16) -> &mut Story {
        assert_eq!(
            self.timeline.state().serving(),
            Some((team, Some(Shirt(number)))),
            "server"
        );
        self
    }

    /// Who stands on court, place 1 first.
    #[track_caller]
    pub fn stand(&mut self, team: Team, numbers: &[u16]) -> &mut Story {
        let play = self.timeline.state().shown().expect("somebody on court");
        let there: Vec<u16> = play.sides[team].on_court().map(|s| s.0).collect();
        assert_eq!(there, numbers, "on court of {team}");
        self
    }

    /// Finished sets.
    #[track_caller]
    pub fn sets(&mut self, scores: &[(u16, u16)]) -> &mut Story {
        let sets: Vec<(u16, u16)> = self
            .timeline
            .state()
            .sets()
            .map(|s| (s.score.a, s.score.b))
            .collect();
        assert_eq!(sets, scores, "sets");
        self
    }

    /// The match is over and this team has won it.
    #[track_caller]
    pub fn won_by(&mut self, team: Option<Team>) -> &mut Story {
        self.phase(Phase::Finished);
        assert_eq!(self.timeline.state().winner(), team, "winner");
        self
    }

    /// Where the match stands.
    #[track_caller]
    pub fn phase(&mut self, phase: Phase) -> &mut Story {
        assert_eq!(self.timeline.state().phase(), phase);
        self
    }

    /// Regular and exceptional substitutions of the set.
    #[track_caller]
    pub fn substitutions(&mut self, team: Team, regular: u8, exceptional: u8) -> &mut Story {
        let play = self.timeline.state().shown().expect("a set");
        let side = &play.sides[team];
        assert_eq!(
            (side.substitutions, side.exceptional),
            (regular, exceptional),
            "regular and exceptional substitutions of {team}"
        );
        self
    }

    /// Time-outs of the set.
    #[track_caller]
    pub fn time_outs(&mut self, team: Team, taken: u8) -> &mut Story {
        let play = self.timeline.state().shown().expect("a set");
        assert_eq!(play.sides[team].time_outs, taken, "time-outs of {team}");
        self
    }

    /// The sanctions box: set, team, kind, score before.
    #[track_caller]
    pub fn sanctions(&mut self, box_: &[(u8, Team, &str, (u16, u16))]) -> &mut Story {
        let have: Vec<_> = self
            .timeline
            .state()
            .sanctions()
            .iter()
            .map(|s| (s.set, s.team, s.kind.code(), (s.score.a, s.score.b)))
            .collect();
        assert_eq!(have, box_, "sanctions");
        self
    }

    /// A notice must stand.
    #[track_caller]
    pub fn notices(&mut self, notice: &Notice) -> &mut Story {
        let all = notices(self.timeline.state());
        assert!(all.contains(notice), "{notice:?} is missing: {all:?}");
        self
    }

    /// No notice of that code may stand.
    #[track_caller]
    pub fn without(&mut self, code: &str) -> &mut Story {
        let all = notices(self.timeline.state());
        assert!(all.iter().all(|n| n.code() != code), "{code} in {all:?}");
        self
    }
}

/// The whole numbers in a text, in order.
fn numbers_in(text: &str) -> Vec<u64> {
    text.split(|c: char| !c.is_ascii_digit())
        .filter_map(|digits| digits.parse().ok())
        .collect()
}

/// The sentence for a refusal names every number that the refusal carries, ends like a sentence and
/// shows nothing of the program's inside.
#[track_caller]
pub fn names_its_numbers(why: &Refusal, sentence: &str) {
    let named = numbers_in(sentence);
    let mut carried = numbers_in(&format!("{why:?}"));
    if matches!(why, Refusal::TooManyLiberos { most: 0, .. }) {
        // "Without a libero" says it better than a nought.
        carried.clear();
    }
    for number in carried {
        assert!(
            named.contains(&number),
            "{number} of {why:?} is missing in: {sentence}"
        );
    }
    assert!(sentence.ends_with('.'), "no sentence: {sentence}");
    assert!(
        !sentence.contains(['{', '}', '(', '_']),
        "inside shows: {sentence}"
    );
}

/// The first official to decide, the letters, the numbers: entries in short.
pub fn toss(first_service: Team, left: Team) -> Kind {
    Kind::Toss(Toss::new(first_service, left))
}

pub fn time_out(team: Team) -> Kind {
    Kind::TimeOut { team }
}

fn changes(pairs: &[(u16, u16)]) -> Vec<Change> {
    pairs.iter().map(|&(out, into)| change(out, into)).collect()
}

pub fn change(out: u16, into: u16) -> Change {
    Change {
        out: Shirt(out),
        into: Shirt(into),
    }
}

/// A request: who goes, who comes.
pub fn substitution(team: Team, pairs: &[(u16, u16)]) -> Kind {
    Kind::Substitution {
        team,
        changes: changes(pairs),
        reason: None,
    }
}

/// A substitution that something forces.
pub fn forced(team: Team, out: u16, into: u16, reason: Forced) -> Kind {
    Kind::Substitution {
        team,
        changes: changes(&[(out, into)]),
        reason: Some(reason),
    }
}

pub fn libero(team: Team, out: u16, into: u16) -> Kind {
    Kind::LiberoReplacement {
        team,
        change: change(out, into),
    }
}

pub fn new_libero(team: Team, replaces: &[u16], number: u16, why: LiberoWhy) -> Kind {
    Kind::NewLibero {
        team,
        replaces: replaces.iter().map(|&n| Shirt(n)).collect(),
        number: Shirt(number),
        why: Some(why),
    }
}

pub fn improper(team: Team) -> Kind {
    Kind::ImproperRequest { team }
}

pub fn delay(team: Team) -> Kind {
    Kind::Delay {
        team,
        request: false,
    }
}

/// A delay that came from a rejected request.
pub fn rejected(team: Team) -> Kind {
    Kind::Delay {
        team,
        request: true,
    }
}

pub fn player(number: u16) -> Who {
    Who::Player(Shirt(number))
}

pub fn coach() -> Who {
    Who::Staff("coach".to_owned())
}

pub fn card(team: Team, who: Who, sanction: Level) -> Kind {
    Kind::Misconduct {
        team,
        who,
        sanction,
    }
}

pub fn stopped(why: ReplayWhy) -> Kind {
    Kind::Replay {
        why,
        hurt: None,
        rally: None,
    }
}

pub fn hurt(team: Team, number: u16) -> Kind {
    let number = Some(Shirt(number));
    Kind::Replay {
        why: ReplayWhy::Injury,
        hurt: Some(By { team, number }),
        rally: None,
    }
}

/// The last rally was entered as a point and is played again.
pub fn played_again(why: ReplayWhy, rally: u32) -> Kind {
    Kind::Replay {
        why,
        hurt: None,
        rally: Some(rally),
    }
}

pub fn since(a: u16, b: u16) -> Option<Since> {
    Some(Since {
        score: Score { a, b },
        set: None,
    })
}

pub fn since_in(set: u8, a: u16, b: u16) -> Option<Since> {
    Some(Since {
        score: Score { a, b },
        set: Some(set),
    })
}

pub fn late(team: Team, fault: Fault, since: Option<Since>, during: Found) -> Kind {
    Kind::LateFault(LateFault {
        team,
        fault,
        since,
        during,
        positions: None,
    })
}

/// The same with the right places of the team.
pub fn put_right(
    team: Team,
    fault: Fault,
    since: Option<Since>,
    during: Found,
    places: &[u16],
) -> Kind {
    Kind::LateFault(LateFault {
        team,
        fault,
        since,
        during,
        positions: Some(places.iter().map(|&n| Shirt(n)).collect()),
    })
}

pub fn recovery(team: Team, number: u16) -> Kind {
    Kind::Recovery {
        team,
        number: Shirt(number),
    }
}

pub fn incomplete(team: Team, scope: Scope) -> Kind {
    Kind::Incomplete { team, scope }
}

pub fn suspend() -> Kind {
    Kind::Suspend {
        why: "lights out".to_owned(),
    }
}

pub fn resume(court: Court) -> Kind {
    Kind::Resume { court }
}

pub fn explain(entry: u32, cause: Cause) -> Kind {
    Kind::Explain {
        entry,
        cause,
        by: None,
        seen_by: None,
    }
}

pub fn strike(entry: u32) -> Kind {
    Kind::Strike { entry, why: None }
}

pub fn answer(entry: u32, choice: &str) -> Kind {
    Kind::Answer {
        entry,
        choice: choice.to_owned(),
    }
}
