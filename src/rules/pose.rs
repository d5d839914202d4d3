//! What each official signal looks like: where elbows, wrists and hands are, as the players see the
//! referee from the front.
//!
//! The poses are our own description of FIVB Official Volleyball Rules 2025-2028, diagram 11. The
//! drawings of that diagram leave the depth to the eye, so the joints here do as well. Where a signal
//! has a side, the picture's left is the side concerned (rule 30.1); the other side is its mirror image.
//!
//! One table: a pose is drawn by looking at its neighbours, so all of them stand in one file.

use super::{FlagSignal, Signal};

/// A place in the picture, which is [`WIDTH`] wide and [`HEIGHT`] high; y grows downwards.
pub type Point = (i16, i16);

/// The width of the picture; the figure stands in its middle.
pub const WIDTH: i16 = 180;
/// The height of the picture, from the tips of raised hands to the floor.
pub const HEIGHT: i16 = 150;
/// How much higher the picture of a flag is, which may be above the head.
pub const ABOVE: i16 = 45;
/// The shoulders, the picture's left one first.
pub const SHOULDERS: [Point; 2] = [(72, 70), (108, 70)];

/// How a hand is held.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hand {
    /// Open, the palm to whoever looks.
    Open,
    /// Open, the palm to the referee.
    Back,
    /// Flat and seen from its edge.
    Edge,
    /// Flat, the palm on the thumb's side: up on an arm that points outwards.
    PalmUp,
    /// Flat, the palm down on an arm that points outwards.
    PalmDown,
    /// Closed.
    Fist,
    /// Closed, the thumb up.
    Thumb,
    /// The forefinger stretched.
    Point,
    /// Closed around the stick of a line judge's flag, which goes on from it.
    Flag,
    /// So many fingers spread.
    Fingers(u8),
    /// A card of each colour named.
    Cards {
        /// The yellow one.
        yellow: bool,
        /// The red one.
        red: bool,
    },
}

/// One arm.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ArmPose {
    /// Where the elbow is.
    pub elbow: Point,
    /// Where the wrist is.
    pub wrist: Point,
    /// Where the fingers point: degrees clockwise from straight up.
    pub turn: i16,
    /// How the hand is held.
    pub hand: Hand,
    /// Behind the back.
    pub behind: bool,
}

/// Both arms at one moment, the picture's left one first.
pub type Pose = [ArmPose; 2];

/// What a signal refers to besides the body.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Prop {
    /// The net, on the side concerned.
    Net,
    /// The floor of the court concerned.
    Floor,
    /// A line of the court.
    Line,
}

/// A signal as it is drawn.
#[derive(Clone, Copy, Debug)]
pub struct Movement {
    /// The moments in their order; one where the signal is held. A movement that returns to its
    /// beginning goes round.
    pub poses: &'static [Pose],
    /// The way of the hands: arrows, as the data of paths.
    pub way: &'static [&'static str],
    /// What it refers to.
    pub prop: Option<Prop>,
    /// Whether the moment that names it is where it begins, as the T of a time-out, and not where it gets to.
    pub named_at_first: bool,
}

impl Movement {
    /// Whether a flag belongs to it.
    #[must_use]
    pub fn has_flag(&self) -> bool {
        let arms = self.poses.iter().flatten();
        arms.into_iter().any(|arm| arm.hand == Hand::Flag)
    }

    /// The moment that names it.
    #[must_use]
    pub fn naming(&self) -> &'static Pose {
        match self.stills() {
            (_, Some(last)) if !self.named_at_first => last,
            (first, _) => first,
        }
    }

    /// The moments that tell it without moving: the pose that is held, or where it begins and where
    /// it gets to.
    #[must_use]
    pub fn stills(&self) -> (&'static Pose, Option<&'static Pose>) {
        let poses = self.poses;
        let last = if poses[0] == poses[poses.len() - 1] {
            poses.len() / 2
        } else {
            poses.len() - 1
        };
        (&poses[0], (last > 0).then(|| &poses[last]))
    }
}

const fn arm(elbow: Point, wrist: Point, turn: i16, hand: Hand) -> ArmPose {
    ArmPose {
        elbow,
        wrist,
        turn,
        hand,
        behind: false,
    }
}

