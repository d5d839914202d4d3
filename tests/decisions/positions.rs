//! Places at the service hit.

use super::{by_centimetres, goes_on, is_fault, stands};
use learn::{inside_own_court, positions, End, Formation, Pair};
use proptest::prelude::*;
use rules::{Cause, Edition, Signal};

/// Six players in their places, 1 to 6.
fn in_order() -> Formation {
    Formation([
        stands(7.0, 3.0),
        stands(2.0, 3.0),
        stands(2.0, 0.0),
        stands(2.0, -3.0),
        stands(7.0, -3.0),
        stands(7.0, 0.0),
    ])
}

/// The same with one of them somewhere else.
fn with(position: usize, depth: f64, right: f64) -> Formation {
    let mut formation = in_order();
    formation.0[position - 1] = stands(depth, right);
    formation
}

#[track_caller]
fn is_wrong(formation: &Formation, pair: Pair, centimetres: f64) {
    let ruling = positions(End::Right, formation, false, Edition::E2025);
    is_fault(
        ruling,
        End::Right,
        Cause::PositionFault,
        "7.5.1",
        Signal::Position,
    );
    by_centimetres(ruling, centimetres);
    assert_eq!(formation.tightest().0, pair);
}

#[test]
fn f5_06_six_in_their_places() {
    goes_on(
        positions(End::Right, &in_order(), false, Edition::E2025),
        "7.4.3",
    );
}

#[test]
fn f5_09_the_back_row_player_wholly_before_the_front_row_player() {
    // The front foot of 3 begins at 3.85 m; the feet of 6 end at 3.65 m.
    let mut formation = in_order();
    formation.0[2] = stands(4.0, 0.0);
    formation.0[5] = stands(3.5, 0.0);
    is_wrong(&formation, Pair::Depth { front: 3, back: 6 }, 20.0);
}

#[test]
fn f5_12_level_is_right() {
    let mut formation = in_order();
    formation.0[2] = stands(4.0, 0.0);
    formation.0[5] = stands(4.0, 0.3);
    goes_on(
        positions(End::Left, &formation, false, Edition::E2025),
        "7.4.3",
    );
}

#[test]
fn f5_09_a_part_of_one_foot_is_enough() {
    let mut formation = in_order();
    formation.0[2] = stands(4.0, 0.0);
    formation.0[5] = stands(3.71, 0.0);
    let ruling = positions(End::Left, &formation, false, Edition::E2025);
    goes_on(ruling, "7.4.3");
    by_centimetres(ruling, 1.0);
}

#[test]
fn f5_10_the_middle_player_wholly_to_the_right_of_the_right_one() {
    // 2 stands at 0.5 m, so that the right foot ends at 0.70; the left foot of 3 begins at 0.85.
    let mut formation = in_order();
    formation.0[1] = stands(2.0, 0.5);
    formation.0[2] = stands(2.0, 1.05);
    is_wrong(&formation, Pair::Lateral { left: 3, right: 2 }, 15.0);
}

#[test]
fn f5_10_in_the_back_row_as_well() {
    let formation = with(5, 7.0, 0.6);
    // The left foot of 5 begins at 0.40, the right foot of 6 ends at 0.20.
    is_wrong(&formation, Pair::Lateral { left: 5, right: 6 }, 20.0);
}

#[test]
fn f5_11_diagonals_are_never_compared() {
    // 4 stands to the right of 6, which is no matter; 3 and 2 stand farther right still.
    let mut formation = in_order();
    formation.0[3] = stands(2.0, 0.9);
    formation.0[2] = stands(2.0, 2.0);
    formation.0[4] = stands(7.0, -3.0);
    goes_on(
        positions(End::Right, &formation, false, Edition::E2025),
        "7.4.3",
    );
}

#[test]
fn f5_06_the_serving_team_stands_as_it_likes_since_2025() {
    let formation = with(5, 1.0, 4.0);
    goes_on(
        positions(End::Right, &formation, true, Edition::E2025),
        "7.4",
    );
}

