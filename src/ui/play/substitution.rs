//! Who goes and who comes: only legal changes are offered, a tap on another one says why not.

use leptos::prelude::*;

use super::court::use_court;
use super::panel::Frame;
use crate::game::entry::{Change, Forced};
use crate::game::{say, Barred, Kind, OutFor, Refusal, State};
use crate::rules::{Shirt, Team};
use crate::ui::session::{use_session, Refused, Session};
use crate::ui::text;

const REASONS: [Option<Forced>; 4] = [
    None,
    Some(Forced::Injury),
    Some(Forced::Expelled),
    Some(Forced::Disqualified),
];

/// One request, as it is put together.
#[derive(Clone, Copy)]
struct Request {
    session: Session,
    team: Team,
    out: RwSignal<Option<Shirt>>,
    changes: RwSignal<Vec<Change>>,
    reason: RwSignal<Option<Forced>>,
}

impl Request {
    fn kind(self, changes: Vec<Change>) -> Kind {
        Kind::Substitution {
            team: self.team,
            changes,
            reason: self.reason.get(),
        }
    }

    /// What the core says to one more change in this request.
    fn may(self, change: Change) -> Result<(), Refusal> {
        let mut changes = self.changes.get();
        changes.push(change);
        match self.session.may(&self.kind(changes)) {
            // The part that is wrong is what was asked about.
            Err(Refusal::PartlyIllegal { because, .. }) => Err(*because),
            answer => answer,
        }
    }

    /// Why a player on court cannot go, if there is nobody to come.
    fn may_go(self, out: Shirt, bench: &[Shirt]) -> Result<(), Refusal> {
        let mut first = None;
        for &into in bench {
            match self.may(Change { out, into }) {
                Ok(()) => return Ok(()),
                Err(refusal) => {
                    first.get_or_insert(refusal);
                }
            }
        }
        Err(first.unwrap_or(Refusal::NoChange))
    }

    fn add(self, change: Change) {
        self.changes.update(|changes| changes.push(change));
        self.out.set(None);
    }

    /// Shows why a change is not offered, and the way past the advice.
    fn explain(self, why: Refusal, change: Option<Change>) {
        let mut changes = self.changes.get_untracked();
        changes.extend(change);
        let kind = Kind::Substitution {
            team: self.team,
            changes,
            reason: self.reason.get_untracked(),
        };
        self.session.refused().set(Some(Refused { kind, why }));
    }
}

/// Who is on court, place 1 first, and who is not, in order of the numbers.
fn players(state: &State, team: Team) -> (Vec<Shirt>, Vec<Shirt>) {
    let on_court: Vec<Shirt> = state
        .on_floor()
        .map(|play| play.sides[team].on_court().collect())
        .unwrap_or_default();
    let holds = |shirt: Shirt| {
        state
            .on_floor()
            .is_some_and(|play| play.sides[team].holds(shirt))
    };
    let mut bench: Vec<Shirt> = state
        .team(team)
        .list
        .iter()
        .flat_map(|list| list.players.iter().map(|p| p.number))
        .filter(|&shirt| !holds(shirt) && !state.team(team).is_libero(shirt))
        .collect();
    bench.sort_unstable();
    (on_court, bench)
}

/// The reason that the state already knows for a player who must leave.
fn known_reason(state: &State, team: Team) -> Option<(Shirt, Forced)> {
    let play = state.on_floor()?;
    play.sides[team].slots.iter().find_map(|slot| {
        let why = state.team(team).barred(slot.player, play.number)?;
        let reason = match why {
            Barred::Expelled => Forced::Expelled,
            Barred::Out(OutFor::Disqualified) => Forced::Disqualified,
            Barred::Out(OutFor::Exceptional | OutFor::Redesignated) => return None,
        };
        Some((slot.player, reason))
    })
}

