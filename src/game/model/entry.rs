//! One entry of a log: what an official saw or decided. Nothing in it is a result.

use std::ops::{Index, IndexMut};
use std::sync::Arc;

use super::count_down::Timed;
use super::joined::Joined;
use rules::{ByTeam, Cause, Rules, Score, Shirt, Team};

/// One entry of the log.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// Its number in the log, from 1.
    pub n: u32,
    /// When it was made, milliseconds since 1970 UTC.
    pub at: Option<i64>,
    /// Why the official decided against the advice of the rules, where he or she did.
    pub insist: Option<String>,
    /// What was seen or decided.
    pub kind: Kind,
    /// The text that it was first written as, where that is not what this program writes. A chain and a
    /// seal are made of it, so that neither hangs on a release; the game never looks at it.
    pub written: Option<Arc<str>>,
    /// The link that a file gave it, where that does not follow from what stands before it: it or something
    /// before it was changed. It is carried along, so that this stays known; the game never looks at it.
    pub given_link: Option<Arc<str>>,
}

impl Entry {
    /// An entry without a time and without insisting.
    #[must_use]
    pub fn new(n: u32, kind: Kind) -> Entry {
        Entry {
            n,
            at: None,
            insist: None,
            kind,
            written: None,
            given_link: None,
        }
    }
}

