//! The words about who speaks for a team, and about protests (Official Volleyball Rules 2025-2028, 5.1.2,
//! 5.1.3).

use crate::ScoreOrder;
use game::{Protest, Speaker, State};
use rules::{Shirt, Team};

words! { CaptainsWords in captains;
    /// Who speaks.
    game_captain -> &'static str;
    /// Opens the choice.
    name_somebody -> &'static str;
    /// The legend.
    who_speaks_label -> &'static str;
    /// 5.1.2.1, 5.1.2.2
    speaks_more -> &'static str;
    /// The button of whoever was named before.
    speaks_again(number: Shirt) -> String;
    /// A number, for those who do not see it.
    speaks_now(number: Shirt) -> String;
    /// Nobody speaks.
    game_captain_missing(state: &State, team: Team) -> String;
    /// Who speaks for a team, in one sentence.
    who_speaks(state: &State, team: Team) -> String;
    /// The same behind the score of a half, for those who do not see it.
    speaks_said(speaker: Option<Speaker>) -> String;
    /// Who asks for time-outs and substitutions, where that is not the coach (5.1.2.3, 15.3.1).
    requests_by(state: &State, team: Team) -> Option<String>;
    /// The panel.
    protest -> &'static str;
    /// The field.
    protest_about -> &'static str;
    /// Enters it.
    protest_announced -> &'static str;
    /// It has to say something.
    protest_needs_words -> &'static str;
    /// 5.1.2.1, 5.1.3, 23.2.4
    protest_more -> &'static str;
    /// Who announces it.
    protest_by(number: Option<Shirt>) -> String;
    /// Writes it on the sheet.
    protest_write(announced: bool) -> &'static str;
    /// One that was announced.
    announced(protest: &Protest, order: ScoreOrder) -> String;
}
