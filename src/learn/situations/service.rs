//! The service of the left team, and two faults in their order.

use super::net::{shoe, SHOE_LENGTH};
use super::positions::usual;
use super::{Dial, Values};
use crate::centre_line::foot_over_centre_line;
use crate::court::{End, Foot};
use crate::crossing::{crossing, Crossing, TeamHit};
use crate::net_contact::{net_contact, NetContact};
use crate::order::{at_the_service, first_fault, Timed};
use crate::positions::positions;
use crate::ruling::{Margin, Ruling};
use crate::service::{
    server_in_order, service_at_the_net, service_execution, service_foot, service_time,
    ServiceExecution,
};
use rules::{Edition, Preset};

pub(super) fn foot_start() -> Values {
    Values::of(&[(Dial::ServerDepth, 9.04), (Dial::ServerRight, 4.1)])
}

/// The feet of a server whose front toe is so far from the axis and so far to the right: the other foot
/// stands a step behind and to the left, our own choice.
#[must_use]
pub fn server_feet(depth: f64, right: f64) -> [Foot; 2] {
    let heel = depth + SHOE_LENGTH;
    [shoe(heel, right), shoe(heel + 0.35, right - 0.25)]
}

pub(super) fn foot(set: &Values) -> Ruling {
    let feet = server_feet(set.get(Dial::ServerDepth), set.get(Dial::ServerRight));
    service_foot(End::Left, &feet)
}

pub(super) fn time_start() -> Values {
    Values::of(&[(Dial::ServiceAfter, 5.0)])
}

pub(super) fn time(set: &Values) -> Ruling {
    let allowed = Preset::International.rules().service_seconds;
    service_time(End::Left, set.get(Dial::ServiceAfter), f64::from(allowed))
}

pub(super) fn hit_start() -> Values {
    Values::of(&[(Dial::ServiceHow, 0.0)])
}

pub(super) fn hit(set: &Values) -> Ruling {
    // Tossed once, dribbled before, out of the hand, tossed again, both hands.
    let how = set.choice(Dial::ServiceHow);
    service_execution(
        End::Left,
        ServiceExecution {
            released: how != 2,
            tosses: if how == 3 { 2 } else { 1 },
            one_hand: how != 4,
        },
    )
}

pub(super) fn net_start() -> Values {
    Values::of(&[(Dial::Completed, 1.0)])
}

pub(super) fn net(set: &Values) -> Ruling {
    service_at_the_net(End::Left, set.is(Dial::Completed))
}

pub(super) fn order_start() -> Values {
    Values::of(&[(Dial::Server, 1.0)])
}

/// The player in position 1 has to serve (12.4 with 7.6.2); a position stands for its player.
pub(super) fn order(set: &Values) -> Ruling {
    let server = set.choice(Dial::Server) as u8 + 1;
    server_in_order(End::Left, server, 1)
}

pub(super) fn two_faults_start() -> Values {
    Values::of(&[(Dial::LeftFaultAt, 0.5), (Dial::RightFaultAt, 0.42)])
}

/// The attacker of the left team touches the net, the blocker of the right team lands beyond the line.
pub(super) fn two_faults(set: &Values) -> Ruling {
    let net = net_contact(NetContact {
        by: End::Left,
        aside: 1.0,
        in_action: true,
        driven_by_ball: false,
        interferes: false,
        hair_only: false,
    });
    let line = foot_over_centre_line(End::Right, shoe(-0.2, 0.0), false);
    first_fault(&[
        Timed {
            at: set.get(Dial::LeftFaultAt),
            ruling: net,
        },
        Timed {
            at: set.get(Dial::RightFaultAt),
            ruling: line,
        },
    ])
}

pub(super) fn precedence_start() -> Values {
    Values::of(&[
        (Dial::ServerOnLine, 0.0),
        (Dial::ReceiversSwapped, 1.0),
        (Dial::ServiceWide, 1.0),
    ])
}

/// The left team serves: what its server does at the hit, how the right team stands then, where the ball goes.
/// Nothing here is measured, so no margin is told.
pub(super) fn precedence(set: &Values) -> Ruling {
    let toe = if set.is(Dial::ServerOnLine) { 8.9 } else { 9.1 };
    let wide = Crossing {
        from: End::Left,
        aside: if set.is(Dial::ServiceWide) { 5.2 } else { 2.0 },
        hit: TeamHit::Service,
        touches_antenna: false,
        towards_free_zone: false,
    };
    let formation = usual(set.is(Dial::ReceiversSwapped));
    let ruling = at_the_service(
        service_foot(End::Left, &server_feet(toe, 2.0)),
        positions(End::Right, &formation, false, Edition::E2025),
        crossing(wide, Edition::E2025),
    );
    Ruling {
        margin: Margin::Seen,
        ..ruling
    }
}
