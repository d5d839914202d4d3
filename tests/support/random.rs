//! Entries drawn at random: some plausible, most absurd.

use game::entry::{
    About, Amendment, By, Change, Check, Court, Detail, Fault, Forced, Found, LateFault, LiberoWhy,
    Protested, ReplayWhy, Scope, SeenBy, Since, Timer, TimerAction, Toss, Won,
};
use game::{legal, Entry, Joined, Kind, Level, Timed, Timeline, Who};
use proptest::prelude::*;
use rules::{Cause, Rules, Score, Shirt, Team};

pub fn team() -> impl Strategy<Value = Team> {
    prop_oneof![Just(Team::A), Just(Team::B)]
}

fn shirt() -> impl Strategy<Value = Shirt> {
    prop_oneof![9 => (1u16..=12).prop_map(Shirt), 1 => (0u16..=120).prop_map(Shirt)]
}

fn change() -> impl Strategy<Value = Change> {
    (shirt(), shirt()).prop_map(|(out, into)| Change { out, into })
}

fn score() -> impl Strategy<Value = Score> {
    (0u16..6, 0u16..6).prop_map(|(a, b)| Score { a, b })
}

fn numbers() -> impl Strategy<Value = Vec<Shirt>> {
    prop_oneof![
        3 => Just((1u16..=12).map(Shirt).collect::<Vec<_>>())
            .prop_shuffle()
            .prop_map(|all| all[..6].to_vec()),
        1 => proptest::collection::vec(shirt(), 0..8),
    ]
}

fn by() -> impl Strategy<Value = Option<By>> {
    proptest::option::of(
        (team(), proptest::option::of(shirt())).prop_map(|(team, number)| By { team, number }),
    )
}

fn seen_by() -> impl Strategy<Value = Option<SeenBy>> {
    proptest::option::of((0..SeenBy::ALL.len()).prop_map(|i| SeenBy::ALL[i]))
}

fn cause() -> impl Strategy<Value = Cause> {
    (0..Cause::ALL.len()).prop_map(|i| Cause::ALL[i])
}

fn late_fault() -> impl Strategy<Value = Kind> {
    let fault = prop_oneof![
        Just(Fault::Rotation),
        Just(Fault::IllegalSubstitution),
        Just(Fault::IllegalLibero),
        Just(Fault::WrongLineUp),
        Just(Fault::UnregisteredPlayer),
    ];
    let since = proptest::option::of((0u16..6, 0u16..6, proptest::option::of(0u8..4)).prop_map(
        |(a, b, set)| Since {
            score: Score { a, b },
            set,
        },
    ));
    let found = prop_oneof![Just(Found::Rally), Just(Found::AfterRally)];
    (team(), fault, since, found, proptest::option::of(numbers())).prop_map(
        |(team, fault, since, during, positions)| {
            Kind::LateFault(LateFault {
                team,
                fault,
                since,
                during,
                positions,
            })
        },
    )
}

fn misconduct() -> impl Strategy<Value = Kind> {
    let who =
        prop_oneof![3 => shirt().prop_map(Who::Player), 1 => Just(Who::Staff("coach".into()))];
    (team(), who, 0..4usize).prop_map(|(team, who, level)| Kind::Misconduct {
        team,
        who,
        sanction: Level::ALL[level],
    })
}