/// What was seen or decided.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Kind {
    /// The match is opened; always entry 1.
    Match(Box<Heading>),
    /// Parts of the heading that were left for later, or were wrong.
    Heading(Box<Amendment>),
    /// A team's list.
    TeamList(TeamList),
    /// A check before the match was done, or failed.
    Check(Check),
    /// The outcome of the toss.
    Toss(Toss),
    /// Who serves first in the set to come and who stands on the left, as seen on court: no toss is in this
    /// record, as where a tally grows into a match.
    FirstService {
        /// Who serves first.
        team: Team,
        /// Who stands on the left, seen from the stand.
        left: Team,
    },
    /// Sets and score as they stood when somebody began to keep this record.
    Joined(Joined),
    /// A score that was miscounted is put right.
    ScoreCorrection {
        /// The right score of the running set.
        score: Score,
        /// Who serves next, where that was wrong too.
        serving: Option<Team>,
        /// Why.
        why: String,
    },
    /// The officials gave wrong information: play goes back to the score at which they did
    /// (FIVB Casebook 2024, case 2.3).
    WrongInformation {
        /// The score at that moment.
        score: Score,
        /// What was said wrongly.
        why: String,
    },
    /// Players on court differ from the line-up, found before the set begins (7.3.5.1, 7.3.5.2).
    Discrepancy {
        /// Whose.
        team: Team,
        /// Who is in the line-up, and who stands there instead; none where only places were mixed up.
        changes: Vec<Change>,
        /// The coach keeps them by a regular substitution (7.3.5.2); else they are put right.
        kept: bool,
    },
    /// The libero replacement just made came after the whistle for service and before the hit
    /// (19.3.2.5, 19.3.2.6).
    LateReplacement {
        /// Whose.
        team: Team,
    },
    /// The organiser's clock ends the set, where a competition plays by time.
    TimeUp,
    /// A team's line-up for the next set, place 1 first.
    LineUp {
        /// Whose.
        team: Team,
        /// Shirts from place 1 on.
        positions: Vec<Shirt>,
    },
    /// The first service of the set is authorised.
    BeginSet,
    /// A completed rally.
    Rally {
        /// Who gets the point and the next service.
        won_by: Team,
        /// Why it ended, where it was said at once.
        cause: Option<Cause>,
        /// Who did it.
        by: Option<By>,
    },
    /// Gives or corrects the cause of a rally; the score is untouched.
    Explain {
        /// The rally's entry.
        entry: u32,
        /// Why it ended.
        cause: Cause,
        /// Who did it.
        by: Option<By>,
        /// Who of the other officials showed it; none where the first referee saw it, or nobody said.
        seen_by: Option<SeenBy>,
    },
    /// A rally that does not count: no point, same server.
    Replay {
        /// What stopped it.
        why: ReplayWhy,
        /// Who was hurt.
        hurt: Option<By>,
        /// The rally that was entered as a point and is played again: it counts no more. None where no
        /// point was entered.
        rally: Option<u32>,
    },
    /// A time-out.
    TimeOut {
        /// Whose.
        team: Team,
    },
    /// One request for substitution.
    Substitution {
        /// Whose.
        team: Team,
        /// Who goes and who comes.
        changes: Vec<Change>,
        /// What forces it, where something does.
        reason: Option<Forced>,
    },
    /// A libero comes in, goes out, or gives way to the other libero.
    LiberoReplacement {
        /// Whose.
        team: Team,
        /// Who goes, who comes.
        change: Change,
    },
    /// A new libero is named.
    NewLibero {
        /// Whose.
        team: Team,
        /// The liberos who play no more.
        replaces: Vec<Shirt>,
        /// The new one.
        number: Shirt,
        /// Why, where it was said.
        why: Option<LiberoWhy>,
    },
    /// A request that could not be granted and held nobody up.
    ImproperRequest {
        /// Whose.
        team: Team,
    },
    /// A delay.
    Delay {
        /// Whose.
        team: Team,
        /// Whether it came from a rejected request.
        request: bool,
    },
    /// Misconduct was sanctioned.
    Misconduct {
        /// Whose.
        team: Team,
        /// The person.
        who: Who,
        /// The level.
        sanction: Level,
    },
    /// A fault found late.
    LateFault(LateFault),
    /// Three minutes for an injured player who cannot be replaced.
    Recovery {
        /// Whose.
        team: Team,
        /// The player.
        number: Shirt,
    },
    /// A team is incomplete.
    Incomplete {
        /// Which.
        team: Team,
        /// For the set or the match.
        scope: Scope,
    },
    /// A team does not appear or refuses to play.
    Default {
        /// Which.
        team: Team,
    },
    /// The teams have changed courts in the deciding set.
    ChangeCourts,
    /// Play is interrupted.
    Suspend {
        /// Why.
        why: String,
    },
    /// Play goes on.
    Resume {
        /// Where.
        court: Court,
    },
    /// A count-down was started or stopped.
    Timer(Timer),
    /// A remark.
    Remark {
        /// The words.
        text: String,
        /// A team it is about.
        team: Option<Team>,
    },
    /// A player is named who speaks for the team while its captain is not on court (5.1.2).
    GameCaptain {
        /// Whose.
        team: Team,
        /// The player.
        number: Shirt,
    },
    /// A protest is announced.
    Protest {
        /// Whose.
        team: Team,
        /// Who announced it, where it was said; else whoever speaks for the team.
        number: Option<Shirt>,
        /// What was announced; may be empty.
        text: String,
    },
    /// A protest is written on the sheet.
    ProtestStatement {
        /// Which.
        about: Protested,
        /// The words.
        text: String,
    },
    /// A signature.
    Sign {
        /// Whose: captain, coach, scorer, referee.
        role: String,
        /// The name.
        name: Option<String>,
    },
    /// Takes an entry back.
    Strike {
        /// Which.
        entry: u32,
        /// Why.
        why: Option<String>,
    },
    /// Answers a question that the rules leave open.
    Answer {
        /// The entry that raised it.
        entry: u32,
        /// The code of the choice.
        choice: String,
    },
    /// Closes the record: nothing is taken up after it but a reopening.
    Seal {
        /// The check code of everything before it; the game does not know how it is made.
        code: String,
    },
    /// Opens a sealed record again; stands on the sheet.
    Reopen {
        /// Why.
        why: Option<String>,
    },
}

/// The heading of a match.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Heading {
    /// What is known of it beside names and rules.
    pub details: Details,
    /// Names of the teams; may be empty.
    pub names: ByTeam<String>,
    /// What it is played by.
    pub rules: Rules,
}

