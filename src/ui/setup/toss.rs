//! The toss (7.1): the phone can be the coin, or the outcome is entered.

use leptos::prelude::*;

use super::team_tabs::choose_team;
use crate::memo::Memo;
use crate::session::use_session;
use crate::widgets::team_mark::TeamMark;
use app::drafts::Draft;
use app::machine::Face;
use device::toss_coin;
use game::entry::{About, Toss, Won};
use game::{Choice, Choosing, Kind};
use rules::Team;
use text::setup as words;
use text::team_name;

/// How far a toss has come.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
struct Coin {
    /// Whose side of the coin is heads.
    heads: Option<Team>,
    /// What fell.
    fell: Option<Face>,
    /// What the captains chose, once it fell.
    chosen: Option<Choosing>,
}

impl Coin {
    /// The choices, once somebody has won.
    fn choosing(self) -> Option<Choosing> {
        let heads = self.heads?;
        let winner = match self.fell? {
            Face::Heads => heads,
            Face::Tails => heads.other(),
        };
        Some(self.chosen.unwrap_or(Choosing::after(winner)))
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
            chosen: None,
        })
    }
}

/// The toss for the set to come.
#[component]
pub(crate) fn TossCard() -> impl IntoView {
    let session = use_session();
    let given = Memo::new(move |_| {
        let state = session.state();
        let known = || Some(Toss::new(state.opener_to_come()?, state.left_to_come()?));
        state.toss_to_come().or_else(known)
    });
    let again = RwSignal::new(false);
    move || match given.get().filter(|_| !again.get()) {
        Some(toss) => view! {
            <div class="stack">
                <CourtSketch toss />
                {toss.chosen().map(|(team, choice)| {
                    let name = team_name(&session.state(), team);
                    view! { <p>{words::won_and_chose(&name, choice)}</p> }
                })}
                <button type="button" class="button" on:click=move |_| again.set(true)>
                    {words::toss_again()}
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
    let kept = device::settings()
        .drafts(&id)
        .get(Draft::Toss)
        .and_then(|text| Coin::read(&text, set));
    let coin = RwSignal::new(kept.unwrap_or_default());
    let id = StoredValue::new(id);
    // Sets were played here before anybody asked for a toss: what is seen on court is all there is.
    let any = Kind::FirstService {
        team: Team::A,
        left: Team::A,
    };
    let as_seen = untrack(|| session.check(&any).is_ok());
    let by_hand = RwSignal::new(as_seen);
    let no_coin = RwSignal::new(false);

    let choose_again = move |_| coin.update(|c| c.chosen = None);
    let keep = move || {
        let text = coin.with_untracked(|c| c.written(set));
        id.with_value(|id| device::settings().drafts(id).keep(Draft::Toss, &text));
    };
    let record = Callback::new(move |(expected, toss): (u32, Toss)| {
        let kind = match as_seen {
            true => Kind::FirstService {
                team: toss.first_service,
                left: toss.left,
            },
            false => Kind::Toss(toss),
        };
        if session.submit_at(expected, kind) {
            id.with_value(|id| device::settings().drafts(id).forget(Draft::Toss));
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
            let words = words::gets_heads(&name);
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
            <p>{words::who_is_heads()}</p>
            <div class="pair">{Team::BOTH.map(one).collect_view()}</div>
            {heads.map(|team| {
                let state = session.state();
                let sides = words::coin_sides(
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
                        {words::toss_the_coin()}
                    </button>
                }
            })}
            {tossed_already(by_hand)}
        }
        .into_any()
    };
    let choices = move |choosing: Choosing, face: Face| {
        let state = session.state();
        let offer = move |choice: Choice| {
            let pick = move |_| coin.update(|c| c.chosen = Some(choosing.with(choice)));
            view! {
                <button type="button" class="button big-choice" on:click=pick>
                    {words::toss_choice(choice)}
                </button>
            }
        };
        let first = choosing.first();
        view! {
            <p class="coin" role="status">
                <span class="coin-face">{words::face(face)}</span>
                <span class="coin-won">
                    {words::won_the_toss(&team_name(&state, choosing.winner()))}
                </span>
            </p>
            {first.map(|(team, choice)| view! {
                <p>{words::chose(&team_name(&state, team), choice)}</p>
            })}
            {choosing.asks().map(|(team, of)| view! {
                <p><strong>{words::what_does_choose(&team_name(&state, team))}</strong></p>
                <div class="pair">{of.into_iter().map(offer).collect_view()}</div>
            })}
            {choosing.outcome().map(|toss| view! { <Record as_seen=false toss record /> })}
            {match first {
                Some(_) => view! {
                    <button type="button" class="button quiet" on:click=choose_again>
                        {words::choose_again()}
                    </button>
                }
                .into_any(),
                None => tossed_already(by_hand),
            }}
        }
        .into_any()
    };
    view! {
        <div class="stack toss">
            {move || no_coin.get().then(|| view! {
                <p class="sentence warn" role="alert">{words::no_coin()}</p>
            })}
            {move || {
                if by_hand.get() {
                    let coin_instead = move |_| by_hand.set(false);
                    view! {
                        {as_seen.then(|| view! { <p>{words::as_seen()}</p> })}
                        <ByHand as_seen record />
                        {(!no_coin.get() && !as_seen).then(|| view! {
                            <button type="button" class="button quiet" on:click=coin_instead>
                                {words::use_the_coin()}
                            </button>
                        })}
                    }
                    .into_any()
                } else {
                    let coin = coin.get();
                    match (coin.choosing(), coin.fell) {
                        (Some(choosing), Some(face)) => choices(choosing, face),
                        _ => who_is_heads(),
                    }
                }
            }}
        </div>
    }
}

/// To the outcome of a coin of metal.
fn tossed_already(by_hand: RwSignal<bool>) -> AnyView {
    view! {
        <button type="button" class="button quiet" on:click=move |_| by_hand.set(true)>
            {words::tossed_already()}
        </button>
    }
    .into_any()
}

/// The outcome of a toss that was made with a coin of metal.
#[component]
fn ByHand(
    /// Nobody tossed, so nobody chose.
    as_seen: bool,
    record: Callback<(u32, Toss)>,
) -> impl IntoView {
    let session = use_session();
    let serves = RwSignal::new(None::<Team>);
    let left = RwSignal::new(None::<Team>);
    let won = RwSignal::new(None::<Won>);
    let ask = |question: &'static str, answers: AnyView| {
        view! {
            <fieldset>
                <legend>{question}</legend>
                {answers}
            </fieldset>
        }
        .into_any()
    };
    // What was chosen follows from the outcome, so only what fits it is offered.
    let who_chose = move |toss: Toss| {
        let one = |(by, chose): (Team, About)| {
            let own = Won { by, chose };
            let words = words::chose(&team_name(&session.state(), by), toss.choice_of(own));
            view! {
                <button
                    type="button"
                    class="button"
                    aria-pressed=move || (won.get() == Some(own)).to_string()
                    on:click=move |_| won.update(|w| *w = (*w != Some(own)).then_some(own))
                >
                    {words}
                </button>
            }
        };
        let all = Team::BOTH.map(|by| [About::Service, About::Side].map(|chose| one((by, chose))));
        view! { <div class="pair">{all}</div> }.into_any()
    };
    view! {
        {ask(words::who_serves_first(), choose_team(serves))}
        {ask(words::who_is_left(), choose_team(left))}
        {move || {
            let toss = Toss::new(serves.get()?, left.get()?);
            Some(view! {
                {(!as_seen).then(|| ask(words::who_chose(), who_chose(toss)))}
                {move || view! { <Record as_seen toss=Toss { won: won.get(), ..toss } record /> }}
            })
        }}
    }
}

/// The outcome drawn, and the button that records it.
#[component]
fn Record(as_seen: bool, toss: Toss, record: Callback<(u32, Toss)>) -> impl IntoView {
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
                {if as_seen { words::record_as_seen() } else { words::record_toss() }}
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
                {serves.then(|| view! { <span class="sketch-serves">{words::serves_first()}</span> })}
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
            <figcaption class="muted">{words::seen_from_the_stand()}</figcaption>
        </figure>
    }
}