/// Any entry whatever.
pub fn kind() -> impl Strategy<Value = Kind> {
    let forced = proptest::option::of(prop_oneof![
        Just(Forced::Injury),
        Just(Forced::Expelled),
        Just(Forced::Disqualified)
    ]);
    let timeline = prop_oneof![
        Just(ReplayWhy::DoubleFault),
        Just(ReplayWhy::Interference),
        Just(ReplayWhy::Injury),
        Just(ReplayWhy::Other)
    ];
    let libero_why = proptest::option::of(prop_oneof![
        Just(LiberoWhy::Unable),
        Just(LiberoWhy::Declared)
    ]);
    let often = prop_oneof![
        12 => (team(), proptest::option::of(cause()), by())
            .prop_map(|(won_by, cause, by)| Kind::Rally { won_by, cause, by }),
        2 => (team(), numbers()).prop_map(|(team, positions)| Kind::LineUp { team, positions }),
        2 => Just(Kind::BeginSet),
        2 => team().prop_map(|team| Kind::TimeOut { team }),
        4 => (team(), proptest::collection::vec(change(), 0..3), forced)
            .prop_map(|(team, changes, reason)| Kind::Substitution { team, changes, reason }),
        4 => (team(), change()).prop_map(|(team, change)| Kind::LiberoReplacement { team, change }),
        2 => misconduct(),
        2 => late_fault(),
        1 => (1u32..40, cause(), by(), seen_by())
            .prop_map(|(entry, cause, by, seen_by)| Kind::Explain { entry, cause, by, seen_by }),
        2 => (0u32..60).prop_map(|entry| Kind::Strike { entry, why: None }),
    ];
    let seldom = prop_oneof![
        (
            team(),
            team(),
            proptest::option::of((team(), any::<bool>()))
        )
            .prop_map(|(first_service, left, won)| Kind::Toss(Toss {
                won: won.map(|(by, side)| Won {
                    by,
                    chose: if side { About::Side } else { About::Service },
                }),
                ..Toss::new(first_service, left)
            })),
        (timeline, by(), proptest::option::of(0u32..60))
            .prop_map(|(why, hurt, rally)| Kind::Replay { why, hurt, rally }),
        (
            team(),
            proptest::collection::vec(shirt(), 0..3),
            shirt(),
            libero_why
        )
            .prop_map(|(team, replaces, number, why)| Kind::NewLibero {
                team,
                replaces,
                number,
                why
            }),
        team().prop_map(|team| Kind::ImproperRequest { team }),
        (team(), any::<bool>()).prop_map(|(team, request)| Kind::Delay { team, request }),
        (team(), shirt()).prop_map(|(team, number)| Kind::Recovery { team, number }),
        (team(), any::<bool>()).prop_map(|(team, whole)| Kind::Incomplete {
            team,
            scope: if whole { Scope::Match } else { Scope::Set },
        }),
        Just(Kind::ChangeCourts),
        Just(Kind::Suspend {
            why: "lights".into()
        }),
        any::<bool>().prop_map(|same| Kind::Resume {
            court: if same { Court::Same } else { Court::Other }
        }),
        (1u32..40, 0..4usize).prop_map(|(entry, i)| Kind::Answer {
            entry,
            choice: ["A", "B", "lose_set", "keep_set"][i].into(),
        }),
        Just(Kind::Remark {
            text: "late bus".into(),
            team: None
        }),
        (team(), shirt()).prop_map(|(team, number)| Kind::GameCaptain { team, number }),
        (team(), proptest::option::of(shirt())).prop_map(|(team, number)| Kind::Protest {
            team,
            number,
            text: "touched block".into(),
        }),
        (0u32..60, team()).prop_map(|(entry, team)| Kind::ProtestStatement {
            about: if entry < 40 {
                Protested::Entry(entry)
            } else {
                Protested::Unannounced(team)
            },
            text: "It had touched the block.".into(),
        }),
        Just(Kind::Sign {
            role: "scorer".into(),
            name: None
        }),
        // A reopening more often than a seal, or nothing else would be tried behind one.
        (0..4u8).prop_map(|n| match n {
            0 => Kind::Seal {
                code: "23456789AC".into()
            },
            _ => Kind::Reopen {
                why: (n == 1).then(|| "wrong name".into())
            },
        }),
        any::<bool>().prop_map(|ok| Kind::Check(Check {
            item: "net".into(),
            ok,
            note: None
        })),
        any::<bool>().prop_map(|start| Kind::Timer(Timer {
            what: Timed::Interval,
            team: None,
            seconds: 180,
            action: if start {
                TimerAction::Start
            } else {
                TimerAction::Stop
            },
        })),
        (team(), 0u16..16).prop_map(|(team, n)| super::list(team, n, &[12])),
        team().prop_map(|team| Kind::Default { team }),
        (team(), team()).prop_map(|(team, left)| Kind::FirstService { team, left }),
        (
            proptest::collection::vec(score(), 0..3),
            proptest::option::of(score()),
            proptest::option::of(team()),
            proptest::option::of(team()),
        )
            .prop_map(|(sets, score, serving, left)| Kind::Joined(Joined {
                sets,
                score,
                serving,
                left,
            })),
        (score(), proptest::option::of(team())).prop_map(|(score, serving)| {
            Kind::ScoreCorrection {
                score,
                serving,
                why: "counted twice".into(),
            }
        }),
        score().prop_map(|score| Kind::WrongInformation {
            score,
            why: "wrong server named".into(),
        }),
        (
            team(),
            proptest::collection::vec(change(), 0..2),
            any::<bool>()
        )
            .prop_map(|(team, changes, kept)| Kind::Discrepancy {
                team,
                changes,
                kept,
            }),
        team().prop_map(|team| Kind::LateReplacement { team }),
        Just(Kind::TimeUp),
        proptest::option::of(rules()).prop_map(|rules| {
            let mut given = Amendment {
                rules,
                ..Amendment::default()
            };
            given.details[Detail::Venue] = Some("North hall".to_owned());
            Kind::Heading(Box::new(given))
        }),
    ];
    prop_oneof![6 => often, 2 => seldom]
}

