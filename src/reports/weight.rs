//! How much what is found in a record may weigh, so that a coordinator begins with what may change the result.

/// What a finding may touch, the heaviest first. Our own order: no source ranks them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Weight {
    /// Who won, or by which points.
    Result,
    /// What was allowed, or decided, while the match was played.
    Play,
    /// The form of the record: a field, a signature, a time.
    Form,
}

rules::codes!(Weight {
    Result = "result",
    Play = "play",
    Form = "form",
});

/// How many findings there are of each weight.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Weights([usize; Weight::COUNT]);

impl Weights {
    /// So many more of a weight.
    pub fn add(&mut self, weight: Weight, count: usize) {
        self.0[weight as usize] += count;
    }

    /// How many there are of a weight.
    #[must_use]
    pub const fn of(&self, weight: Weight) -> usize {
        self.0[weight as usize]
    }

    /// How many there are in all.
    #[must_use]
    pub fn all(&self) -> usize {
        self.0.iter().sum()
    }

    /// The weights that occur, with how many there are of each, the heaviest first.
    pub fn counted(self) -> impl Iterator<Item = (Weight, usize)> {
        let all = Weight::ALL.into_iter().map(move |w| (w, self.of(w)));
        all.filter(|(_, count)| *count > 0)
    }

    /// Compared with another record, the heaviest findings count first.
    #[must_use]
    pub fn heaviness(&self) -> [usize; Weight::COUNT] {
        self.0
    }
}

impl FromIterator<Weight> for Weights {
    fn from_iter<I: IntoIterator<Item = Weight>>(found: I) -> Weights {
        let mut weights = Weights::default();
        for weight in found {
            weights.add(weight, 1);
        }
        weights
    }
}