/// The panel.
#[component]
pub fn Substitution(
    /// Whose.
    team: Team,
) -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let known = known_reason(&session.state_now(), team);
    let request = Request {
        session,
        team,
        out: RwSignal::new(known.map(|(player, _)| player)),
        changes: RwSignal::new(Vec::new()),
        reason: RwSignal::new(known.map(|(_, reason)| reason)),
    };
    let title = text::change_title(&text::team_name(&session.state_now(), team));
    let ready = Memo::new(move |_| !request.changes.read().is_empty());
    let record = move |_| {
        if session.tell(request.kind(request.changes.get_untracked())) {
            court.close_panel();
        }
    };
    view! {
        <Frame title>
            <Going request />
            <Coming request />
            <fieldset class="asked">
                <legend>{text::CHANGE_REASON}</legend>
                <div class="row">
                    {REASONS
                        .into_iter()
                        .map(|reason| {
                            view! {
                                <button
                                    type="button"
                                    class="button small"
                                    aria-pressed=move || {
                                        (request.reason.get() == reason).to_string()
                                    }
                                    on:click=move |_| request.reason.set(reason)
                                >
                                    {text::forced(reason)}
                                </button>
                            }
                        })
                        .collect_view()}
                </div>
            </fieldset>
            <Show when=move || ready.get()>
                <div class="panel-foot">
                    <Chosen request />
                    <button type="button" class="button primary" id="record-change" on:click=record>
                        {move || text::record_changes(request.changes.read().len())}
                    </button>
                </div>
            </Show>
        </Frame>
    }
}

/// The changes of this request so far.
#[component]
fn Chosen(request: Request) -> impl IntoView {
    view! {
        <ul class="row">
            <For
                each=move || request.changes.get()
                key=|change| (change.out, change.into)
                let:change
            >
                <li>
                    <button
                        type="button"
                        class="button small chosen-change"
                        aria-label=text::drop_change(&change)
                        on:click=move |_| {
                            request.changes.update(|all| all.retain(|c| *c != change));
                        }
                    >
                        {text::one_change(&change)}
                        <svg viewBox="0 0 24 24" aria-hidden="true" class="icon">
                            <path d="M6 6 L18 18 M18 6 L6 18" />
                        </svg>
                    </button>
                </li>
            </For>
        </ul>
    }
}

/// Who goes.
#[component]
fn Going(request: Request) -> impl IntoView {
    let numbers = Memo::new(move |_| {
        let (on_court, bench) = players(&request.session.state(), request.team);
        on_court
            .into_iter()
            .map(|out| (out, request.may_go(out, &bench).err()))
            .collect::<Vec<_>>()
    });
    view! {
        <fieldset class="asked">
            <legend>{text::WHO_GOES}</legend>
            <div class="numbers">
                {move || {
                    numbers
                        .get()
                        .into_iter()
                        .map(|(out, refusal)| {
                            let possible = refusal.is_none();
                            view! {
                                <button
                                    type="button"
                                    class="button number tabular"
                                    aria-label=text::goes_out(out)
                                    aria-pressed=move || {
                                        (request.out.get() == Some(out)).to_string()
                                    }
                                    aria-disabled=(!possible).to_string()
                                    on:click=move |_| {
                                        // Somebody who cannot go is asked about with the others.
                                        request.out.set(Some(out));
                                        if let Some(why) = refusal.clone() {
                                            if why == Refusal::NoChange {
                                                request.explain(why, None);
                                            }
                                        }
                                    }
                                >
                                    {out.to_string()}
                                </button>
                            }
                        })
                        .collect_view()
                }}
            </div>
        </fieldset>
    }
}

/// Who comes.
#[component]
fn Coming(request: Request) -> impl IntoView {
    let numbers = Memo::new(move |_| {
        let out = request.out.get()?;
        let (_, bench) = players(&request.session.state(), request.team);
        Some(
            bench
                .into_iter()
                .map(|into| {
                    (
                        Change { out, into },
                        request.may(Change { out, into }).err(),
                    )
                })
                .collect::<Vec<_>>(),
        )
    });
    let reason = Memo::new(move |_| {
        let all = numbers.get()?;
        let first = all.first()?.1.clone()?;
        // One sentence where it is the same for everybody.
        all.iter()
            .all(|(_, why)| why.is_some())
            .then(|| say(&first, &request.session.state()))
    });
    view! {
        <Show when=move || numbers.get().is_some()>
            <fieldset class="asked">
                <legend>{move || text::who_comes(request.out.get())}</legend>
                <div class="numbers">
                    {move || {
                        numbers
                            .get()
                            .unwrap_or_default()
                            .into_iter()
                            .map(|(change, refusal)| {
                                let possible = refusal.is_none();
                                view! {
                                    <button
                                        type="button"
                                        class="button number tabular"
                                        aria-label=text::comes_in(change.into)
                                        aria-disabled=(!possible).to_string()
                                        on:click=move |_| {
                                            match refusal.clone() {
                                                None => request.add(change),
                                                Some(why) => request.explain(why, Some(change)),
                                            }
                                        }
                                    >
                                        {change.into.to_string()}
                                    </button>
                                }
                            })
                            .collect_view()
                    }}
                </div>
                <p class="muted">{move || reason.get()}</p>
            </fieldset>
        </Show>
    }
}
