//! What is wrong with a form that somebody keyed in as JSON, each with the way out.

use crate::form::*;
use crate::problem;
use reports::FormProblemKind;

/// In English.
pub static WORDS: FormWords = FormWords { form_problem };

fn form_problem(kind: &FormProblemKind) -> String {
    use FormProblemKind as P;
    match kind {
        P::TooLong(bytes) => {
            format!("The file has {bytes} bytes, far more than a form. Choose another file.")
        }
        P::Damaged(line) => format!(
            "The file is damaged or cut off in line {line}, so it cannot be read. Correct that line."
        ),
        P::OtherLog(name) => {
            format!("This is another kind of file: `log` should say \"{name}\".")
        }
        P::NewerVersion(newer) => format!(
            "The file is of a newer version ({newer}). Update this program and open it again."
        ),
        P::NoVersion => "The file does not say its version: it should be 1.".to_owned(),
        P::Unreadable => "The form cannot be read.".to_owned(),
        P::Missing => "This is missing. Fill it in.".to_owned(),
        P::UnknownField => {
            "This field is unknown and was left out. Check its spelling.".to_owned()
        }
        P::NotObject(fields) => {
            format!("This should be an object with: {}.", fields.join(", "))
        }
        P::NotList => "This should be a list in [ ].".to_owned(),
        P::TooManyItems { items, most } => {
            format!("{items} items are too many: at most {most}.")
        }
        P::NotText => "This should be a text in quotes, not empty.".to_owned(),
        P::NotFlag => "This should be true or false.".to_owned(),
        P::NotWhole { least, most } => {
            format!("This should be a whole number from {least} to {most}.")
        }
        P::NotWord(words) => format!("This should be one of: {}.", words.join(", ")),
        P::RulesUnreadable(why) => {
            let why = match why {
                Some(why) => problem::entry(why),
                None => "they are not an object".to_owned(),
            };
            format!("These rules cannot be read ({why}). Name a preset or correct them.")
        }
        P::RulesUnplayable => {
            "These rules cannot be played: check sets, targets, caps and the numbers of players.".to_owned()
        }
        P::NotTime => "A time is written with hour and minute, such as 18:05.".to_owned(),
        P::NobodyNamed => {
            "Misconduct needs the person: \"who\": {\"player\": 7} or {\"staff\": \"coach\"}.".to_owned()
        }
        P::NotOnePerson => "Name either a player or one of the staff.".to_owned(),
        P::NoCriterion => "Name at least one criterion.".to_owned(),
        P::TooManyTeams { teams, most } => {
            format!("{teams} teams are too many for one pool: at most {most}.")
        }
        P::NotMatchPoints => {
            "This should name the points by result, such as \"3-0\": [3,0].".to_owned()
        }
        P::NotTwoPoints => {
            "This should be two numbers: the winner's points and the loser's.".to_owned()
        }
        P::NotResult => {
            "A result is named by its sets, the higher number first, such as \"3-1\", or \"default\".".to_owned()
        }
        P::NotSet => {
            "A set is two numbers: the points of the first team and of the second.".to_owned()
        }
    }
}
