//! Drawing a scene from a seed.

use super::judge::{judge, Judged, Verdict};
use super::kind::{Band, Case, Kind};
use super::sound::{unsound, Unsound};
use super::stage::Stage;
use super::{at_the_net, attacks, cases, how_hits, landings, services, several, Act, Scene};
use crate::court::End;
use crate::ruling::{Call, Margin};
use fastrand::Rng;
use rules::{Cause, UnderNet};

/// How often a scene is drawn anew before one gives up. Our own choice: the hardest kind needs a few.
const MAX_TRIES: u32 = 400;

/// Nothing that is no fault is nearer than this, in metres, unless the scene is about it or the band is
/// narrower: our own choice, so that a clear scene is clear.
const ELSEWHERE: f64 = 0.12;

/// A scene with what is true of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawn {
    /// What was asked for.
    pub kind: Kind,
    /// The scene.
    pub scene: Scene,
    /// What is true of it.
    pub verdict: Verdict,
    /// Why others were thrown away before.
    pub thrown: Vec<Thrown>,
}

impl Drawn {
    /// What the scene is about: what decides it, or where play goes on what came nearest to ending it.
    #[must_use]
    pub fn about(&self) -> Option<&Judged> {
        shown(self.kind, &self.scene, &self.verdict)
    }
}

/// Why a scene was thrown away.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Thrown {
    /// It cannot have been.
    Unsound(Unsound),
    /// Something else is true of it than was wanted.
    OtherTruth,
    /// Its margin is outside the band.
    OutsideBand,
    /// Something else in it is nearer to the other answer.
    NearElsewhere,
}

/// Draws a scene of a kind whose margin lies in the band: the same for the same seed. None where that did not
/// come about in [`MAX_TRIES`] tries.
#[must_use]
pub fn draw(kind: Kind, band: Band, seed: u64) -> Option<Drawn> {
    let mut rng = Rng::with_seed(seed);
    let mut thrown = Vec::new();
    for _ in 0..MAX_TRIES {
        let margin = band.from + (band.to - band.from) * rng.f64();
        let scene = stage(kind, margin, rng.fork());
        let verdict = judge(&scene);
        match refused(kind, band, &scene, &verdict) {
            None => {
                return Some(Drawn {
                    kind,
                    scene,
                    verdict,
                    thrown,
                })
            }
            Some(why) => thrown.push(why),
        }
    }
    None
}

fn stage(kind: Kind, margin: f64, mut rng: Rng) -> Scene {
    let attacking = if rng.bool() { End::Left } else { End::Right };
    let mut stage = Stage::new(rng, attacking);
    match kind {
        Kind::Ends(cause) => of_cause(&mut stage, cause, true, margin),
        Kind::GoesOn(cause) => of_cause(&mut stage, cause, false, margin),
        Kind::CaseEnds(case) => of_case(&mut stage, case, true, margin),
        Kind::CaseGoesOn(case) => of_case(&mut stage, case, false, margin),
        Kind::DoubleFault => several::double_fault(&mut stage),
        Kind::FirstOfTwo => several::first_of_two(&mut stage, margin),
        Kind::ServerBeforeReceivers => several::server_before_receivers(&mut stage, margin),
        Kind::ReceiversBeforeService => several::receivers_before_service(&mut stage, margin),
        Kind::BeforeTheWhistle => several::before_the_whistle(&mut stage, margin),
    }
    stage.finish()
}

fn of_cause(stage: &mut Stage, cause: Cause, fault: bool, margin: f64) {
    match cause {
        Cause::BallIn => landings::ball_in(stage, fault, margin),
        Cause::BallOut => landings::ball_out(stage, fault, margin),
        Cause::BallTouched => landings::ball_touched(stage, fault, margin),
        Cause::Antenna => landings::antenna(stage, fault, margin),
        Cause::OutsideCrossing => landings::outside_crossing(stage, fault, margin),
        Cause::FourHits => how_hits::four_hits(stage, fault),
        Cause::DoubleContact => how_hits::double_contact(stage, fault),
        Cause::Catch => how_hits::catch(stage, fault),
        Cause::AssistedHit => how_hits::assisted(stage, fault),
        Cause::NetTouch => at_the_net::net_touch(stage, fault, margin),
        Cause::UnderNet => at_the_net::under_net(stage, fault, margin),
        Cause::OverNet => at_the_net::over_net(stage, fault, margin),
        Cause::AttackFault => attacks::back_row(stage, fault, margin),
        Cause::BlockFault => attacks::block_fault(stage, fault, margin),
        Cause::LiberoFault => attacks::libero(stage, fault, margin),
        Cause::ServiceTime => services::time(stage, fault, margin),
        Cause::ServiceFoot => services::foot(stage, fault, margin),
        Cause::ServiceToss => services::toss(stage, fault),
        Cause::ServiceNet => services::into_net(stage, fault),
        Cause::ServiceOut => services::out(stage, fault, margin),
        Cause::ServiceWinner => services::winner(stage, fault, margin),
        Cause::Screen => services::screened(stage, fault, margin),
        Cause::PositionFault => services::positions(stage, fault, margin),
        Cause::RotationFault => services::rotation(stage, fault),
        Cause::OutsideCourt => services::outside_court(stage, fault, margin),
        // No kind of scene is about nothing.
        Cause::NotSaid => {}
    }
}