/// An entry with or without insisting, and now and then a time.
pub fn entries(most: usize) -> impl Strategy<Value = Vec<(Kind, bool, Option<i64>)>> {
    proptest::collection::vec(
        (
            kind(),
            prop::bool::weighted(0.15),
            proptest::option::of(0i64..20_000_000),
        ),
        0..most,
    )
}

/// A log: the opening of a match by the given rules, then anything.
pub fn log(rules: Rules, drawn: Vec<(Kind, bool, Option<i64>)>) -> Vec<Entry> {
    let mut all = super::numbered(super::opening(rules));
    for (kind, insist, at) in drawn {
        let n = all.last().map_or(1, |e| e.n + 1);
        all.push(Entry {
            at,
            insist: insist.then(|| "first referee's decision".into()),
            ..Entry::new(n, kind)
        });
    }
    all
}

/// Short sets, so that a random match gets somewhere.
pub fn short(mut rules: Rules) -> Rules {
    rules.set.target = 5;
    rules.decider.to.target = 3;
    rules.decider.change_courts_at = Some(2);
    rules
}

/// Rules of every kind, short.
pub fn rules() -> impl Strategy<Value = Rules> {
    (0..4usize).prop_map(|i| short(super::presets()[i]))
}

/// A match of legal entries only: each number chooses one of those the list offers.
pub fn legal_walk(rules: Rules, choices: &[u16]) -> Timeline {
    let mut timeline = Timeline::of(super::numbered(super::opening(rules)));
    for &choice in choices {
        let offered = legal(timeline.state());
        // Endings are legal nearly everywhere and would end every walk at once.
        let offered: Vec<Kind> = offered
            .into_iter()
            .filter(|k| !matches!(k, Kind::Default { .. } | Kind::Incomplete { .. }) || choice == 0)
            .collect();
        let kind = match offered.len() {
            0 => break,
            len => offered[usize::from(choice) % len].clone(),
        };
        let n = timeline.next_number();
        timeline.push(Entry::new(n, kind));
        for kind in due(&timeline) {
            let entry = Entry::new(timeline.next_number(), kind);
            // A team can have too few players left for a line-up.
            if timeline.check(&entry).is_ok() {
                timeline.push(entry);
            }
        }
    }
    timeline
}

/// Line-ups of whoever may play, when a set is to begin.
fn due(timeline: &Timeline) -> Vec<Kind> {
    let state = timeline.state();
    let mut kinds = Vec::new();
    for team in Team::BOTH {
        let waits = game::notices(state)
            .iter()
            .any(|n| n.code() == "line_up" && n.team() == Some(team));
        if waits {
            let known = state.team(team);
            let set = state.set_at_hand();
            let numbers: Vec<u16> = (1..=12)
                .filter(|&n| !known.is_libero(Shirt(n)) && known.barred(Shirt(n), set).is_none())
                .take(usize::from(state.rules().players_on_court))
                .collect();
            kinds.push(super::line_up(team, &numbers));
        }
    }
    kinds
}