impl Heading {
    /// A heading with names and rules, everything else left for later.
    #[must_use]
    pub fn new(names: ByTeam<String>, rules: Rules) -> Heading {
        Heading {
            details: Details::default(),
            names,
            rules,
        }
    }
}

/// Something that is known of a match and is neither a name nor a rule.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Detail {
    /// Competition.
    Competition,
    /// Division.
    Division,
    /// Hall.
    Venue,
    /// Court in the hall.
    Court,
    /// Number of the match.
    MatchNo,
    /// Scheduled start as it was written, by custom `2026-05-09T14:00`.
    Scheduled,
}

// In the order of a record.
rules::codes!(Detail {
    Competition = "competition",
    Division = "division",
    Venue = "venue",
    Court = "court",
    MatchNo = "match_no",
    Scheduled = "scheduled",
});

/// The details of a match, each where it is given.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Details([Option<String>; Detail::ALL.len()]);

impl Index<Detail> for Details {
    type Output = Option<String>;
    fn index(&self, detail: Detail) -> &Option<String> {
        &self.0[detail as usize]
    }
}

impl IndexMut<Detail> for Details {
    fn index_mut(&mut self, detail: Detail) -> &mut Option<String> {
        &mut self.0[detail as usize]
    }
}

/// Parts of the heading, given later; what is left out stays as it is.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Amendment {
    /// Details; one that is given as an empty text is taken away.
    pub details: Details,
    /// Names of the teams.
    pub names: ByTeam<Option<String>>,
    /// What it is played by from now on: before the match, or where a tally grows into a match.
    pub rules: Option<Rules>,
}

impl Amendment {
    /// What makes one heading into another; none where they say the same.
    #[must_use]
    pub fn between(was: &Heading, is: &Heading) -> Option<Amendment> {
        let mut given = Amendment {
            names: ByTeam::new(|team| {
                (was.names[team] != is.names[team]).then(|| is.names[team].clone())
            }),
            rules: (was.rules != is.rules).then_some(is.rules),
            ..Amendment::default()
        };
        for detail in Detail::ALL {
            // What was taken away and what was never given are both empty on the sheet.
            let [was, is] = [was, is].map(|h| h.details[detail].as_deref().unwrap_or_default());
            given.details[detail] = (was != is).then(|| is.to_owned());
        }
        (given != Amendment::default()).then_some(given)
    }
}

/// A team's list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TeamList {
    /// Whose.
    pub team: Team,
    /// Players.
    pub players: Vec<Player>,
    /// Coach, assistants and others on the bench.
    pub staff: Vec<Staff>,
}

impl TeamList {
    /// The player of that number.
    #[must_use]
    pub fn player(&self, number: Shirt) -> Option<&Player> {
        self.players.iter().find(|p| p.number == number)
    }
}

/// A player on the list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Player {
    /// Shirt number.
    pub number: Shirt,
    /// Name, where it was given.
    pub name: Option<String>,
    /// Whether this is the team captain.
    pub captain: bool,
    /// Whether this is a libero.
    pub libero: bool,
}

/// A member of the staff.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Staff {
    /// Coach, assistant coach, therapist, doctor.
    pub role: String,
    /// Name, where it was given.
    pub name: Option<String>,
}

/// A check before the match.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Check {
    /// What was checked.
    pub item: String,
    /// Whether it was in order.
    pub ok: bool,
    /// What was found, or who cleared it.
    pub note: Option<String>,
}

/// The outcome of a toss.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Toss {
    /// Who serves first.
    pub first_service: Team,
    /// Who starts on the left, seen from the stand.
    pub left: Team,
    /// Who won it and what about that captain chose, where it was noted.
    pub won: Option<Won>,
}

impl Toss {
    /// An outcome of which is not noted who chose it.
    #[must_use]
    pub const fn new(first_service: Team, left: Team) -> Toss {
        Toss {
            first_service,
            left,
            won: None,
        }
    }
}

