//! The team lists (4.1), by number pad.

use std::sync::Arc;

use leptos::prelude::*;

use super::sign::ListSignatures;
use super::team_tabs::{OtherTeam, TeamTabs};
use crate::memo::Memo;
use crate::session::use_session;
use crate::widgets::number_pad::NumberPad;
use crate::widgets::unfold::Unfold;
use app::drafts::Draft;
use game::entry::{Player, Staff, TeamList};
use game::{list_lacks, Kind, Refusal};
use rules::{Shirt, Team};
use text::setup as words;

/// Who may sit on the bench beside the players (4.1.1), as the log names them.
const STAFF: [&str; 4] = ["coach", "assistant coach", "therapist", "doctor"];

/// Sets or takes a mark of a player.
type Mark = fn(&mut Player);

/// The lists of both teams, one at a time.
#[component]
pub(super) fn TeamListsCard() -> impl IntoView {
    let session = use_session();
    let has_list = move |team: Team| session.state().team(team).list.is_some();
    let missing = |team: &Team| session.state_now().team(*team).list.is_none();
    let team = RwSignal::new(Team::BOTH.into_iter().find(missing).unwrap_or(Team::A));
    view! {
        <div class="stack">
            <TeamTabs team done=Callback::new(has_list) label=words::whose_list() />
            {move || view! { <OneList team=team.get() /> }}
            <OtherTeam team done=Callback::new(has_list) />
        </div>
    }
}

/// One team's list: what was handed in, or the editor.
#[component]
fn OneList(team: Team) -> impl IntoView {
    let session = use_session();
    let given = Memo::new(move |_| session.state().team(team).list.clone());
    // The list that is being changed; once another one was handed in, the editing is over.
    let editing = RwSignal::new(None::<Arc<TeamList>>);
    move || match given.get() {
        Some(list) if editing.with(|e| e.as_ref() != Some(&list)) => {
            let words = words::list_in_short(&list);
            let numbers = list
                .players
                .iter()
                .map(|p| view! { <li class="chip tabular">{words::player(p)}</li> })
                .collect_view();
            view! {
                <div class="stack">
                    <p class="mark-ok">{words}</p>
                    <ul class="chips">{numbers}</ul>
                    {list_lacks(&session.state(), team)
                        .into_iter()
                        .map(|lack| view! { <p class="sentence warn">{words::list_lacks(lack)}</p> })
                        .collect_view()}
                    <button
                        type="button"
                        class="button"
                        on:click=move |_| editing.set(Some(list.clone()))
                    >
                        {words::change_list()}
                    </button>
                    <ListSignatures team />
                </div>
            }
            .into_any()
        }
        before => view! { <ListEditor team before /> }.into_any(),
    }
}

