//! The moment of the service hit: the server, the positions, the screen.

use super::body::middle;
use super::judge::{cause_of, Judge, Judged, Rank};
use super::{Act, Player, Scene};
use crate::court::{End, Foot, Point};
use crate::positions::{inside_own_court, positions, Formation};
use crate::ruling::Call;
use crate::screen::{screen, Body, Screen};
use crate::service::{
    server_in_order, service_execution, service_foot, service_time, ServiceExecution,
};
use rules::Cause;

/// Half as wide as somebody who stands, in metres. Our own choice.
pub(super) const HALF_BODY: f64 = 0.25;

/// Asks everything that is decided about the moment of the hit.
pub(super) fn stands_at_the_hit(
    judge: &mut Judge<'_>,
    at: f64,
    server: usize,
    how: ServiceExecution,
) {
    let scene = judge.scene;
    let who = &scene.players[server];
    let note = |judge: &mut Judge<'_>, rank, at, moment, about, ruling, player| {
        judge.note(
            rank,
            Judged {
                at,
                moment,
                about: cause_of(ruling).unwrap_or(about),
                ruling,
                player: Some(player),
            },
        );
    };
    if let Some(whistle) = scene.events.iter().find(|e| e.act == Act::Whistle) {
        let ruling = service_time(who.side, at - whistle.at, scene.service_seconds);
        let over = match ruling.call {
            Call::Fault { .. } => whistle.at + scene.service_seconds,
            Call::PlayOn | Call::Replay => at,
        };
        let about = Cause::ServiceTime;
        note(judge, Rank::AtTheHit, over, over, about, ruling, server);
    }
    for (about, ruling) in [
        (Cause::ServiceFoot, service_foot(who.side, &who.planted(at))),
        (Cause::ServiceToss, service_execution(who.side, how)),
        (
            Cause::RotationFault,
            server_in_order(who.side, who.number, scene.due),
        ),
    ] {
        note(judge, Rank::AtTheHit, at, at, about, ruling, server);
    }
    for (index, player) in scene.players.iter().enumerate() {
        if index != server {
            let ruling = inside_own_court(player.side, &player.planted(at));
            let about = Cause::OutsideCourt;
            note(judge, Rank::Positions, at, at, about, ruling, index);
        }
    }
    for side in End::BOTH {
        if let Some(formation) = scene.formation(side, at) {
            let ruling = positions(side, &formation, side == who.side, scene.edition);
            let about = Cause::PositionFault;
            let player = scene.players.iter().position(|p| p.side == side);
            if side != who.side || ruling.is_fault() {
                let player = player.unwrap_or(server);
                note(judge, Rank::Positions, at, at, about, ruling, player);
            }
        }
    }
    screened(judge, at, server);
}

impl Scene {
    /// The feet of a team in the order of its positions, where they touch the floor or last touched it.
    #[must_use]
    pub fn formation(&self, side: End, at: f64) -> Option<Formation> {
        let feet = |position| Some(self.in_position(side, position)?.planted(at));
        let all: [Option<[Foot; 2]>; 6] = [1, 2, 3, 4, 5, 6].map(feet);
        let mut known = [all[0]?; 6];
        for (place, feet) in known.iter_mut().zip(all) {
            *place = feet?;
        }
        Some(Formation(known))
    }
}

/// The receiver whom the service comes to: who is nearest to where it gets to.
fn receiver<'a>(scene: &'a Scene, server: &Player, at: f64) -> Option<(&'a Player, Point)> {
    let flies = scene.ball.iter().filter(|leg| leg.from >= at - 1e-9);
    let mut across = flies.filter(|leg| End::of(leg.end().at.x) != server.side);
    let end = across.next()?.end().at;
    let others = scene.players.iter().filter(|p| p.side != server.side);
    let away = |p: &Player| {
        let here = p.side.point(middle(&p.stance(at)), 0.0);
        (here.x - end.x).hypot(here.y - end.y)
    };
    others
        .min_by(|a, b| away(a).total_cmp(&away(b)))
        .map(|p| (p, end))
}

/// Whether the service is hidden from the receiver. The path is looked at until the ball is above the foremost
/// of the server's team-mates who stand near the line to it: from there on nobody of them can hide it, and by
/// the letter of 12.5.2, which says until the plane of the net, nobody ever could who does not stand at it.
fn screened(judge: &mut Judge<'_>, at: f64, server: usize) {
    let scene = judge.scene;
    let who = &scene.players[server];
    let Some((receiver, end)) = receiver(scene, who, at) else {
        return;
    };
    let mates = |p: &&Player| p.side == who.side && p.number != who.number;
    let players: Vec<Body> = scene
        .players
        .iter()
        .filter(mates)
        .map(|p| {
            let stance = p.stance(at);
            Body {
                at: p.side.point(middle(&stance), 0.0),
                radius: HALF_BODY,
                height: p.highest(at),
                hands_up: stance.hands.iter().any(|h| h.z > p.top_of_head(&stance)),
            }
        })
        .collect();
    let hit = scene.ball_at(at);
    let eye = receiver.eyes(at);
    // Near the line from the server to the receiver, seen from above.
    let (dx, dy) = (end.x - hit.x, end.y - hit.y);
    let length = dx.hypot(dy).max(1.0);
    let aside = |body: &Body| ((body.at.x - hit.x) * dy - (body.at.y - hit.y) * dx).abs() / length;
    let foremost = players
        .iter()
        .filter(|body| aside(body) < 0.8)
        .map(|body| who.side.spot(body.at).depth)
        .fold(f64::INFINITY, f64::min);
    if !foremost.is_finite() {
        return;
    }
    let mut path = Vec::new();
    let mut time = at;
    while time < scene.until() {
        time += 0.02;
        let ball = scene.ball_at(time);
        if who.side.spot(ball).depth < foremost + HALF_BODY {
            break;
        }
        path.push(ball);
    }
    let seen = Screen {
        eye,
        hit,
        path,
        players,
    };
    let ruling = screen(who.side, &seen);
    let culprit = scene.players.iter().position(|p| {
        mates(&p)
            && (who
                .side
                .spot(p.side.point(middle(&p.stance(at)), 0.0))
                .depth
                - foremost)
                .abs()
                < 1e-9
    });
    judge.note(
        Rank::After,
        Judged {
            at: time,
            moment: at,
            about: cause_of(ruling).unwrap_or(Cause::Screen),
            ruling,
            player: culprit,
        },
    );
}
