//! Counting hits.

use super::{goes_on, is_fault};
use learn::{hits, End, Manner, Touch, TouchKind};
use rules::{Cause, Signal};

/// A clean hit of a player of the left side.
fn hit(player: u8) -> Touch {
    Touch {
        by: End::Left,
        player,
        kind: TouchKind::Hit,
        manner: Manner::Rebounds,
        with_last: false,
        same_action: false,
    }
}

fn blocked(player: u8) -> Touch {
    Touch {
        kind: TouchKind::Block,
        ..hit(player)
    }
}

fn opponent(player: u8) -> Touch {
    Touch {
        by: End::Right,
        ..hit(player)
    }
}

#[test]
fn f7_01_three_hits_return_the_ball() {
    goes_on(hits(&[hit(1), hit(2), hit(1), opponent(5)]), "9.1");
}

#[test]
fn f7_01_a_fourth_is_a_fault() {
    is_fault(
        hits(&[hit(1), hit(2), hit(1), hit(3)]),
        End::Left,
        Cause::FourHits,
        "9.3.1",
        Signal::FourHits,
    );
}

#[test]
fn f7_13_the_same_player_again_is_a_double_contact() {
    is_fault(
        hits(&[hit(1), hit(2), hit(3), hit(3)]),
        End::Left,
        Cause::DoubleContact,
        "9.3.4",
        Signal::DoubleContact,
    );
}

#[test]
fn f7_02_nobody_hits_twice_running() {
    is_fault(
        hits(&[hit(1), hit(1)]),
        End::Left,
        Cause::DoubleContact,
        "9.3.4",
        Signal::DoubleContact,
    );
}

#[test]
fn f7_04_in_the_first_hit_one_action_may_touch_several_times() {
    let again = Touch {
        same_action: true,
        ..hit(1)
    };
    goes_on(hits(&[hit(1), again, again, hit(2), hit(3)]), "9.1");
}

#[test]
fn f7_05_in_the_second_hit_it_may_not() {
    let again = Touch {
        same_action: true,
        ..hit(2)
    };
    is_fault(
        hits(&[hit(1), hit(2), again]),
        End::Left,
        Cause::DoubleContact,
        "9.3.4",
        Signal::DoubleContact,
    );
}

#[test]
fn f7_04_a_catch_is_a_fault_in_the_first_hit_too() {
    let caught = Touch {
        manner: Manner::Caught,
        ..hit(1)
    };
    is_fault(
        hits(&[caught]),
        End::Left,
        Cause::Catch,
        "9.2.2",
        Signal::Catch,
    );
}

#[test]
fn f10_14_after_a_block_there_are_three_hits_and_the_blocker_may_begin() {
    goes_on(hits(&[blocked(3), hit(3), hit(1), hit(3)]), "9.1");
}

#[test]
fn f10_14_but_not_four() {
    assert!(hits(&[blocked(3), hit(3), hit(1), hit(2), hit(4)]).is_fault());
}

#[test]
fn f10_11_quick_contacts_of_several_blockers_are_one_block() {
    goes_on(
        hits(&[blocked(3), blocked(4), blocked(3), hit(4), hit(1), hit(2)]),
        "9.1",
    );
}

#[test]
fn f7_03_the_ball_off_the_own_block_is_a_first_hit() {
    let again = Touch {
        same_action: true,
        ..hit(3)
    };
    goes_on(hits(&[blocked(3), hit(3), again, hit(1), hit(2)]), "9.1");
}

#[test]
fn f7_06_two_team_mates_at_once_have_hit_twice() {
    let with = Touch {
        with_last: true,
        ..hit(2)
    };
    goes_on(hits(&[hit(1), with, hit(3)]), "9.1");
    is_fault(
        hits(&[hit(1), with, hit(3), hit(1)]),
        End::Left,
        Cause::FourHits,
        "9.3.1",
        Signal::FourHits,
    );
}

#[test]
fn f7_07_opponents_at_once_above_the_net_leave_three_new_hits() {
    // The right side, then the left at the same moment; the ball stays with the left.
    let with = Touch {
        with_last: true,
        ..hit(4)
    };
    goes_on(
        hits(&[
            opponent(1),
            opponent(2),
            opponent(3),
            with,
            hit(4),
            hit(1),
            hit(2),
        ]),
        "9.1",
    );
}

#[test]
fn f7_08_a_ball_held_between_opponents_is_played_on() {
    let held = Touch {
        with_last: true,
        manner: Manner::Caught,
        ..hit(4)
    };
    goes_on(hits(&[opponent(1), held, hit(2)]), "9.1");
}

#[test]
fn f7_09_help_inside_the_playing_area_is_a_fault() {
    let helped = Touch {
        manner: Manner::Helped,
        ..hit(1)
    };
    is_fault(
        hits(&[helped]),
        End::Left,
        Cause::AssistedHit,
        "9.1.3",
        Signal::Catch,
    );
}

#[test]
fn f3_07_the_first_fault_of_a_row_counts() {
    let caught = Touch {
        manner: Manner::Caught,
        ..hit(3)
    };
    // A double contact, then a catch.
    let ruling = hits(&[hit(1), hit(1), caught]);
    assert_eq!(ruling.rule, "9.3.4");
}
