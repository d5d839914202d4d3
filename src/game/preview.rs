//! What an entry would become, before it is made: the entry is carried out on a copy of the state, and
//! what it changed there is read off. Nothing here knows a rule of its own but the behaviours of
//! chapter 21.

use crate::model::entry::{Change, Entry, Forced, Kind, Level, Who};
use crate::model::sanction::{Sanction, SanctionKind};
use crate::model::state::State;
use crate::model::team_state::Barred;
use crate::play::substitution;
use crate::reducer::{apply, check};
use crate::Refusal;
use rules::{Shirt, Team};

/// The number of the previewed entry: no entry of a log has it.
const PREVIEWED: u32 = u32::MAX;

/// What a request that is not granted, a delay or misconduct becomes.
///
/// ```
/// use game::{preview_sanction, Kind, SanctionKind, State};
/// use rules::Team;
/// # use game::{entry::Heading, Entry, Timeline};
/// # use rules::{ByTeam, Preset};
/// # let heading = Heading::new(ByTeam::default(), Preset::International.rules());
/// # let timeline = Timeline::of(vec![Entry::new(1, Kind::Match(Box::new(heading)))]);
/// # let state: &State = timeline.state();
/// let delay = Kind::Delay { team: Team::A, request: false };
/// let preview = preview_sanction(state, &delay).expect("a delay is taken").expect("it is sanctioned");
/// assert_eq!(preview.sanction.kind, SanctionKind::DelayWarning);
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SanctionPreview {
    /// The line of the sanctions box.
    pub sanction: Sanction,
    /// Who gets a point and the service for it, where anybody does.
    pub point: Option<Team>,
    /// Whether it takes effect only when the coming set begins (16.2.4, 21.5).
    pub in_coming_set: bool,
    /// Whether the team may ask for nothing more until a completed rally (15.2.4).
    pub barred: bool,
    /// The player on court who has to be substituted at once (15.8).
    pub must_leave: Option<Shirt>,
    /// The lightest sanction that is left for the same person afterwards (21.4.2); for a delay, what the
    /// next delay of the team becomes (16.2).
    pub next: Option<SanctionKind>,
}

/// How long somebody stays away.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Absence {
    /// For the rest of the set, after an expulsion (21.3.2.1).
    Set,
    /// For the rest of the match, after a disqualification (21.3.3.1).
    Match,
}

/// One thing that a sanction means for the team or the person, beside the point that it may cost.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SanctionEffect {
    /// The team may ask for nothing more until the next rally is over (15.2.4).
    NoMoreRequests,
    /// The team has no other warning in this match: from now on minor misconduct is a penalty (21.1).
    OnlyWarning,
    /// A player on court is substituted at once (15.8).
    SubstitutedAtOnce(Shirt),
    /// The person goes to the team's dressing room (21.3.2.1, 21.3.3.1).
    Leaves(Absence),
    /// When the person may come back, and for a coach who may lead the team meanwhile (5.3.2).
    Returns(Absence),
    /// The lightest sanction that comes next: for the person, the delays or the requests of the team.
    Next(SanctionKind),
    /// The card is shown when the coming set begins (21.5).
    CardShownIn(u8),
    /// The coach is told at once, and the cards are shown when the coming set begins (21.5; Refereeing
    /// Guidelines 2024, rule 21).
    CoachToldCardsShownIn(u8),
}

impl SanctionPreview {
    /// What it means for the team or the person, in the order in which it is said.
    #[must_use]
    pub fn effects(&self) -> Vec<SanctionEffect> {
        let mut effects = Vec::new();
        if self.barred {
            effects.push(SanctionEffect::NoMoreRequests);
        }
        let next = self.next.map(SanctionEffect::Next);
        match (self.sanction.kind, &self.sanction.who) {
            (SanctionKind::Misconduct(level), Some(_)) => {
                self.for_person(level, next, &mut effects)
            }
            _ => effects.extend(next),
        }
        effects
    }

    fn for_person(
        &self,
        level: Level,
        next: Option<SanctionEffect>,
        effects: &mut Vec<SanctionEffect>,
    ) {
        let leaves = match level {
            Level::Warning | Level::Penalty => None,
            Level::Expulsion => Some(Absence::Set),
            Level::Disqualification => Some(Absence::Match),
        };
        if level == Level::Warning {
            effects.push(SanctionEffect::OnlyWarning);
        } else {
            if let Some(absence) = leaves {
                effects.extend(self.must_leave.map(SanctionEffect::SubstitutedAtOnce));
                effects.push(SanctionEffect::Leaves(absence));
                effects.push(SanctionEffect::Returns(absence));
            }
            effects.extend(next);
        }
        if self.in_coming_set {
            let set = self.sanction.set;
            effects.push(match leaves {
                None => SanctionEffect::CardShownIn(set),
                Some(_) => SanctionEffect::CoachToldCardsShownIn(set),
            });
        }
    }
}

/// What an entry becomes in the sanctions box; none where it leaves no line there.
///
/// # Errors
/// Why it would be refused.
pub fn preview_sanction(state: &State, kind: &Kind) -> Result<Option<SanctionPreview>, Refusal> {
    let entry = Entry::new(PREVIEWED, kind.clone());
    check(state, &entry)?;
    let after = apply(state, &entry)?;
    let line = after.sanctions().iter().rfind(|s| s.entry == PREVIEWED);
    Ok(line.map(|line| read_off(state, &after, line.clone())))
}