const fn behind(arm: ArmPose) -> ArmPose {
    ArmPose {
        behind: true,
        ..arm
    }
}

const fn mirrored(arm: ArmPose) -> ArmPose {
    let ArmPose {
        elbow,
        wrist,
        turn,
        hand,
        behind,
    } = arm;
    ArmPose {
        elbow: (WIDTH - elbow.0, elbow.1),
        wrist: (WIDTH - wrist.0, wrist.1),
        turn: -turn,
        hand,
        behind,
    }
}

/// Both arms alike.
const fn both(arm: ArmPose) -> Pose {
    [arm, mirrored(arm)]
}

/// The arm of the side concerned; the other one hangs.
const fn one(arm: ArmPose) -> Pose {
    [arm, mirrored(HANGING)]
}

const HANGING: ArmPose = arm((63, 94), (61, 118), 180, Hand::Back);
const ASIDE: ArmPose = arm((47, 70), (25, 70), -90, Hand::Open);
const YELLOW: Hand = Hand::Cards {
    yellow: true,
    red: false,
};
const RED: Hand = Hand::Cards {
    yellow: false,
    red: true,
};

/// An arm bent upwards, the hand beside the head.
const fn raised(hand: Hand) -> ArmPose {
    arm((47, 76), (46, 50), 0, hand)
}

/// A card over the wrist of the other arm, before the forehead.
const fn over_the_wrist(card: Hand) -> Pose {
    [
        arm((54, 49), (72, 27), 40, Hand::Open),
        arm((118, 47), (97, 29), -90, card),
    ]
}

const fn held(poses: &'static [Pose]) -> Movement {
    Movement {
        poses,
        way: &[],
        prop: None,
        named_at_first: false,
    }
}

