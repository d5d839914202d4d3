//! What is searched for, what is left out, and what the matches are sorted by.

use leptos::prelude::*;

use super::button;
use super::state::{Desk, View};
use super::work::Work;
use crate::memo::Memo;
use crate::widgets::text_field::{named, text_field, FieldOptions, InputKind};
use crate::widgets::unfold::Unfold;
use app::desk::{Column, Filter, Order, Show};
use text::desk as words;
use text::desk_work as more;

/// The bar above the matches.
pub fn filter_bar(work: Work, view: View) -> AnyView {
    let Work { desk, shell, .. } = work;
    let choices = move || {
        view! {
            <div class="desk-choices">
                {pools(desk)}
                {which(desk)}
                {(view == View::Cards).then(|| sorting(desk))}
            </div>
        }
        .into_any()
    };
    let count = move || {
        if let Some((read, all)) = desk.progress.get() {
            return more::reading(read, all);
        }
        let all = desk.rows().map_or(0, |rows| rows.len());
        more::how_many(desk.shown().len(), all)
    };
    let as_one = move |of: View, say: &'static str| {
        view! {
            <button
                type="button"
                class="button"
                aria-pressed=(view == of).to_string()
                on:click=move |_| desk.show_as(of)
            >
                {say}
            </button>
        }
    };
    view! {
        <div class="desk-filter">
            {search_field(desk)}
            {move || {
                if shell.is_wide() {
                    choices()
                } else {
                    let inside = Callback::new(move |()| choices());
                    view! { <Unfold words=more::filter_and_sort() inside /> }.into_any()
                }
            }}
            <div class="row">
                {as_one(View::Cards, more::as_list())}
                {as_one(View::Table, more::as_table())}
                <button
                    type="button"
                    class="button desk-keys-button"
                    id="desk-keys"
                    aria-keyshortcuts="?"
                    on:click=move |_| work.keys.set(true)
                >
                    {more::keys()}
                </button>
            </div>
            <p class="muted" id="desk-count" role="status">{count}</p>
        </div>
        {move || {
            let nothing = desk.filter.read().is_set() && desk.shown().is_empty();
            nothing.then(|| {
                let all = move || desk.filter.set(Filter::default());
                view! {
                    <div class="card stack" id="desk-nothing">
                        <p>{more::nothing_fits()}</p>
                        {button(more::show_everything(), "button", Box::new(all))}
                    </div>
                }
            })
        }}
    }
    .into_any()
}

/// The field for words to search for.
pub fn search_field(desk: Desk) -> AnyView {
    let typed = RwSignal::new(desk.filter.with_untracked(|f| f.words.clone()));
    // What clears the filter clears the field.
    Effect::new(move |_| {
        let words = desk.filter.with(|f| f.words.clone());
        if typed.read_untracked() != words {
            typed.set(words);
        }
    });
    let changed = Callback::new(move |()| {
        let words = typed.get_untracked();
        desk.filter.update(|filter| filter.words = words);
    });
    let options = FieldOptions {
        changed: Some(changed),
        ..FieldOptions::default()
    };
    text_field(
        "desk-find",
        named(more::search()),
        InputKind::Search,
        typed,
        options,
    )
}

fn pools(desk: Desk) -> AnyView {
    let pools = Memo::new(move |_| {
        let rows = desk.rows().unwrap_or_default();
        let mut pools: Vec<String> = rows.iter().map(|row| row.group.clone()).collect();
        pools.sort_unstable();
        pools.dedup();
        pools
    });
    let options = move || {
        let all = std::iter::once((String::new(), more::all_pools().to_owned()));
        // The place in the list is the value: a pool may have any name, or none.
        let each = pools.get().into_iter().enumerate().map(|(place, pool)| {
            let name = match pool.as_str() {
                "" => words::no_competition().to_owned(),
                _ => pool,
            };
            (place.to_string(), name)
        });
        all.chain(each).collect()
    };
    let chosen = move || {
        let pool = desk.filter.with(|filter| filter.pool.clone());
        let place = pool.and_then(|pool| pools.read().iter().position(|p| *p == pool));
        place.map_or_else(String::new, |place| place.to_string())
    };
    let choose = move |value: &str| {
        let place = value.parse::<usize>().ok();
        let pool = place.and_then(|place| pools.read_untracked().get(place).cloned());
        desk.filter.update(|filter| filter.pool = pool);
    };
    one_of("desk-pool", more::pool(), options, chosen, choose)
}

fn which(desk: Desk) -> AnyView {
    let options = || {
        let each = Show::ALL.map(|show| (show.code().to_owned(), more::show(show).to_owned()));
        Vec::from(each)
    };
    let chosen = move || desk.filter.with(|filter| filter.show.code().to_owned());
    let choose = move |value: &str| {
        let show = Show::from_code(value).unwrap_or_default();
        desk.filter.update(|filter| filter.show = show);
    };
    one_of("desk-show", more::show_which(), options, chosen, choose)
}

fn sorting(desk: Desk) -> AnyView {
    let options = || {
        let each = Column::ALL.map(|by| (by.code().to_owned(), more::column(by).to_owned()));
        Vec::from(each)
    };
    let chosen = move || desk.order.get().by.code().to_owned();
    let choose = move |value: &str| {
        desk.sort(Column::from_code(value).map_or_else(Order::default, Order::by));
    };
    one_of("desk-sort", more::sort_by(), options, chosen, choose)
}

/// A choice of one among several: the code of each, and its words.
fn one_of(
    id: &'static str,
    label: &'static str,
    options: impl Fn() -> Vec<(String, String)> + Send + 'static,
    chosen: impl Fn() -> String + Copy + Send + Sync + 'static,
    choose: impl Fn(&str) + 'static,
) -> AnyView {
    let options = move || {
        let each = options().into_iter().map(|(code, words)| {
            let own = code.clone();
            view! { <option value=code prop:selected=move || chosen() == own>{words}</option> }
        });
        each.collect_view()
    };
    view! {
        <div class="field">
            <label for=id>{label}</label>
            <select id=id on:change:target=move |ev| choose(&ev.target().value())>
                {options}
            </select>
        </div>
    }
    .into_any()
}