/// Who won a toss, and about which of the two things that captain chose; the other captain had the
/// other (7.1.2). What was chosen follows from the outcome.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Won {
    /// The team.
    pub by: Team,
    /// What its captain chose about.
    pub chose: About,
}

/// What can be chosen about after a toss (7.1.2).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum About {
    /// To serve or to receive.
    Service,
    /// The side of the court.
    Side,
}

rules::codes!(About {
    Service = "service",
    Side = "side",
});

/// An official who showed the first referee why a rally ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum SeenBy {
    /// By whistle or by a sign (FIVB Official Volleyball Rules 2025-2028, 24.2.2 and 24.3.2).
    SecondReferee,
    /// By a signal with the flag (29.2.1).
    LineJudge,
    /// From the table: the order of service (27.2.2).
    Scorer,
}

rules::codes!(SeenBy {
    SecondReferee = "second_referee",
    LineJudge = "line_judge",
    Scorer = "scorer",
});

/// A person of a team, as far as said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct By {
    /// The team.
    pub team: Team,
    /// The shirt.
    pub number: Option<Shirt>,
}

/// Who goes and who comes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Change {
    /// Leaves the court.
    pub out: Shirt,
    /// Enters it.
    pub into: Shirt,
}

/// What stopped a rally that does not count.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ReplayWhy {
    /// Both teams at the same time.
    DoubleFault,
    /// Something or somebody from outside.
    Interference,
    /// Somebody was hurt.
    Injury,
    /// Anything else.
    Other,
}

rules::codes!(ReplayWhy {
    DoubleFault = "double_fault",
    Interference = "interference",
    Injury = "injury",
    Other = "other",
});

/// What forces a substitution.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Forced {
    /// The player is hurt or ill.
    Injury,
    /// The player was expelled.
    Expelled,
    /// The player was disqualified.
    Disqualified,
}

rules::codes!(Forced {
    Injury = "injury",
    Expelled = "expelled",
    Disqualified = "disqualified",
});

/// Why a new libero is named.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LiberoWhy {
    /// The old one cannot go on.
    Unable,
    /// The coach has declared it.
    Declared,
}

rules::codes!(LiberoWhy {
    Unable = "unable",
    Declared = "declared",
});

/// A person who can be sanctioned.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Who {
    /// A player.
    Player(Shirt),
    /// Somebody of the staff, by role.
    Staff(String),
}

impl Who {
    /// Whether both name one person of a team: a role is the same whatever the case and spacing it was
    /// written in, so that nobody's ladder begins anew with a capital letter (21.4.2).
    #[must_use]
    pub fn is_same(&self, other: &Who) -> bool {
        let letters = |role: &str| {
            role.chars()
                .filter(|c| !c.is_whitespace())
                .flat_map(char::to_lowercase)
                .collect::<String>()
        };
        match (self, other) {
            (Who::Player(one), Who::Player(two)) => one == two,
            (Who::Staff(one), Who::Staff(two)) => letters(one) == letters(two),
            (Who::Player(_), Who::Staff(_)) | (Who::Staff(_), Who::Player(_)) => false,
        }
    }
}

/// The levels of a misconduct sanction, the lightest first
/// (Official Volleyball Rules 2025-2028, 21.1 and 21.3).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    /// Yellow card.
    Warning,
    /// Red card.
    Penalty,
    /// Both in one hand: out for the set.
    Expulsion,
    /// One in each hand: out for the match.
    Disqualification,
}

rules::codes!(Level {
    Warning = "warning",
    Penalty = "penalty",
    Expulsion = "expulsion",
    Disqualification = "disqualification",
});

/// A fault found late.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LateFault {
    /// Whose.
    pub team: Team,
    /// Which.
    pub fault: Fault,
    /// The score when it began; none where nobody knows.
    pub since: Option<Since>,
    /// When it was found.
    pub during: Found,
    /// The right places of that team now, place 1 first.
    pub positions: Option<Vec<Shirt>>,
}