fn read_off(before: &State, after: &State, sanction: Sanction) -> SanctionPreview {
    let team = sanction.team;
    let costs_a_point = matches!(
        sanction.kind,
        SanctionKind::DelayPenalty | SanctionKind::Misconduct(Level::Penalty)
    );
    let is_barred = |state: &State| match state.on_floor() {
        Some(play) => play.sides[team].barred,
        None => state.coming().is_some_and(|coming| coming.barred[team]),
    };
    let must_leave = match (&sanction.who, after.shown()) {
        (Some(Who::Player(number)), Some(play)) if before.on_floor().is_some() => play.sides[team]
            .holds(*number)
            .then_some(*number)
            .filter(|number| after.team(team).barred(*number, play.number).is_some()),
        _ => None,
    };
    let next = match (sanction.kind, &sanction.who) {
        // The further improper request of a team is a delay, and so is every delay after it.
        (SanctionKind::ImproperRequest, _) => Some(next_delay(after, team)),
        (SanctionKind::DelayWarning | SanctionKind::DelayPenalty, _) => {
            Some(SanctionKind::DelayPenalty)
        }
        (SanctionKind::Misconduct(_), Some(who)) => {
            level_for(after, team, who, Conduct::Minor).map(SanctionKind::Misconduct)
        }
        (SanctionKind::Misconduct(_), None) => None,
    };
    SanctionPreview {
        point: costs_a_point.then_some(team.other()),
        in_coming_set: before.play().is_none(),
        barred: is_barred(after) && !is_barred(before),
        must_leave,
        next,
        sanction,
    }
}

fn next_delay(state: &State, team: Team) -> SanctionKind {
    if state.team(team).delays == 0 {
        SanctionKind::DelayWarning
    } else {
        SanctionKind::DelayPenalty
    }
}

/// What a member of a team does, in the words of the rules (21.1, 21.2).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Conduct {
    /// Minor misconduct (21.1).
    Minor,
    /// Against good manners (21.2.1).
    Rude,
    /// Insult or contempt (21.2.2).
    Offensive,
    /// An attack, or the threat of one (21.2.3).
    Aggressive,
}

impl Conduct {
    /// All of them, the lightest first.
    pub const ALL: [Conduct; 4] = [
        Conduct::Minor,
        Conduct::Rude,
        Conduct::Offensive,
        Conduct::Aggressive,
    ];
}

/// The level that the rules name for what a person does, given what the person and the team have had
/// (21.1, 21.3, 21.4.2, diagram 9a); none where the person is disqualified already. The first referee
/// decides.
///
/// Minor misconduct after the yellow card, by whom of the team it is, is taken as a penalty; the text
/// does not spell out whose repetition counts.
#[must_use]
pub fn level_for(state: &State, team: Team, who: &Who, conduct: Conduct) -> Option<Level> {
    let side = state.team(team);
    let base = match conduct {
        Conduct::Minor if side.conduct.iter().any(|(_, l)| *l == Level::Warning) => Level::Penalty,
        Conduct::Minor => Level::Warning,
        Conduct::Rude => Level::Penalty,
        Conduct::Offensive => Level::Expulsion,
        Conduct::Aggressive => Level::Disqualification,
    };
    match side.heaviest(who) {
        None | Some(Level::Warning) => Some(base),
        Some(had) => {
            let heavier = Level::ALL.into_iter().find(|level| *level > had)?;
            Some(base.max(heavier))
        }
    }
}

/// Whether whoever goes out may come back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MayReturn {
    /// In this set, by a regular substitution.
    ThisSet,
    /// In the next set.
    NextSet,
    /// In this match no more.
    Never,
}

/// What a substitution would be, and what it means for whoever goes out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SubstitutionPreview {
    /// An exceptional one (15.7); it does not count among those of the set.
    pub exceptional: bool,
    /// Whether the player may come back.
    pub may_return: MayReturn,
}

/// What one change would be; none where it would be refused, or where nobody follows the places.
#[must_use]
pub fn preview_substitution(
    state: &State,
    team: Team,
    change: Change,
    reason: Option<Forced>,
) -> Option<SubstitutionPreview> {
    let kind = Kind::Substitution {
        team,
        changes: vec![change],
        reason,
    };
    let entry = Entry::new(PREVIEWED, kind);
    check(state, &entry).ok()?;
    let after = apply(state, &entry).ok()?;
    let (was, is) = (state.on_floor()?, after.on_floor()?);
    if !is.follows_places(team) {
        return None;
    }
    let may_return = match after.team(team).barred(change.out, is.number) {
        Some(Barred::Out(_)) => MayReturn::Never,
        Some(Barred::Expelled) => MayReturn::NextSet,
        None if substitution::may_come_back(&after, is, team, change) => MayReturn::ThisSet,
        None => MayReturn::NextSet,
    };
    Some(SubstitutionPreview {
        exceptional: is.sides[team].exceptional > was.sides[team].exceptional,
        may_return,
    })
}
