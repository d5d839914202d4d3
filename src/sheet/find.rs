//! Finding a match among many by words and by its day.

use crate::game::entry::Detail;
use crate::game::State;
use crate::rules::Team;

/// Whether a match fits: each of the words stands in its names, competition, division, hall, court,
/// number or day, whatever the case of the letters. `day` is the day as it is written for the person
/// who looks, such as `2026-05-09`.
#[must_use]
pub fn fits(state: &State, day: &str, words: &str) -> bool {
    let mut all = String::from(day);
    if let Some(heading) = state.heading() {
        let parts = Detail::ALL.iter().map(|&detail| &heading.details[detail]);
        let names = Team::BOTH.map(|t| heading.names[t].as_str());
        for part in parts.flatten().map(String::as_str).chain(names) {
            all.push('\n');
            all.push_str(part);
        }
    }
    let all = all.to_lowercase();
    words
        .to_lowercase()
        .split_whitespace()
        .all(|word| all.contains(word))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::game::entry::Heading;
    use crate::game::{Entry, Kind, Replay};
    use crate::rules::{ByTeam, Preset};

    #[test]
    fn every_word_must_stand_somewhere() {
        let names = ByTeam {
            a: "Otters".to_owned(),
            b: "Rote Füchse".to_owned(),
        };
        let mut heading = Heading::new(names, Preset::SchoolJunior.rules());
        heading.details[Detail::Venue] = Some("Hall by the river".to_owned());
        heading.details[Detail::MatchNo] = Some("17".to_owned());
        let replay = Replay::of(vec![Entry::new(1, Kind::Match(Box::new(heading)))]);
        let finds = |words: &str| fits(replay.state(), "2026-05-09", words);
        assert!(finds("") && finds("otters") && finds("  OTT  river "));
        assert!(finds("FÜCHSE") && finds("2026-05") && finds("17"));
        assert!(!finds("herons") && !finds("otters herons"));
        // Words of two fields do not run together.
        assert!(!finds("river17"));
        assert!(fits(&State::new(), "2026-05-09", "05-09"));
    }
}