fn of_case(stage: &mut Stage, case: Case, fault: bool, margin: f64) {
    match case {
        Case::ServiceBlock => cases::service_block(stage, fault),
        Case::Hindrance => cases::hindrance(stage, fault, margin),
        Case::JuniorUnderNet => cases::junior_under_net(stage, fault),
    }
}

/// Why a scene is not the one that was wanted; none where it is.
fn refused(kind: Kind, band: Band, scene: &Scene, verdict: &Verdict) -> Option<Thrown> {
    if let Some(why) = unsound(scene) {
        return Some(Thrown::Unsound(why));
    }
    let Some(about) = shown(kind, scene, verdict) else {
        return Some(Thrown::OtherTruth);
    };
    let inside = match kind {
        // How much earlier the first of two was, and how much too early a service.
        Kind::FirstOfTwo => verdict
            .ruling
            .margin
            .seconds()
            .is_some_and(|by| band.holds(by)),
        Kind::DoubleFault => true,
        Kind::Ends(_)
        | Kind::GoesOn(_)
        | Kind::CaseEnds(_)
        | Kind::CaseGoesOn(_)
        | Kind::ServerBeforeReceivers
        | Kind::ReceiversBeforeService
        | Kind::BeforeTheWhistle => match about.ruling.margin {
            Margin::Metres(by) | Margin::Seconds(by) => band.holds(by),
            Margin::Seen => true,
        },
    };
    if !inside {
        return Some(Thrown::OutsideBand);
    }
    // Who shows two things means both.
    let two = kind.cause().is_none();
    let near = |other: &&Judged| {
        let away = other.ruling.margin.metres();
        other.about != about.about && away.is_some_and(|by| by < ELSEWHERE.min(band.from))
    };
    if !two && verdict.all.iter().any(|other| near(&other)) {
        return Some(Thrown::NearElsewhere);
    }
    None
}

/// What shows in a scene that it is of the kind; none where it is of another.
fn shown<'a>(kind: Kind, scene: &Scene, verdict: &'a Verdict) -> Option<&'a Judged> {
    let decides = || verdict.decided_by();
    let ends = |cause: Cause| {
        decides().filter(|one| {
            one.about == cause
                && matches!(verdict.ruling.call, Call::Fault { cause: c, .. } if c == cause)
        })
    };
    let also = |cause: Cause| {
        let faults = verdict.all.iter().filter(|one| one.ruling.is_fault());
        faults.filter(|one| one.about == cause).count() > 0
    };
    let goes_on = |is: &dyn Fn(&Judged) -> bool| {
        let about = verdict.all.iter().filter(|one| is(one));
        let nearest = about.min_by(|a, b| distance(a).total_cmp(&distance(b)));
        nearest.filter(|_| verdict.ruling.call == Call::PlayOn)
    };
    match kind {
        Kind::Ends(cause) => ends(cause),
        Kind::GoesOn(cause) => goes_on(&|one| one.about == cause),
        Kind::CaseEnds(case) => ends(case.cause()).filter(|one| is_of(case, scene, one)),
        Kind::CaseGoesOn(case) => goes_on(&|one| is_of(case, scene, one)),
        Kind::DoubleFault => decides().filter(|_| verdict.ruling.rule == "6.1.2.2"),
        Kind::FirstOfTwo => decides().filter(|_| verdict.ruling.rule == "6.1.2.1"),
        Kind::ServerBeforeReceivers => {
            ends(Cause::ServiceFoot).filter(|_| also(Cause::PositionFault))
        }
        Kind::ReceiversBeforeService => {
            ends(Cause::PositionFault).filter(|_| also(Cause::ServiceOut))
        }
        Kind::BeforeTheWhistle => decides().filter(|_| verdict.ruling.rule == "12.4.5"),
    }
}

/// Whether what was judged is of the case, by its rule and by what the scene holds.
fn is_of(case: Case, scene: &Scene, one: &Judged) -> bool {
    let touches = || {
        let contact = |e: &super::Event| matches!(e.act, Act::Contact { .. });
        scene.events.iter().any(contact)
    };
    match case {
        Case::ServiceBlock => matches!(one.ruling.rule, "14.5" | "14.1.2"),
        Case::Hindrance => one.ruling.rule == "11.2.2.1" && touches(),
        Case::JuniorUnderNet => {
            scene.under_net == UnderNet::Junior && matches!(one.ruling.rule, "school" | "11.2.2.2")
        }
    }
}

/// How far the other answer is away, in whatever unit; what is only seen comes last.
fn distance(judged: &Judged) -> f64 {
    match judged.ruling.margin {
        Margin::Metres(by) | Margin::Seconds(by) => by,
        Margin::Seen => f64::INFINITY,
    }
}
