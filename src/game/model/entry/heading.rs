//! The heading of a match, and what is amended in it.

use std::ops::{Index, IndexMut};

use rules::{ByTeam, Rules};

/// The heading of a match.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Heading {
    /// What is known of it beside names and rules.
    pub details: Details,
    /// Names of the teams; may be empty.
    pub names: ByTeam<String>,
    /// What it is played by.
    pub rules: Rules,
    /// Whether it is a practice match that nobody played: no table of results counts it.
    pub practice: bool,
}

impl Heading {
    /// A heading with names and rules, everything else left for later.
    #[must_use]
    pub fn new(names: ByTeam<String>, rules: Rules) -> Heading {
        Heading {
            details: Details::default(),
            names,
            rules,
            practice: false,
        }
    }
}

/// Something that is known of a match and is neither a name nor a rule.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Detail {
    /// Competition.
    Competition,
    /// Division.
    Division,
    /// Hall.
    Venue,
    /// Court in the hall.
    Court,
    /// Number of the match.
    MatchNo,
    /// Scheduled start as it was written, by custom `2026-05-09T14:00`.
    Scheduled,
}

// In the order of a record.
rules::codes!(Detail {
    Competition = "competition",
    Division = "division",
    Venue = "venue",
    Court = "court",
    MatchNo = "match_no",
    Scheduled = "scheduled",
});

/// The details of a match, each where it is given.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Details([Option<String>; Detail::ALL.len()]);

impl Index<Detail> for Details {
    type Output = Option<String>;
    fn index(&self, detail: Detail) -> &Option<String> {
        &self.0[detail as usize]
    }
}

impl IndexMut<Detail> for Details {
    fn index_mut(&mut self, detail: Detail) -> &mut Option<String> {
        &mut self.0[detail as usize]
    }
}

/// Parts of the heading, given later; what is left out stays as it is.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Amendment {
    /// Details; one that is given as an empty text is taken away.
    pub details: Details,
    /// Names of the teams.
    pub names: ByTeam<Option<String>>,
    /// What it is played by from now on: before the match, or where a tally grows into a match.
    pub rules: Option<Rules>,
}

impl Amendment {
    /// What makes one heading into another; none where they say the same.
    #[must_use]
    pub fn between(was: &Heading, is: &Heading) -> Option<Amendment> {
        let mut given = Amendment {
            names: ByTeam::new(|team| {
                (was.names[team] != is.names[team]).then(|| is.names[team].clone())
            }),
            rules: (was.rules != is.rules).then_some(is.rules),
            ..Amendment::default()
        };
        for detail in Detail::ALL {
            // What was taken away and what was never given are both empty on the sheet.
            let [was, is] = [was, is].map(|h| h.details[detail].as_deref().unwrap_or_default());
            given.details[detail] = (was != is).then(|| is.to_owned());
        }
        (given != Amendment::default()).then_some(given)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use rules::{Preset, Team};

    #[test]
    fn an_amendment_is_what_makes_one_heading_into_the_other() {
        let names = ByTeam {
            a: "Otters".to_owned(),
            b: String::new(),
        };
        let was = Heading {
            names,
            ..Heading::new(ByTeam::default(), Preset::SchoolJunior.rules())
        };
        assert_eq!(Amendment::between(&was, &was), None);
        let mut is = was.clone();
        is.details[Detail::Venue] = Some("North hall".to_owned());
        is.names[Team::B] = "Herons".to_owned();
        let given = Amendment::between(&was, &is).expect("two things were added");
        assert_eq!(given.details[Detail::Venue].as_deref(), Some("North hall"));
        assert_eq!(given.details[Detail::Court], None);
        assert_eq!((&given.names.a, given.rules), (&None, None));
        assert_eq!(given.names.b.as_deref(), Some("Herons"));
        // A detail that is taken away is given as an empty text, and once is enough.
        let gone = Amendment::between(&is, &was).expect("two things were taken away");
        assert_eq!(gone.details[Detail::Venue].as_deref(), Some(""));
        let mut empty = was.clone();
        empty.details[Detail::Venue] = Some(String::new());
        assert_eq!(Amendment::between(&empty, &was), None);
    }
}
