//! What the app is for, what it is not, and the careful words.

/// What counts first when somebody is hurt.
#[must_use]
pub fn care_first() -> [&'static str; 3] {
    [care_stop(), care_no_diagnosis(), care_head()]
}

/// What counts before somebody comes back.
#[must_use]
pub fn care_return() -> [&'static str; 2] {
    [care_head(), care_not_replaced()]
}

words! { AboutWords in about;
    /// Title of a screen.
    about_title -> &'static str;
    /// The way to it.
    about -> &'static str;
    /// The careful words, the same wherever somebody may be hurt. Stopping play for a serious accident is
    /// rule 17.1.1 (Official Volleyball Rules 2025-2028); the rest is usual public guidance for officials of
    /// young players: recognise, remove, and leave the judgement to qualified people.
    care_stop -> &'static str;
    /// What an official does not do.
    care_no_diagnosis -> &'static str;
    /// A suspected head injury.
    care_head -> &'static str;
    /// What counts first.
    care_not_replaced -> &'static str;
    /// What the app is for and what it is not.
    about_parts() -> [(&'static str, Vec<&'static str>); 5];
}
