//! The toss (7.1): the phone can be the coin, or the outcome is entered.

use leptos::prelude::*;

use super::draft;
use crate::device::{toss_coin, Face};
use crate::game::entry::Toss;
use crate::game::Kind;
use crate::rules::Team;
use crate::ui::part::team_mark::TeamMark;
use crate::ui::session::use_session;
use crate::ui::text::team_name;
use crate::ui::text_before as text;

/// What a captain can choose (7.1.2).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Choice {
    /// To serve first.
    Serve,
    /// To receive first.
    Receive,
    /// The side left of the stand.
    Left,
    /// The side right of the stand.
    Right,
}

impl Choice {
    const ALL: [Choice; 4] = [Choice::Serve, Choice::Receive, Choice::Left, Choice::Right];

    fn is_side(self) -> bool {
        matches!(self, Choice::Left | Choice::Right)
    }

    /// Who serves first, if `team` chooses so.
    fn first_service(self, team: Team) -> Option<Team> {
        match self {
            Choice::Serve => Some(team),
            Choice::Receive => Some(team.other()),
            Choice::Left | Choice::Right => None,
        }
    }

    /// Who starts on the left, if `team` chooses so.
    fn left(self, team: Team) -> Option<Team> {
        match self {
            Choice::Left => Some(team),
            Choice::Right => Some(team.other()),
            Choice::Serve | Choice::Receive => None,
        }
    }
}

/// How far a toss has come.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
struct Coin {
    /// Whose side of the coin is heads.
    heads: Option<Team>,
    /// What fell.
    fell: Option<Face>,
    /// What the winner chose.
    first: Option<Choice>,
    /// What the loser chose of the rest.
    second: Option<Choice>,
}

impl Coin {
    fn winner(self) -> Option<Team> {
        let heads = self.heads?;
        Some(match self.fell? {
            Face::Heads => heads,
            Face::Tails => heads.other(),
        })
    }

    fn outcome(self) -> Option<Toss> {
        let winner = self.winner()?;
        let (first, second) = (self.first?, self.second?);
        let loser = winner.other();
        Some(Toss {
            first_service: first
                .first_service(winner)
                .or_else(|| second.first_service(loser))?,
            left: first.left(winner).or_else(|| second.left(loser))?,
        })
    }

    /// What must outlive a reload: a coin that fell is not tossed again.
    fn written(self, set: u8) -> String {
        let heads = self.heads.map_or("-", Team::letter);
        let fell = match self.fell {
            Some(Face::Heads) => "H",
            Some(Face::Tails) => "T",
            None => "-",
        };
        format!("{set} {heads} {fell}")
    }

    fn read(text: &str, set: u8) -> Option<Coin> {
        let mut words = text.split(' ');
        (words.next()?.parse() == Ok(set)).then_some(())?;
        let heads = match words.next()? {
            "A" => Some(Team::A),
            "B" => Some(Team::B),
            _ => None,
        };
        let fell = match words.next()? {
            "H" => Some(Face::Heads),
            "T" => Some(Face::Tails),
            _ => None,
        };
        Some(Coin {
            heads,
            fell,
            ..Coin::default()
        })
    }
}

/// The toss for the set to come.
#[component]
pub(crate) fn TossCard() -> impl IntoView {
    let session = use_session();
    let given = Memo::new(move |_| {
        let state = session.state();
        Some(Toss {
            first_service: state.opener_to_come()?,
            left: state.left_to_come()?,
        })
    });
    let again = RwSignal::new(false);
    move || match given.get().filter(|_| !again.get()) {
        Some(toss) => view! {
            <div class="stack">
                <CourtSketch toss />
                <button type="button" class="button" on:click=move |_| again.set(true)>
                    {text::TOSS_AGAIN}
                </button>
            </div>
        }
        .into_any(),
        None => view! { <TossNow done=Callback::new(move |()| again.set(false)) /> }.into_any(),
    }
}

