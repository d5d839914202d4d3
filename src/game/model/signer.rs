//! Who signs a record, and how the log names them.

use rules::Team;

/// Who a signature is of: captains and coaches before the match (4.1.3, 5.2.1), captains and officials
/// after it (5.1.3, 27.2.3.3).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Signer {
    /// A team captain.
    Captain(Team),
    /// A coach.
    Coach(Team),
    /// The scorer.
    Scorer,
    /// The second referee.
    SecondReferee,
    /// The first referee.
    FirstReferee,
}

impl Signer {
    /// The role that is written in the log.
    #[must_use]
    pub fn role(self) -> String {
        match self {
            Signer::Captain(team) => format!("captain {team}"),
            Signer::Coach(team) => format!("coach {team}"),
            Signer::Scorer => "scorer".to_owned(),
            Signer::SecondReferee => "second referee".to_owned(),
            Signer::FirstReferee => "first referee".to_owned(),
        }
    }

    /// The team, where it is somebody of one.
    #[must_use]
    pub const fn team(self) -> Option<Team> {
        match self {
            Signer::Captain(team) | Signer::Coach(team) => Some(team),
            Signer::Scorer | Signer::SecondReferee | Signer::FirstReferee => None,
        }
    }

    /// Who is meant by a role, which is a free text such as `captain A` or `first_referee`.
    #[must_use]
    pub fn of_role(role: &str) -> Option<Signer> {
        let role = role.to_lowercase();
        let words: Vec<&str> = role
            .split(|c: char| !c.is_alphanumeric())
            .filter(|w| !w.is_empty())
            .collect();
        let has = |word: &str| words.contains(&word);
        let team = match (has("a"), has("b")) {
            (true, false) => Some(Team::A),
            (false, true) => Some(Team::B),
            _ => None,
        };
        if has("assistant") {
            None
        } else if has("captain") {
            team.map(Signer::Captain)
        } else if has("coach") {
            team.map(Signer::Coach)
        } else if has("scorer") {
            Some(Signer::Scorer)
        } else if has("referee") && has("second") {
            Some(Signer::SecondReferee)
        } else if has("referee") && has("first") {
            Some(Signer::FirstReferee)
        } else {
            None
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn roles_are_known_however_they_are_written() {
        let of = Signer::of_role;
        assert_eq!(of("captain A"), Some(Signer::Captain(Team::A)));
        assert_eq!(of("Captain_b"), Some(Signer::Captain(Team::B)));
        assert_eq!(of("first_referee"), Some(Signer::FirstReferee));
        assert_eq!(of("Second referee"), Some(Signer::SecondReferee));
        assert_eq!(of("assistant scorer"), None);
        assert_eq!(of("captain"), None);
    }

    #[test]
    fn a_role_that_is_written_is_read_again() {
        for signer in [
            Signer::Captain(Team::A),
            Signer::Coach(Team::B),
            Signer::Scorer,
            Signer::SecondReferee,
            Signer::FirstReferee,
        ] {
            assert_eq!(Signer::of_role(&signer.role()), Some(signer));
        }
    }
}