const fn moved(poses: &'static [Pose], way: &'static [&'static str]) -> Movement {
    Movement {
        poses,
        way,
        prop: None,
        named_at_first: false,
    }
}

/// The drawing of each signal.
impl Signal {
    /// How it is made.
    #[must_use]
    pub const fn movement(self) -> Movement {
        match self {
            // The arm points to the side that serves, then the forearm shows the way of the ball.
            Signal::AuthoriseService => moved(
                const { &[one(ASIDE), one(arm((50, 84), (78, 84), 90, Hand::Back))] },
                &["M22 54 C36 34 54 34 68 58M69 50L68 58L61 55"],
            ),
            Signal::TeamToServe => held(const { &[one(ASIDE)] }),
            // One forearm before the body and one behind it, turned around the trunk.
            Signal::ChangeOfCourts => moved(
                const {
                    const FRONT: ArmPose = arm((55, 94), (84, 106), 100, Hand::Fist);
                    const SIDE: ArmPose = arm((52, 92), (54, 112), 170, Hand::Fist);
                    &[
                        [FRONT, behind(mirrored(FRONT))],
                        both(SIDE),
                        [behind(FRONT), mirrored(FRONT)],
                        both(SIDE),
                        [FRONT, behind(mirrored(FRONT))],
                    ]
                },
                &[
                    "M60 128 C74 140 106 140 120 128M112 129L120 128L118 136",
                    "M34 112 C28 100 30 88 38 82M30 82L38 82L35 90",
                ],
            ),
            // A T of both hands, then the side that asked.
            Signal::TimeOut => Movement {
                named_at_first: true,
                ..moved(
                    const {
                        &[
                            [
                                arm((46, 82), (75, 76), 90, Hand::Edge),
                                arm((118, 98), (86, 99), 0, Hand::Edge),
                            ],
                            [arm((47, 70), (25, 70), -90, Hand::Edge), mirrored(HANGING)],
                        ]
                    },
                    &["M56 58 C46 50 34 50 22 56M30 57L22 56L26 49"],
                )
            },
            // The forearms roll around each other before the chest.
            Signal::Substitution => moved(
                const {
                    const OVER: ArmPose = arm((54, 88), (84, 82), 90, Hand::Fist);
                    const FAR: ArmPose = arm((56, 92), (92, 92), 90, Hand::Fist);
                    const UNDER: ArmPose = arm((55, 95), (84, 102), 90, Hand::Fist);
                    const NEAR: ArmPose = arm((54, 92), (72, 92), 90, Hand::Fist);
                    &[
                        [OVER, mirrored(UNDER)],
                        [FAR, mirrored(NEAR)],
                        [UNDER, mirrored(OVER)],
                        [NEAR, mirrored(FAR)],
                        [OVER, mirrored(UNDER)],
                    ]
                },
                &[
                    "M40 112 C28 100 28 84 40 74M32 75L40 74L38 82",
                    "M140 74 C152 84 152 100 140 112M148 111L140 112L141 104",
                ],
            ),
            Signal::Warning => held(const { &[one(raised(YELLOW))] }),
            Signal::Penalty => held(const { &[one(raised(RED))] }),
            Signal::Expulsion => held(
                const {
                    &[one(raised(Hand::Cards {
                        yellow: true,
                        red: true,
                    }))]
                },
            ),
            Signal::Disqualification => held(const { &[[raised(RED), mirrored(raised(YELLOW))]] }),
            // The forearms crossed before the chest.
            Signal::EndOfSet => held(const { &[both(arm((60, 97), (99, 80), 24, Hand::Back))] }),
            // The stretched arm lifted, the palm up.
            Signal::NotTossed => moved(
                const {
                    &[
                        one(arm((58, 91), (43, 111), -145, Hand::PalmUp)),
                        one(arm((48, 74), (25, 77), -96, Hand::PalmUp)),
                    ]
                },
                &["M24 124 C12 114 8 104 10 92M4 98L10 92L13 99"],
            ),
            // Eight fingers.
            Signal::ServiceDelay => {
                held(const { &[[raised(Hand::Fingers(5)), mirrored(raised(Hand::Fingers(3)))]] })
            }
            Signal::BlockOrScreen => {
                held(const { &[both(arm((66, 47), (64, 24), -4, Hand::Open))] })
            }
            // The forefinger points down and circles at the waist.
            Signal::Position => moved(
                const {
                    &[
                        one(arm((54, 90), (76, 98), 180, Hand::Point)),
                        one(arm((53, 90), (68, 102), 180, Hand::Point)),
                        one(arm((54, 90), (76, 106), 180, Hand::Point)),
                        one(arm((55, 90), (84, 102), 180, Hand::Point)),
                        one(arm((54, 90), (76, 98), 180, Hand::Point)),
                    ]
                },
                &["M90 130 C86 138 66 138 62 130 C60 126 62 124 66 123M58 120L66 123L61 129"],
            ),
            Signal::BallIn => Movement {
                poses: const { &[one(arm((55, 88), (38, 106), -137, Hand::Open))] },
                way: &[],
                prop: Some(Prop::Floor),
                named_at_first: false,
            },
            // Both forearms lifted, the palms to the referee.
            Signal::BallOut => moved(
                const {
                    &[
                        both(arm((57, 95), (58, 90), 0, Hand::Back)),
                        both(arm((57, 95), (60, 70), 0, Hand::Back)),
                    ]
                },
                &[
                    "M40 88 V58M35 65L40 58L45 65",
                    "M140 88 V58M135 65L140 58L145 65",
                ],
            ),
            // The forearm lifted slowly, the palm up.
            Signal::Catch => moved(
                const {
                    &[
                        one(arm((60, 95), (45, 112), -125, Hand::PalmUp)),
                        one(arm((60, 95), (36, 86), -80, Hand::PalmUp)),
                    ]
                },
                &["M22 122 C12 110 10 98 12 88M6 94L12 88L15 95"],
            ),
            Signal::DoubleContact => held(const { &[one(raised(Hand::Fingers(2)))] }),
            Signal::FourHits => held(const { &[one(raised(Hand::Fingers(4)))] }),
            Signal::NetTouch => Movement {
                poses: const { &[one(arm((54, 86), (36, 90), -160, Hand::Open))] },
                way: &[],
                prop: Some(Prop::Net),
                named_at_first: false,
            },
            Signal::OverNet => Movement {
                poses: const { &[one(arm((58, 88), (34, 88), -90, Hand::PalmDown))] },
                way: &[],
                prop: Some(Prop::Net),
                named_at_first: false,
            },
            // The raised forearm folded down.
            Signal::AttackFault => moved(
                const {
                    &[
                        one(arm((49, 63), (47, 37), 0, Hand::Open)),
                        one(arm((49, 63), (29, 47), -50, Hand::Open)),
                        one(arm((49, 63), (26, 74), -115, Hand::PalmDown)),
                    ]
                },
                &["M28 24 C16 32 9 44 9 60M15 54L9 60L4 53"],
            ),
            Signal::LineOrUnder => Movement {
                poses: const { &[one(arm((60, 92), (48, 113), -150, Hand::Point))] },
                way: &[],
                prop: Some(Prop::Line),
                named_at_first: false,
            },
            Signal::Replay => held(const { &[both(arm((51, 91), (50, 65), 0, Hand::Thumb))] }),
            // A palm brushed over the fingertips of the other hand.
            Signal::BallTouched => moved(
                const {
                    &[
                        [
                            arm((55, 95), (68, 82), 0, Hand::Open),
                            arm((109, 83), (94, 58), -90, Hand::Edge),
                        ],
                        [
                            arm((55, 95), (68, 82), 0, Hand::Open),
                            arm((103, 80), (78, 57), -90, Hand::Edge),
                        ],
                    ]
                },
                &["M68 47H44M51 52L44 47L51 42"],
            ),
            Signal::DelayWarning => held(const { &[over_the_wrist(YELLOW)] }),
            Signal::DelayPenalty => held(const { &[over_the_wrist(RED)] }),
        }
    }
}

/// The flag is in the right hand, which is on the right as in a mirror; no signal of a flag has a side.
impl FlagSignal {
    /// How it is made (diagram 12).
    #[must_use]
    pub const fn movement(self) -> Movement {
        const FLAG_UP: ArmPose = arm((112, 46), (114, 24), 4, Hand::Flag);
        match self {
            // The stick goes on from the arm, down.
            FlagSignal::In => {
                held(const { &[[HANGING, arm((113, 86), (118, 101), 162, Hand::Flag)]] })
            }
            FlagSignal::Out => held(const { &[[HANGING, FLAG_UP]] }),
            // The palm of the free hand lies on the top of the stick.
            FlagSignal::Touched => held(
                const {
                    &[[
                        arm((53, 74), (93, 66), 88, Hand::Edge),
                        arm((121, 97), (112, 120), 0, Hand::Flag),
                    ]]
                },
            ),
            // Waved above the head, while the other arm points at the line.
            FlagSignal::Line => moved(
                const {
                    const LEFT: ArmPose = arm((110, 46), (106, 24), -35, Hand::Flag);
                    const RIGHT: ArmPose = arm((116, 48), (124, 26), 35, Hand::Flag);
                    const POINTS: ArmPose = arm((52, 86), (36, 108), -145, Hand::Point);
                    &[[POINTS, LEFT], [POINTS, RIGHT], [POINTS, LEFT]]
                },
                &["M66 -34 C86 -44 130 -44 150 -34M142 -41L150 -34L140 -31"],
            ),
            // The forearms crossed before the chest.
            FlagSignal::NotSeen => held(
                const {
                    &[[
                        arm((60, 97), (99, 80), 24, Hand::Back),
                        arm((120, 97), (81, 80), -24, Hand::Flag),
                    ]]
                },
            ),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Arm, Team};

    fn distance(a: Point, b: Point) -> f64 {
        f64::from(a.0 - b.0).hypot(f64::from(a.1 - b.1))
    }

    #[test]
    fn no_bone_grows() {
        // As long as drawn straight, or shorter where it points at whoever looks.
        for signal in Signal::ALL {
            for pose in signal.movement().poses {
                for (arm, shoulder) in pose.iter().zip(SHOULDERS) {
                    let (upper, lower) = (
                        distance(shoulder, arm.elbow),
                        distance(arm.elbow, arm.wrist),
                    );
                    assert!(upper < 31.0, "{signal:?}: upper arm {upper}");
                    assert!(lower < 43.0, "{signal:?}: forearm {lower}");
                }
            }
        }
    }

    #[test]
    fn the_flag_is_in_one_hand_and_no_bone_grows() {
        for signal in FlagSignal::ALL {
            let movement = signal.movement();
            assert!(movement.has_flag(), "{signal:?}");
            for pose in movement.poses {
                let flags = pose.iter().filter(|arm| arm.hand == Hand::Flag).count();
                assert_eq!(flags, 1, "{signal:?}");
                for (arm, shoulder) in pose.iter().zip(SHOULDERS) {
                    let bones = (
                        distance(shoulder, arm.elbow),
                        distance(arm.elbow, arm.wrist),
                    );
                    assert!(bones.0 < 31.0 && bones.1 < 43.0, "{signal:?}: {bones:?}");
                }
            }
        }
        assert!(Signal::ALL
            .iter()
            .all(|signal| !signal.movement().has_flag()));
    }

    /// How far a hand reaches from the wrist, outline and all, in the picture's measure: a flag's stick is 50 long.
    const fn reach(hand: Hand) -> f64 {
        match hand {
            Hand::Flag => 51.0,
            Hand::Cards { .. } => 30.0,
            Hand::Fingers(_) => 25.0,
            Hand::Open | Hand::Back | Hand::Point => 22.8,
            Hand::Edge | Hand::PalmUp | Hand::PalmDown => 22.0,
            Hand::Fist | Hand::Thumb => 20.0,
        }
    }

    #[test]
    fn everything_is_in_the_picture() {
        let signals = Signal::ALL.map(Signal::movement).into_iter();
        let flags = FlagSignal::ALL.map(FlagSignal::movement).into_iter();
        for movement in signals.chain(flags) {
            let above = if movement.has_flag() { ABOVE } else { 0 };
            for arm in movement.poses.iter().flatten() {
                let turn = f64::from(arm.turn).to_radians();
                let tip = |from: i16, by: f64| from + (by * reach(arm.hand)).round() as i16;
                let tip = (tip(arm.wrist.0, turn.sin()), tip(arm.wrist.1, -turn.cos()));
                for (x, y) in [arm.elbow, arm.wrist, tip] {
                    assert!((0..=WIDTH).contains(&x), "{arm:?}: {x}");
                    assert!((-above..=HEIGHT).contains(&y), "{arm:?}: {y}");
                }
            }
        }
    }

    #[test]
    fn a_still_shows_the_moment_that_names_the_signal() {
        // The T of both hands, and not the arm that shows the team (diagram 11, 4).
        let time_out = Signal::TimeOut.movement();
        assert_eq!(time_out.naming(), &time_out.poses[0]);
        assert_ne!(time_out.naming()[1], mirrored(HANGING));
        // The forearm folded down, and not the raised arm that several signals begin with.
        let attack = Signal::AttackFault.movement();
        assert_eq!(attack.naming(), &attack.poses[2]);
        for (i, one) in Signal::ALL.into_iter().enumerate() {
            for other in &Signal::ALL[i + 1..] {
                let (one, other) = (one.movement(), other.movement());
                let alike = one.naming() == other.naming() && one.prop == other.prop;
                assert!(!alike, "{:?}", one.naming());
            }
        }
    }

    #[test]
    fn an_arm_that_hangs_is_not_asked_for() {
        // What the rules say about the arms and what is drawn are the same.
        for signal in Signal::ALL {
            let hangs = signal
                .movement()
                .poses
                .iter()
                .all(|pose| pose[1] == mirrored(HANGING));
            let two = signal.arm(Team::A, Team::A) == Arm::Both;
            if two {
                assert!(!hangs, "{signal:?} takes both arms");
            }
        }
    }

    #[test]
    fn no_two_signals_look_alike() {
        for (i, one) in Signal::ALL.into_iter().enumerate() {
            for other in &Signal::ALL[i + 1..] {
                assert_ne!(
                    one.movement().poses,
                    other.movement().poses,
                    "{one:?} {other:?}"
                );
            }
        }
    }
}
