//! The words of what happens beside the rallies: hurt players, faults found late, conduct, teams that
//! are short, interruptions.

use app::delaying::Delaying;
use game::entry::{Fault, Level, LiberoWhy, Scope, SeenBy, Who};
use game::{Kind, State};
use rules::{Shirt, Team};

words! { FlowsWords in flows;
    /// The panel, and the button that opens it.
    hurt -> &'static str;
    /// Whose player.
    hurt_team -> &'static str;
    /// Which one.
    hurt_who -> &'static str;
    /// The number is not needed.
    number_later -> &'static str;
    /// Somebody else: an official, a spectator.
    not_a_player -> &'static str;
    /// To the pages of the book about it.
    care_read -> &'static str;
    /// The legend.
    care_then -> &'static str;
    /// The player goes on.
    plays_on -> &'static str;
    /// A libero comes in for a hurt player, or gives way (19.3).
    libero_way -> &'static str;
    /// Recovery time (17.1.2).
    recovery_way() -> String;
    /// Somebody who does not play was hurt, and play goes on.
    goes_on -> &'static str;
    /// Who takes an official's place (Official Volleyball Rules 2025-2028, 24.2.1 and 26.2.2).
    official_hurt -> &'static str;
    /// Nobody can come in.
    nobody_can_come -> &'static str;
    /// Only the state of the court knows who could come.
    care_no_number -> &'static str;
    /// Somebody comes in who was hurt or ill before.
    was_hurt(number: Shirt) -> String;
    /// Starts it.
    recovery() -> String;
    /// They did not suffice, or were used.
    cannot_go_on -> &'static str;
    /// The panel about one player.
    care_title(name: &str, number: Option<Shirt>) -> String;
    /// One way on for a hurt player.
    way_on(kind: &Kind) -> String;
    /// A shirt.
    number(number: Shirt) -> String;
    /// While no set is on court.
    aside -> &'static str;
    /// The legend.
    happened -> &'static str;
    /// A request that held play up.
    request_delay -> &'static str;
    /// Any other delay.
    other_delay -> &'static str;
    /// What tells the three apart (Official Volleyball Rules 2025-2028, 15.11 and 16.1).
    requests_more -> &'static str;
    /// What happened.
    delaying(what: Delaying) -> &'static str;
    /// What counts as that (15.11.1, 16.1).
    delay_means(what: Delaying) -> &'static str;
    /// The other half of the judgement, one tap away.
    delay_instead(instead: Delaying) -> &'static str;
    /// The button that opens the panel, in which no long word fits.
    late_libero -> &'static str;
    /// The panel.
    late_replacement -> &'static str;
    /// The panel, and the button that opens it.
    conduct -> &'static str;
    /// The panel, and the button that opens it.
    late -> &'static str;
    /// The panel, and the button that opens it.
    new_libero -> &'static str;
    /// The panel, and the button that opens it.
    short -> &'static str;
    /// A panel about a team.
    panel_title(what: &str, name: &str) -> String;
    /// The legend.
    conduct_who -> &'static str;
    /// The team has had nothing.
    ladder_clear -> &'static str;
    /// Who decides (Official Volleyball Rules 2025-2028, 21.3 and 23.3.2.2).
    first_referee_decides -> &'static str;
    /// Back to the people.
    somebody_else -> &'static str;
    /// The lightest level that the ladder leaves open.
    next_step -> &'static str;
    /// What the team has had so far, one line each.
    ladder(state: &State, team: Team) -> Vec<String>;
    /// A person, in a sentence.
    person(who: &Who) -> String;
    /// What one person has had.
    had(level: Option<Level>) -> String;
    /// The button that enters it.
    record_sanction(level: Level, who: &Who) -> String;
    /// The legend.
    late_what -> &'static str;
    /// The legend.
    late_since -> &'static str;
    /// No moment.
    late_unknown -> &'static str;
    /// The legend.
    late_found -> &'static str;
    /// The rally was stopped.
    found_rally -> &'static str;
    /// The rally had ended.
    found_after -> &'static str;
    /// The legend.
    late_places -> &'static str;
    /// Opens them.
    set_places -> &'static str;
    /// Leaves them as recorded.
    keep_places -> &'static str;
    /// No set that could be put right.
    late_nothing -> &'static str;
    /// The legend, for a player who was never on the list.
    late_set -> &'static str;
    /// Enters it.
    late_record -> &'static str;
    /// A kind of fault.
    fault(fault: Fault) -> &'static str;
    /// A set.
    set_number(number: u8) -> String;
    /// A moment on the running score.
    since_score(score: &str) -> String;
    /// A place of the order.
    place_label(place: usize, number: Shirt) -> String;
    /// The legend.
    libero_why -> &'static str;
    /// The legend.
    libero_old -> &'static str;
    /// The legend.
    libero_new -> &'static str;
    /// None can be named.
    no_new_libero -> &'static str;
    /// The button that enters it.
    name_libero(number: Shirt) -> String;
    /// Why there is a new one.
    libero_why_button(why: LiberoWhy) -> &'static str;
    /// Above the choices.
    short_more -> &'static str;
    /// A choice.
    short_choice(scope: Option<Scope>) -> &'static str;
    /// The button that enters it.
    record_short(scope: Option<Scope>, name: &str) -> String;
    /// The field.
    suspend_why -> &'static str;
    /// Reasons on offer, each a plain word for the sheet.
    suspend_whys -> [&'static str; 4];
    /// Enters it.
    suspend_now -> &'static str;
    /// Told before it is chosen (Official Volleyball Rules 2025-2028, 17.3.2).
    resume_more -> &'static str;
    /// Enters it.
    resume_other_yes -> &'static str;
    /// The legend.
    who_did -> &'static str;
    /// A number of that legend.
    did_it(number: Shirt) -> String;
    /// The legend.
    who_saw -> &'static str;
    /// Somebody of the team of officials.
    seen_by(who: SeenBy) -> &'static str;
    /// The button of one rally in the list, and what it opens.
    reason -> &'static str;
    /// The same for whoever listens.
    reason_of(n: u32, words: &str) -> String;
    /// The field.
    strike_why -> &'static str;
    /// The menu and the panel.
    name_teams -> &'static str;
    /// Enters them.
    names_record -> &'static str;
    /// The menu and the panel.
    grow -> &'static str;
    /// What it does.
    grow_more -> &'static str;
    /// The label of a name.
    name_of(team: Team) -> String;
    /// The button that enters the rules.
    grow_to(preset: &str) -> String;
    /// Only the court.
    glance -> &'static str;
    /// All of it again.
    whole -> &'static str;
    /// Against pockets.
    lock -> &'static str;
    /// How it opens.
    locked -> &'static str;
    /// The first corner.
    corner_1 -> &'static str;
    /// The second corner.
    corner_2 -> &'static str;
    /// The button of the first referee's whistle.
    whistle -> &'static str;
    /// The switch, with how it stands.
    service_clock(on: bool, seconds: u16) -> String;
    /// The clock of the service.
    service_left(seconds: i64) -> String;
    /// Both teams' names on one line, with the points.
    locked_score(state: &State, left: Team) -> String;
}
