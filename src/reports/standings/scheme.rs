//! How match points are given, where a competition has no table of its own.

use std::collections::BTreeMap;

use super::{Criterion, Played, Pool};

/// A way to give match points.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Scheme {
    /// Three for a win, two and one if it went to the last set (public international regulations of 2017 to
    /// 2021).
    ByMargin,
    /// Two for a win, one for a loss, none for a default (common practice, no source).
    Appearance,
    /// Two for a win, one for a loss, a default being a loss (common practice, no source).
    Loss,
    /// Two for a win (common practice, no source).
    Two,
    /// Three for a win (common practice, no source).
    Three,
}

rules::codes!(Scheme {
    ByMargin = "3210",
    Appearance = "210",
    Loss = "21",
    Two = "20",
    Three = "30",
});

impl Scheme {
    /// Points of winner and loser for every result in sets, the closest one being that which went to the
    /// last set; a level match gives one each.
    #[must_use]
    pub fn match_points(self) -> BTreeMap<(u8, u8), (i32, i32)> {
        let results = (1..=9).flat_map(|won| (0..=won).map(move |lost| (won, lost)));
        rules::gather(results.map(|(won, lost)| {
            let close = won - lost == 1 && won > 1;
            let given = match self {
                _ if won == lost => (1, 1),
                Scheme::ByMargin if close => (2, 1),
                Scheme::ByMargin | Scheme::Three => (3, 0),
                Scheme::Appearance | Scheme::Loss => (2, 1),
                Scheme::Two => (2, 0),
            };
            ((won, lost), given)
        }))
    }

    /// A pool of these results, in which two teams meet once.
    #[must_use]
    pub fn pool(self, rank_by: Vec<Criterion>, results: Vec<Played>) -> Pool {
        Pool {
            rank_by,
            restart: true,
            match_points: self.match_points(),
            default_points: (self == Scheme::Appearance).then_some((2, 0)),
            rules: None,
            teams: Vec::new(),
            meetings: Some(1),
            results,
        }
    }
}

impl Criterion {
    /// The order where nobody has said another one: the international one without match points, because a
    /// school's are its own (public regulations of 2017 to 2021).
    pub const USUAL: [Criterion; 4] = [
        Criterion::Wins,
        Criterion::SetRatio,
        Criterion::PointRatio,
        Criterion::HeadToHead,
    ];
}