#[component]
fn TossNow(done: Callback<()>) -> impl IntoView {
    let session = use_session();
    let id = untrack(|| session.id()).unwrap_or_default();
    let set = session.state_now().set_at_hand();
    let kept = draft::kept(&id, "toss").and_then(|text| Coin::read(&text, set));
    let coin = RwSignal::new(kept.unwrap_or_default());
    let id = StoredValue::new(id);
    let by_hand = RwSignal::new(false);
    let no_coin = RwSignal::new(false);

    let choose_again = move |_| {
        coin.update(|c| {
            c.first = None;
            c.second = None;
        });
    };
    let keep = move || {
        let text = coin.with_untracked(|c| c.written(set));
        id.with_value(|id| draft::keep(id, "toss", &text));
    };
    let record = Callback::new(move |(expected, toss): (u32, Toss)| {
        if session.tell_as(expected, Kind::Toss(toss)) {
            id.with_value(|id| draft::drop(id, "toss"));
            done.run(());
        }
    });
    let give_heads = move |team: Team| {
        coin.update(|c| c.heads = Some(team));
        keep();
    };
    let throw = move |_| match toss_coin() {
        Ok(face) => {
            coin.update(|c| c.fell = Some(face));
            keep();
        }
        Err(_) => {
            no_coin.set(true);
            by_hand.set(true);
        }
    };

    let who_is_heads = move || {
        let heads = coin.with(|c| c.heads);
        let one = |team: Team| {
            let name = team_name(&session.state(), team);
            let words = text::gets_heads(&name);
            view! {
                <button
                    type="button"
                    class="button big-choice"
                    aria-pressed=(heads == Some(team)).to_string()
                    on:click=move |_| give_heads(team)
                >
                    <TeamMark team />
                    <span>{words}</span>
                </button>
            }
        };
        view! {
            <p>{text::WHO_IS_HEADS}</p>
            <div class="pair">{Team::BOTH.map(one).collect_view()}</div>
            {heads.map(|team| {
                let state = session.state();
                let sides = text::coin_sides(
                    &team_name(&state, team),
                    &team_name(&state, team.other()),
                );
                view! {
                    <p class="muted">{sides}</p>
                    <button
                        id="toss-coin"
                        type="button"
                        class="button primary"
                        on:click=throw
                    >
                        {text::TOSS_THE_COIN}
                    </button>
                }
            })}
            <button type="button" class="button quiet" on:click=move |_| by_hand.set(true)>
                {text::TOSSED_ALREADY}
            </button>
        }
        .into_any()
    };
    let choices = move |winner: Team, face: Face| {
        let state = session.state();
        let won = text::won_the_toss(&team_name(&state, winner));
        let Coin { first, second, .. } = coin.get();
        let pick = move |choice: Choice| {
            coin.update(|c| match c.first {
                None => c.first = Some(choice),
                Some(_) => c.second = Some(choice),
            });
        };
        let offer = move |of: Vec<Choice>| {
            of.into_iter()
                .map(|choice| {
                    view! {
                        <button
                            type="button"
                            class="button big-choice"
                            on:click=move |_| pick(choice)
                        >
                            {text::toss_choice(choice)}
                        </button>
                    }
                })
                .collect_view()
        };
        let question = match (first, second) {
            (None, _) => Some((winner, Choice::ALL.to_vec())),
            (Some(first), None) => {
                let rest = Choice::ALL
                    .into_iter()
                    .filter(|c| c.is_side() != first.is_side());
                Some((winner.other(), rest.collect()))
            }
            (Some(_), Some(_)) => None,
        };
        let said = first.map(|c| text::chose(&team_name(&state, winner), c));
        view! {
            <p class="coin" role="status">
                <span class="coin-face">{text::face(face)}</span>
                <span class="coin-won">{won}</span>
            </p>
            {said.map(|said| view! { <p>{said}</p> })}
            {question.map(|(team, of)| view! {
                <p><strong>{text::what_does_choose(&team_name(&state, team))}</strong></p>
                <div class="pair">{offer(of)}</div>
            })}
            {coin.get().outcome().map(|toss| view! { <Record toss record /> })}
            {first.is_some().then(|| view! {
                <button type="button" class="button quiet" on:click=choose_again>
                    {text::CHOOSE_AGAIN}
                </button>
            })}
            {first.is_none().then(|| view! {
                <button type="button" class="button quiet" on:click=move |_| by_hand.set(true)>
                    {text::TOSSED_ALREADY}
                </button>
            })}
        }
        .into_any()
    };
    view! {
        <div class="stack toss">
            {move || no_coin.get().then(|| view! {
                <p class="sentence warn" role="alert">{text::NO_COIN}</p>
            })}
            {move || {
                if by_hand.get() {
                    let coin_instead = move |_| by_hand.set(false);
                    view! {
                        <ByHand record />
                        {(!no_coin.get()).then(|| view! {
                            <button type="button" class="button quiet" on:click=coin_instead>
                                {text::USE_THE_COIN}
                            </button>
                        })}
                    }
                    .into_any()
                } else {
                    let Coin { fell, .. } = coin.get();
                    match (coin.get().winner(), fell) {
                        (Some(winner), Some(face)) => choices(winner, face),
                        _ => who_is_heads(),
                    }
                }
            }}
        </div>
    }
}

