//! The words of the forms for a match: names, circumstances, rules.

use app::field::Field;
use rules::{Preset, Rules, Sets};

words! { SetupFormWords in setup::form;
    /// Above the form.
    all_can_wait -> &'static str;
    /// Over the presets.
    rules -> &'static str;
    /// Over the names.
    teams -> &'static str;
    /// Opens the rest of the form.
    more -> &'static str;
    /// Over the adjustable rules.
    rules_in_detail -> &'static str;
    /// In the place of the summary.
    rules_not_usable -> &'static str;
    /// The rules are not those that the preset has by itself.
    rules_differ(preset: Preset) -> String;
    /// Brings those back.
    standard_rules -> &'static str;
    /// The form's button.
    open_match -> &'static str;
    /// Where a match could not be opened.
    not_opened -> &'static str;
    /// Over the form for what was left for later.
    match_details -> &'static str;
    /// Beside the rules of an open match.
    rules_clear_line_ups -> &'static str;
    /// Keeps it.
    keep_details -> &'static str;
    /// A preset by name.
    preset(preset: Preset) -> &'static str;
    /// What a preset is for.
    preset_is_for(preset: Preset) -> String;
    /// The most important rules in a line.
    rules_in_short(rules: &Rules) -> String;
    /// A format.
    sets(sets: Sets) -> String;
    /// A set ends by one of the two.
    one_limit -> &'static str;
    /// Label of a field.
    field(field: Field) -> &'static str;
    /// The part of an id that names a field.
    field_id(field: Field) -> String;
    /// Below a rule: what the published rules say, or that they say nothing.
    source(rule: Field) -> Option<&'static str>;
    /// A field and what is wrong with it.
    field_says(wrong: Field, say: &str) -> String;
    /// What a number field takes.
    number_wanted(lowest: u16, highest: u16, may_be_empty: bool) -> String;
    /// A policy of substitutions, by its value in the form.
    policy(code: &str) -> String;
    /// A number of liberos.
    liberos(code: &str) -> String;
    /// How many are on court.
    on_court(code: &str) -> String;
    /// How the teams warm up.
    warm_up_style(code: &str) -> String;
    /// How strict the centre line is.
    under_net(code: &str) -> String;
    /// An edition of the rules.
    edition(code: &str) -> String;
    /// Below the day.
    day_empty -> &'static str;
    /// When a match starts of which only a time was given.
    starts(tomorrow: bool, time: &str) -> String;
}