#[test]
fn f19_01_before_that_it_kept_its_order_but_for_the_server() {
    let formation = with(5, 1.0, 4.0);
    is_fault(
        positions(End::Right, &formation, true, Edition::E2021),
        End::Right,
        Cause::PositionFault,
        "7.5.1",
        Signal::Position,
    );
    // The server is behind the end line and far to the left: no pair with place 1 counts.
    let served_from_the_left = with(1, 9.5, -4.0);
    goes_on(
        positions(End::Right, &served_from_the_left, true, Edition::E2021),
        "7.4.3",
    );
}

#[test]
fn f5_07_a_foot_in_the_free_zone_is_a_fault_of_either_team() {
    let ruling = inside_own_court(End::Left, &stands(5.0, 4.5));
    is_fault(
        ruling,
        End::Left,
        Cause::OutsideCourt,
        "7.4",
        Signal::LineOrUnder,
    );
    by_centimetres(ruling, 20.0);
}

#[test]
fn f1_10_a_foot_on_the_line_is_inside() {
    // The right foot ends at the outer edge of the side line.
    goes_on(inside_own_court(End::Left, &stands(5.0, 4.30)), "7.4");
    goes_on(inside_own_court(End::Left, &stands(8.85, 0.0)), "7.4");
}

#[test]
fn f5_07_behind_the_end_line_is_outside() {
    let ruling = inside_own_court(End::Right, &stands(8.90, 0.0));
    is_fault(
        ruling,
        End::Right,
        Cause::OutsideCourt,
        "7.4",
        Signal::LineOrUnder,
    );
    by_centimetres(ruling, 5.0);
}

#[test]
fn f5_07_over_the_centre_line_is_not_judged_as_outside() {
    goes_on(inside_own_court(End::Right, &stands(0.0, 0.0)), "7.4");
}

proptest! {
    /// Everybody who moves the same way keeps the order: only differences count.
    #[test]
    fn moving_all_alike_changes_nothing(
        places in prop::array::uniform6((0.5f64..8.0, -4.0f64..4.0)),
        depth in -2.0f64..2.0,
        right in -2.0f64..2.0,
    ) {
        let here = Formation(places.map(|(d, r)| stands(d, r)));
        let there = Formation(places.map(|(d, r)| stands(d + depth, r + right)));
        let [a, b] = [&here, &there].map(|f| f.tightest().1);
        prop_assert!((a - b).abs() < 1e-9);
    }

    /// A back-row player who steps back, or a front-row player who steps forward, never makes it worse.
    #[test]
    fn stepping_apart_never_makes_a_fault(
        places in prop::array::uniform6((0.5f64..8.0, -4.0f64..4.0)),
        step in 0.0f64..2.0,
        which in 0usize..3,
    ) {
        let (front, back) = [(2, 1), (3, 6), (4, 5)][which];
        let pair = Pair::Depth { front, back };
        let before = Formation(places.map(|(d, r)| stands(d, r)));
        let mut after = before.clone();
        let (d, r) = places[usize::from(back) - 1];
        after.0[usize::from(back) - 1] = stands(d + step, r);
        prop_assert!(after.slack(pair) >= before.slack(pair));
    }

    /// Which side of the net a team stands on makes no difference.
    #[test]
    fn both_sides_are_judged_alike(places in prop::array::uniform6((0.5f64..8.0, -4.0f64..4.0))) {
        let formation = Formation(places.map(|(d, r)| stands(d, r)));
        for edition in [Edition::E2025, Edition::E2021] {
            for serves in [true, false] {
                let [left, right] =
                    End::BOTH.map(|end| positions(end, &formation, serves, edition));
                prop_assert_eq!(left.margin, right.margin);
                prop_assert_eq!(left.rule, right.rule);
                prop_assert_eq!(left.is_fault(), right.is_fault());
            }
        }
    }
}