/// The outcome of a toss that was made with a coin of metal.
#[component]
fn ByHand(record: Callback<(u32, Toss)>) -> impl IntoView {
    let session = use_session();
    let serves = RwSignal::new(None::<Team>);
    let left = RwSignal::new(None::<Team>);
    let ask = move |question: &'static str, answer: RwSignal<Option<Team>>| {
        let one = move |team: Team| {
            view! {
                <button
                    type="button"
                    class="button big-choice"
                    aria-pressed=move || (answer.get() == Some(team)).to_string()
                    on:click=move |_| answer.set(Some(team))
                >
                    <TeamMark team />
                    <span>{move || team_name(&session.state(), team)}</span>
                </button>
            }
        };
        view! {
            <fieldset>
                <legend>{question}</legend>
                <div class="pair">{Team::BOTH.map(one).collect_view()}</div>
            </fieldset>
        }
    };
    view! {
        {ask(text::WHO_SERVES_FIRST, serves)}
        {ask(text::WHO_IS_LEFT, left)}
        {move || {
            let toss = Toss { first_service: serves.get()?, left: left.get()? };
            Some(view! { <Record toss record /> })
        }}
    }
}

/// The outcome drawn, and the button that records it.
#[component]
fn Record(toss: Toss, record: Callback<(u32, Toss)>) -> impl IntoView {
    let session = use_session();
    let button = move || {
        let expected = session.next();
        view! {
            <button
                id="record-toss"
                type="button"
                class="button primary"
                on:click=move |_| record.run((expected, toss))
            >
                {text::RECORD_TOSS}
            </button>
        }
    };
    view! {
        <CourtSketch toss />
        {button}
    }
}

/// The court as seen from the stand: who is where, who serves.
#[component]
pub(crate) fn CourtSketch(toss: Toss) -> impl IntoView {
    let session = use_session();
    let half = move |team: Team| {
        let serves = toss.first_service == team;
        let class = match team {
            Team::A => "sketch-half team-a",
            Team::B => "sketch-half team-b",
        };
        view! {
            <div class=class>
                <TeamMark team />
                <span class="sketch-name">{move || team_name(&session.state(), team)}</span>
                {serves.then(|| view! { <span class="sketch-serves">{text::SERVES_FIRST}</span> })}
            </div>
        }
    };
    view! {
        <figure class="sketch">
            <div class="sketch-court">
                {half(toss.left)}
                <div class="sketch-net" aria-hidden="true"></div>
                {half(toss.left.other())}
            </div>
            <figcaption class="muted">{text::SEEN_FROM_THE_STAND}</figcaption>
        </figure>
    }
}
