//! The words around the sheet, in one place; a second language is a second file like this one.

words! { SheetWords in sheet;
    /// Makes a page of paper.
    print -> &'static str;
    /// The sheet as a file that any browser shows.
    page -> &'static str;
    /// The points as a file for a table calculation.
    points -> &'static str;
    /// To the screen that hands the record over.
    hand_over -> &'static str;
    /// To the talk about the match.
    talk -> &'static str;
    /// Where the browser has no printing.
    cannot_print -> &'static str;
    /// Heading.
    closing -> &'static str;
    /// While the match runs.
    not_over -> &'static str;
    /// The way for a match that was broken off.
    broken_off -> &'static str;
    /// Before the signatures.
    look_first -> &'static str;
    /// What a signature here says.
    sign_means -> &'static str;
    /// Signed.
    signed -> &'static str;
    /// Not yet.
    not_signed -> &'static str;
    /// Seals.
    seal -> &'static str;
    /// Seals though something is open.
    seal_anyway -> &'static str;
    /// What that leaves on the sheet.
    seal_anyway_more -> &'static str;
    /// The result of a match that is not over.
    result_so_far -> &'static str;
    /// Heading of what is open.
    still_open -> &'static str;
    /// Where nothing is.
    nothing_open -> &'static str;
    /// Completes the heading.
    complete -> &'static str;
    /// What is completed.
    details -> &'static str;
    /// To the court.
    to_court -> &'static str;
    /// To the list of entries.
    to_log -> &'static str;
    /// What can be entered no more is told on the sheet.
    remark -> &'static str;
    /// The field.
    remark_field -> &'static str;
    /// Enters it.
    remark_go -> &'static str;
    /// Without words.
    remark_needs_words -> &'static str;
    /// A check is in order now.
    clear -> &'static str;
    /// The field.
    clear_who -> &'static str;
    /// Enters it.
    clear_go -> &'static str;
    /// Without a person.
    clear_needs_who -> &'static str;
    /// What is cleared.
    clear_more(item: &str) -> String;
    /// Writes the protest.
    write_protest -> &'static str;
    /// What is written.
    protest_more -> &'static str;
    /// The field.
    protest_field -> &'static str;
    /// Without words.
    protest_needs_words -> &'static str;
    /// The entry of a finding.
    about_entry(n: u32, words: &str) -> String;
    /// A way to put something right, for whoever does not see beside what it stands.
    way(words: &str, finding: &str) -> String;
    /// Before somebody signs.
    open_count(count: usize) -> String;
    /// Heading, once it is sealed.
    sealed -> &'static str;
    /// What to do with the code.
    write_down -> &'static str;
    /// Heading, where the seal does not fit.
    broken -> &'static str;
    /// Says why.
    broken_more -> &'static str;
    /// Opens it again.
    reopen -> &'static str;
    /// What is asked then.
    reopen_ask -> &'static str;
    /// What happens then.
    reopen_more -> &'static str;
    /// What is asked for.
    reopen_why -> &'static str;
    /// Without a reason.
    reopen_needs_why -> &'static str;
    /// Who has not signed.
    missing(who: &[String]) -> String;
    /// The button of one who signs.
    line(who: &str, name: Option<&str>, signed: bool) -> String;
}
