//! Every refusal in words: what is wrong, and what would be legal.

use crate::Teams;
use game::Refusal;

words! { RefusalWords in refusal;
    /// What is wrong and what would be legal, in one sentence or two for a pupil.
    refusal(refusal: &Refusal, teams: Teams) -> String;
}
