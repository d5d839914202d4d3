//! The words of the pages that lead to what there is to learn.

words! { BookWords in learn::book;
    /// What is on the first page.
    book_more -> &'static str;
    /// In which order.
    book_order -> &'static str;
    /// Title of the page of all decisions.
    decisions -> &'static str;
    /// What is on it.
    decisions_more -> &'static str;
    /// Title of the page of the court.
    court -> &'static str;
    /// What is on it.
    court_more -> &'static str;
    /// Title of the page of all jobs.
    roles -> &'static str;
    /// What is on it.
    roles_more -> &'static str;
    /// Title of the page about care.
    care -> &'static str;
    /// What is on it.
    care_more -> &'static str;
    /// Back into the match that is open.
    back_to_match -> &'static str;
}
