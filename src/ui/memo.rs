//! A value that is computed anew when what it reads has changed, and speaks only when it differs. It is leptos'
//! memo, compiled once for all types: of its own it has a copy for each, about 2.5 KB of the page.

#![expect(
    clippy::disallowed_types,
    reason = "leptos' memo is named here and nowhere else"
)]

use std::any::Any;
use std::marker::PhantomData;
use std::ops::Deref;
use std::sync::Arc;

use leptos::prelude::{Get, GetUntracked, Memo as Erased, Signal, Track};

/// The value, and how it is told from another one.
#[derive(Clone)]
struct Shared {
    value: Arc<dyn Any + Send + Sync>,
    same: fn(&dyn Any, &dyn Any) -> bool,
}

impl PartialEq for Shared {
    fn eq(&self, other: &Shared) -> bool {
        (self.same)(&*self.value, &*other.value)
    }
}

fn same<T: PartialEq + 'static>(one: &dyn Any, other: &dyn Any) -> bool {
    one.downcast_ref::<T>() == other.downcast_ref::<T>()
}

/// The memo. Copies are the same.
pub struct Memo<T> {
    erased: Erased<Shared>,
    of: PhantomData<fn() -> T>,
}

impl<T> Clone for Memo<T> {
    fn clone(&self) -> Memo<T> {
        *self
    }
}

impl<T> Copy for Memo<T> {}

type Compute = Box<dyn Fn(Option<&Shared>) -> Shared + Send + Sync>;

fn erased(compute: Compute) -> Erased<Shared> {
    Erased::new(compute)
}

impl<T: PartialEq + Send + Sync + 'static> Memo<T> {
    /// Computes it when it is first read; `compute` is given what it was before.
    pub fn new(compute: impl Fn(Option<&T>) -> T + Send + Sync + 'static) -> Memo<T> {
        Memo::told_apart(same::<T>, compute)
    }
}

impl<T: Send + Sync + 'static> Memo<T> {
    /// One whose values are not compared: each counts as another one.
    pub fn without_comparing(compute: impl Fn(Option<&T>) -> T + Send + Sync + 'static) -> Memo<T> {
        Memo::told_apart(|_, _| false, compute)
    }

    fn told_apart(
        same: fn(&dyn Any, &dyn Any) -> bool,
        compute: impl Fn(Option<&T>) -> T + Send + Sync + 'static,
    ) -> Memo<T> {
        let compute = move |before: Option<&Shared>| Shared {
            value: Arc::new(compute(before.and_then(|b| b.value.downcast_ref()))),
            same,
        };
        Memo {
            erased: erased(Box::new(compute)),
            of: PhantomData,
        }
    }

    /// The value, listening for the next one.
    #[must_use]
    pub fn read(&self) -> Value<T> {
        known(self.erased.get())
    }

    /// The value, without listening.
    #[must_use]
    pub fn read_untracked(&self) -> Value<T> {
        known(self.erased.get_untracked())
    }

    /// Looks at the value, listening for the next one.
    pub fn with<R>(&self, look: impl FnOnce(&T) -> R) -> R {
        look(&self.read())
    }

    /// The same, without listening.
    pub fn with_untracked<R>(&self, look: impl FnOnce(&T) -> R) -> R {
        look(&self.read_untracked())
    }

    /// Listens for the next value.
    pub fn track(&self) {
        self.erased.track();
    }
}

impl<T: Clone + Send + Sync + 'static> Memo<T> {
    /// A copy of the value, listening for the next one.
    #[must_use]
    pub fn get(&self) -> T {
        T::clone(&self.read())
    }

    /// The same, without listening.
    #[must_use]
    pub fn get_untracked(&self) -> T {
        T::clone(&self.read_untracked())
    }
}

/// A value that is looked at; the memo may have another one by now.
pub struct Value<T>(Arc<T>);

impl<T> Deref for Value<T> {
    type Target = T;

    fn deref(&self) -> &T {
        &self.0
    }
}

/// Nothing but a value of this type was put there.
fn known<T: Send + Sync + 'static>(shared: Shared) -> Value<T> {
    Value(Arc::downcast(shared.value).expect("a memo holds what it computes"))
}

impl<T: Clone + Send + Sync + 'static> From<Memo<T>> for Signal<T> {
    fn from(memo: Memo<T>) -> Signal<T> {
        Signal::derive(move || memo.get())
    }
}