/// Faults that are found late.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// Wrong server.
    Rotation,
    /// A substitution against the rules.
    IllegalSubstitution,
    /// A libero replacement against the rules.
    IllegalLibero,
    /// A player on court who is not in the line-up.
    WrongLineUp,
    /// A player who is not on the team list.
    UnregisteredPlayer,
}

rules::codes!(Fault {
    Rotation = "rotation",
    WrongLineUp = "wrong_line_up",
    IllegalSubstitution = "illegal_substitution",
    IllegalLibero = "illegal_libero",
    UnregisteredPlayer = "unregistered_player",
});

impl Fault {
    /// Whether the rules of a match know it. Without line-ups and lists nobody can have been against them,
    /// and without a libero none is replaced.
    #[must_use]
    pub const fn occurs_under(self, rules: &Rules) -> bool {
        match self {
            Fault::Rotation | Fault::IllegalSubstitution => true,
            Fault::WrongLineUp | Fault::UnregisteredPlayer => rules.line_ups,
            Fault::IllegalLibero => rules.liberos > 0,
        }
    }
}

/// A moment of the match by its score.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Since {
    /// The score.
    pub score: Score,
    /// The set; none: the present one.
    pub set: Option<u8>,
}

/// When a fault was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Found {
    /// Play was stopped for it.
    Rally,
    /// The rally had ended.
    AfterRally,
}

rules::codes!(Found {
    Rally = "rally",
    AfterRally = "after_rally",
});

/// Which protest is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Protested {
    /// The one that this entry announced.
    Entry(u32),
    /// One that nobody has announced, of this team.
    Unannounced(Team),
}

/// What an incomplete team loses.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Scope {
    /// The set.
    Set,
    /// The match.
    Match,
}

rules::codes!(Scope {
    Set = "set",
    Match = "match",
});

/// Where play goes on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Court {
    /// On the same court.
    Same,
    /// On another one.
    Other,
}

rules::codes!(Court {
    Same = "same",
    Other = "other",
});

/// A count-down.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Timer {
    /// What is timed.
    pub what: Timed,
    /// For whom.
    pub team: Option<Team>,
    /// How long.
    pub seconds: u32,
    /// Started or stopped.
    pub action: TimerAction,
}

impl Timer {
    /// The end of this one.
    #[must_use]
    pub fn stopped(&self) -> Timer {
        Timer {
            action: TimerAction::Stop,
            ..self.clone()
        }
    }
}

/// What happened to a count-down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TimerAction {
    /// It starts.
    Start,
    /// It stops.
    Stop,
}

rules::codes!(TimerAction {
    Start = "start",
    Stop = "stop",
});

#[cfg(test)]
mod tests {
    use super::*;
    use rules::Preset;

    #[test]
    fn an_amendment_is_what_makes_one_heading_into_the_other() {
        let names = ByTeam {
            a: "Otters".to_owned(),
            b: String::new(),
        };
        let was = Heading {
            names,
            ..Heading::new(ByTeam::default(), Preset::SchoolJunior.rules())
        };
        assert_eq!(Amendment::between(&was, &was), None);
        let mut is = was.clone();
        is.details[Detail::Venue] = Some("North hall".to_owned());
        is.names[Team::B] = "Herons".to_owned();
        let given = Amendment::between(&was, &is).expect("two things were added");
        assert_eq!(given.details[Detail::Venue].as_deref(), Some("North hall"));
        assert_eq!(given.details[Detail::Court], None);
        assert_eq!((&given.names.a, given.rules), (&None, None));
        assert_eq!(given.names.b.as_deref(), Some("Herons"));
        // A detail that is taken away is given as an empty text, and once is enough.
        let gone = Amendment::between(&is, &was).expect("two things were taken away");
        assert_eq!(gone.details[Detail::Venue].as_deref(), Some(""));
        let mut empty = was.clone();
        empty.details[Detail::Venue] = Some(String::new());
        assert_eq!(Amendment::between(&empty, &was), None);
    }
}