#[component]
fn ListEditor(
    team: Team,
    /// The list handed in before.
    before: Option<Arc<TeamList>>,
) -> impl IntoView {
    let session = use_session();
    let id = StoredValue::new(untrack(|| session.id()).unwrap_or_default());
    let kept = id.with_value(|id| device::settings().drafts(id).entry(Draft::TeamList(team)));
    let list = RwSignal::new(match (kept, before) {
        (Some(Kind::TeamList(list)), _) => list,
        (_, Some(list)) => TeamList::clone(&list),
        _ => TeamList {
            team,
            players: Vec::new(),
            staff: Vec::new(),
        },
    });
    let refused = RwSignal::new(None::<(Refusal, TeamList)>);
    let chosen = RwSignal::new(None::<Shirt>);
    let take = move |changed: TeamList| {
        id.with_value(|id| {
            device::settings()
                .drafts(id)
                .keep_entry(Draft::TeamList(team), Kind::TeamList(changed.clone()))
        });
        list.set(changed);
        refused.set(None);
    };
    // Whatever the core would object to is said before it stands in the list.
    // What was written down anyway is not objected to once more.
    let try_take = move |changed: TeamList| {
        let may = |list: TeamList| session.check(&Kind::TeamList(list));
        match may(changed.clone()) {
            Err(why) if may(list.get_untracked()).as_ref() != Err(&why) => {
                refused.set(Some((why, changed)));
            }
            _ => take(changed),
        }
    };
    let change = move |with: &dyn Fn(&mut TeamList)| {
        let mut changed = list.get_untracked();
        with(&mut changed);
        rules::sort_by_key(&mut changed.players, |p| p.number);
        try_take(changed);
    };
    let add = move |numbers: &[Shirt]| {
        change(&|list| {
            let new = numbers.iter().map(|&number| Player {
                number,
                name: None,
                captain: false,
                libero: false,
            });
            list.players.extend(new);
        });
    };
    let add_one = Callback::new(move |number: Shirt| {
        // Typed again: that player is meant.
        if list.with_untracked(|l| l.player(number).is_some()) {
            chosen.set(Some(number));
        } else {
            add(&[number]);
        }
    });
    // Twelve are the list of a school team (common practice, no source), or fewer where fewer may be on it.
    let roster = session.state_now().rules().roster;
    let lowest = roster.min_number.max(1);
    let highest = (lowest + u16::from(roster.max.min(12)) - 1).min(roster.max_number);
    let first_numbers = move |_| {
        let new: Vec<Shirt> = (lowest..=highest)
            .map(Shirt)
            .filter(|&n| list.with_untracked(|l| l.player(n).is_none()))
            .collect();
        add(&new);
    };
    let on_player = Callback::new(move |(number, with): (Shirt, Mark)| {
        change(&|list| {
            if let Some(player) = list.players.iter_mut().find(|p| p.number == number) {
                with(player);
            }
        });
    });
    let name_player = Callback::new(move |(number, name): (Shirt, String)| {
        change(&|list| {
            if let Some(player) = list.players.iter_mut().find(|p| p.number == number) {
                let name = name.trim();
                player.name = (!name.is_empty()).then(|| name.to_owned());
            }
        });
    });
    let remove = Callback::new(move |number: Shirt| {
        chosen.set(None);
        change(&|list| list.players.retain(|p| p.number != number));
    });
    let hand_in = move |expected: u32| {
        if session.submit_at(expected, Kind::TeamList(list.get_untracked())) {
            id.with_value(|id| device::settings().drafts(id).forget(Draft::TeamList(team)));
        }
    };

    let chip = move |player: &Player| {
        let number = player.number;
        view! {
            <li>
                <button
                    type="button"
                    class="chip tabular"
                    aria-label=words::player_in_full(player)
                    aria-pressed=move || (chosen.get() == Some(number)).to_string()
                    on:click=move |_| {
                        chosen.update(|c| *c = (*c != Some(number)).then_some(number));
                    }
                >
                    {words::player(player)}
                </button>
            </li>
        }
    };
    let objection = move || {
        let (why, wanted) = refused.get()?;
        let says = words::refusal(&text::refusal(&why, (&*session.state()).into()), why.rule());
        let anyway = (!why.is_final()).then(|| {
            view! {
                <button type="button" class="button" on:click=move |_| take(wanted.clone())>
                    {words::write_it_anyway()}
                </button>
            }
        });
        Some(view! {
            <div class="sentence bad" role="alert">
                <p>{says}</p>
                {anyway}
            </div>
        })
    };
    let hint = move || {
        list.with(|l| {
            let captain = l.players.iter().any(|p| p.captain);
            (!l.players.is_empty() && !captain).then_some(words::mark_the_captain())
        })
    };
    let nobody = move || list.with(|l| l.players.is_empty());
    let staff = move |role: &'static str| {
        view! { <StaffRow role list on_change=Callback::new(move |l: TeamList| try_take(l)) /> }
    };
    view! {
        <div class="stack list-editor">
            <NumberPad label=words::shirt_numbers() on_take=add_one />
            <div class="stack">
            {objection}
            {move || nobody().then(|| view! {
                <button type="button" class="button" on:click=first_numbers>
                    {words::first_numbers(Shirt(lowest), Shirt(highest))}
                </button>
            })}
            <ul class="chips" aria-label=words::players_on_the_list()>
                {move || list.with(|l| l.players.iter().map(chip).collect_view())}
            </ul>
            {move || {
                let number = chosen.get()?;
                let player = list.with(|l| l.player(number).cloned())?;
                Some(view! { <OnePlayer player on_player name_player remove /> })
            }}
            <p class="muted">{hint}</p>
            <Unfold
                words=words::staff_label()
                class="button quiet"
                inside=move |()| {
                    view! { <div class="stack">{STAFF.map(staff).collect_view()}</div> }.into_any()
                }
            />
            {move || {
                let expected = session.next();
                view! {
                    <button
                        id=format!("hand-in-list-{team}")
                        type="button"
                        class="button primary"
                        disabled=nobody
                        on:click=move |_| hand_in(expected)
                    >
                        {move || list.with(|l| words::hand_in_list(l.players.len()))}
                    </button>
                }
            }}
            </div>
        </div>
    }
}

