//! The decisions of a rally as pure functions: places in metres and times in seconds go in, a ruling
//! comes out, with its rule, its signal and its margin.
//!
//! Rule numbers are those of the FIVB Official Volleyball Rules 2025-2028. What the text leaves to the
//! eye of a referee (whether a player hindered another, whether a hand was above the net) is an input
//! here and never guessed. What a function does not decide stands in its own words.
//!
//! [`draw`] gives scenes of a rally from seeds; their truth is only what these functions say.

mod answer;
mod attack;
mod block;
mod centre_line;
mod court;
mod crossing;
mod flight;
mod hits;
mod landing;
mod mark;
mod net_contact;
mod order;
mod positions;
mod ruling;
mod scene;
mod screen;
mod service;
mod situations;

pub use answer::{mark, serves_next, whistle_from, Answer, Marked, Nature, Timing, IN_TIME};
pub use attack::{attack, Attack, Attacked, Row};
pub use block::{block, Block, Blocked, Blocker};
pub use centre_line::{body_on_opponents_court, foot_over_centre_line, BodyPart};
pub use court::{
    End, Foot, Point, Spot, Zone, ATTACK_LINE, BALL_RADIUS, CENTRE_LINE_HALF, FREE_ZONE,
    HALF_LENGTH, HALF_WIDTH, LINE_WIDTH,
};
pub use crossing::{below_the_net, crossing, Crossing, TeamHit};
pub use flight::{ball_drag, Flight, Velocity, AIR, BALL_MASS, DRAG, GRAVITY};
pub use hits::{held_back, hits, Manner, Touch, TouchKind};
pub use landing::{above_the_floor, landing, FloorContact, LastTouch, LastTouchKind};
pub use mark::{Mark, LINE_JUDGES, SECOND_REFEREE, STAND};
pub use net_contact::{hand_over_net, net_contact, HandOver, NetContact};
pub use order::{at_the_service, first_fault, Timed, AT_ONCE};
pub use positions::{inside_own_court, positions, Formation, Pair};
pub use ruling::{Call, Margin, Ruling};
pub use scene::{
    draw, gaze, judge, measure, picture, unsound, Act, Band, Case, Drawn, Event, Figure, Judged,
    Kind, Leg, Level, Look, Place, Player, Scene, Seen, Shape, Stance, Thrown, Tone, Unit, Unsound,
    Verdict, View, CAUGHT, LOW_SERVICE,
};
pub use screen::{screen, Body, Screen};
pub use service::{
    server_in_order, service_at_the_net, service_execution, service_foot, service_time,
    ServiceExecution,
};
pub use situations::{
    antenna_rod, edition_of, feet_at, formation, receiver_view, server_feet, service_path, shoe,
    Decided, Dial, Reading, Scale, Situation, Topic, Values, ANTENNA_ABOVE, CROSSED_NET, HIT_DEPTH,
    HIT_HEIGHT, PLAYERS, SHOE_HALF_WIDTH, SHOE_LENGTH,
};
