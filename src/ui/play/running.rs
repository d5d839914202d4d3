//! A match that is already being played when somebody begins to keep it: sets and score as they stand.

use leptos::prelude::*;

use super::consequence::Consequence;
use crate::memo::Memo;
use crate::session::use_session;
use crate::widgets::dialog::Drawer;
use crate::widgets::picker::{asked, teams};
use crate::widgets::text_field::{text_field, FieldOptions, InputKind};
use game::{Joined, Kind};
use rules::{Score, Team, MAX_SETS};

/// What was typed for team A and for team B.
type Typed = [RwSignal<String>; 2];

fn nothing_typed() -> Typed {
    [(); 2].map(|()| RwSignal::new(String::new()))
}

/// The score of two fields: none where both are empty.
///
/// # Errors
/// What to write instead.
fn score(typed: Typed) -> Result<Option<Score>, String> {
    let [a, b] = typed.map(|field| field.with(|words| words.trim().to_owned()));
    if a.is_empty() && b.is_empty() {
        return Ok(None);
    }
    match (a.parse(), b.parse()) {
        (Ok(a), Ok(b)) => Ok(Some(Score { a, b })),
        _ => Err(text::points_of_both().to_owned()),
    }
}

/// Opens the form, while nothing was played here.
#[component]
pub fn AlreadyRunning() -> impl IntoView {
    let session = use_session();
    let open = RwSignal::new(false);
    let board = Scoreboard::new();
    let possible = Memo::new(move |_| session.check(&one_point()).is_ok());
    view! {
        <Show when=move || possible.get()>
            <button type="button" class="button quiet" on:click=move |_| open.set(true)>
                {text::running_already()}
            </button>
        </Show>
        <Drawer open title=Signal::stored(text::running_already().to_owned())>
            <Form open board />
        </Drawer>
    }
}

/// The least that can stand on a scoreboard.
fn one_point() -> Kind {
    Kind::Joined(Joined {
        sets: Vec::new(),
        score: Some(Score { a: 1, b: 0 }),
        serving: None,
        left: None,
    })
}

/// What was read off the scoreboard so far. It outlives the form: the phone's back button is quickly pressed.
#[derive(Clone, Copy)]
struct Scoreboard {
    over: RwSignal<usize>,
    sets: [Typed; MAX_SETS as usize],
    now: Typed,
    serving: RwSignal<Option<Team>>,
    left: RwSignal<Option<Team>>,
}

impl Scoreboard {
    fn new() -> Scoreboard {
        Scoreboard {
            over: RwSignal::new(0),
            sets: [(); MAX_SETS as usize].map(|()| nothing_typed()),
            now: nothing_typed(),
            serving: RwSignal::new(None),
            left: RwSignal::new(None),
        }
    }
}

#[component]
fn Form(open: RwSignal<bool>, board: Scoreboard) -> impl IntoView {
    let session = use_session();
    let Scoreboard {
        over,
        sets,
        now,
        serving,
        left,
    } = board;
    let joined = Memo::new(move |_| {
        let over = sets.into_iter().take(over.get());
        let over = over.map(score).collect::<Result<Vec<_>, _>>();
        Ok::<_, String>(Joined {
            sets: over?.into_iter().flatten().collect(),
            score: score(now)?,
            serving: serving.get(),
            left: left.get(),
        })
    });
    let kind = Signal::derive(move || {
        let joined = joined.get().ok()?;
        (!joined.sets.is_empty() || joined.score.is_some()).then_some(Kind::Joined(joined))
    });
    let names = {
        let state = session.state_now();
        Team::BOTH.map(|team| text::team_name(&state, team))
    };
    let both = StoredValue::new(names);
    let fields = move |what: String, id: String, typed: Typed| {
        let one = |i: usize| {
            let label = both.with_value(|names| text::points_of(&what, &names[i]));
            text_field(
                &format!("{id}-{}", Team::BOTH[i].letter()),
                Signal::stored(label),
                InputKind::Whole,
                typed[i],
                FieldOptions::default(),
            )
        };
        view! { <div class="pair">{one(0)}{one(1)}</div> }.into_any()
    };
    let one_more = move |_| over.update(|over| *over += 1);
    let more = move || over.get() < sets.len();
    let done = Callback::new(move |()| open.set(false));
    view! {
        <p>{text::running_more()}</p>
        <div class="stack">
            <For
                each=move || 0..over.get()
                key=|i| *i
                children=move |i| fields(text::set_number(i as u8 + 1), format!("set-{}", i + 1), sets[i])
            />
            <Show when=more>
                <button type="button" class="button" on:click=one_more>
                    {move || text::set_is_over(over.get() as u8 + 1)}
                </button>
            </Show>
            {fields(text::score_now().to_owned(), "now".to_owned(), now)}
            <p class="muted">{text::score_now_empty()}</p>
            {asked(text::serves_next(), teams(serving))}
            {asked(text::stands_left(), teams(left))}
            {move || joined.get().err().map(|why| view! { <p class="sentence warn">{why}</p> })}
            <Consequence kind yes=Signal::stored(text::take_it_over().to_owned()) done />
        </div>
    }
}