/// The marks and the name of the player that was tapped.
#[component]
fn OnePlayer(
    player: Player,
    on_player: Callback<(Shirt, Mark)>,
    name_player: Callback<(Shirt, String)>,
    remove: Callback<Shirt>,
) -> impl IntoView {
    let session = use_session();
    let Player {
        number,
        name,
        captain,
        libero,
    } = player;
    let with_liberos = session.state_now().rules().liberos > 0;
    let id = format!("name-{number}");
    view! {
        <fieldset class="one-player stack">
            <legend>{words::number_is(number)}</legend>
            <div class="row">
                <button
                    type="button"
                    class="button"
                    aria-pressed=captain.to_string()
                    on:click=move |_| on_player.run((number, |p| p.captain = !p.captain))
                >
                    {words::captain()}
                </button>
                {with_liberos.then(|| view! {
                    <button
                        type="button"
                        class="button"
                        aria-pressed=libero.to_string()
                        on:click=move |_| on_player.run((number, |p| p.libero = !p.libero))
                    >
                        {words::libero()}
                    </button>
                })}
                <button type="button" class="button" on:click=move |_| remove.run(number)>
                    {words::remove()}
                </button>
            </div>
            <div class="field">
                <label for=id.clone()>{words::name_optional()}</label>
                <input
                    id=id
                    type="text"
                    maxlength="60"
                    autocomplete="off"
                    prop:value=name.unwrap_or_default()
                    on:change:target=move |ev| name_player.run((number, ev.target().value()))
                />
            </div>
        </fieldset>
    }
}

/// One member of the staff: there or not, named or not.
#[component]
fn StaffRow(
    role: &'static str,
    list: RwSignal<TeamList>,
    on_change: Callback<TeamList>,
) -> impl IntoView {
    let there = Memo::new(move |_| list.with(|l| l.staff.iter().find(|s| s.role == role).cloned()));
    let set = move |member: Option<Option<String>>| {
        let mut changed = list.get_untracked();
        changed.staff.retain(|s| s.role != role);
        if let Some(name) = member {
            changed.staff.push(Staff {
                role: role.to_owned(),
                name,
            });
        }
        rules::sort_by_key(&mut changed.staff, |s| {
            STAFF.iter().position(|r| *r == s.role)
        });
        on_change.run(changed);
    };
    let name = move |typed: String| {
        let typed = typed.trim();
        set(Some((!typed.is_empty()).then(|| typed.to_owned())));
    };
    view! {
        <div class="staff-row">
            <label class="check">
                <input
                    type="checkbox"
                    prop:checked=move || there.get().is_some()
                    on:change:target=move |ev| set(ev.target().checked().then_some(None))
                />
                <span>{words::staff(role)}</span>
            </label>
            {move || there.get().map(|member| view! {
                <input
                    type="text"
                    maxlength="60"
                    autocomplete="off"
                    aria-label=words::staff_name(role)
                    placeholder=words::name_optional()
                    prop:value=member.name.unwrap_or_default()
                    on:change:target=move |ev| name(ev.target().value())
                />
            })}
        </div>
    }
}
