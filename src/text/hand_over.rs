//! The words of handing over and taking in, in one place; a second language is a second file like this
//! one.

words! { HandOverWords in hand_over;
    /// Before a record is handed over that could still change.
    not_sealed -> &'static str;
    /// The way to the seal.
    to_sheet -> &'static str;
    /// Heading.
    file -> &'static str;
    /// What goes with a record and what does not.
    what_goes -> &'static str;
    /// Hands it over.
    file_go -> &'static str;
    /// It went.
    shared -> &'static str;
    /// It did not.
    cancelled -> &'static str;
    /// Where the file goes.
    file_goes(shares: bool, installed_on_ios: bool) -> &'static str;
    /// It is in the downloads.
    downloaded(name: &str) -> String;
    /// Heading.
    codes -> &'static str;
    /// What the other one does.
    codes_more -> &'static str;
    /// Shows them.
    show -> &'static str;
    /// Step.
    before -> &'static str;
    /// Step.
    next -> &'static str;
    /// Stops the change.
    hold -> &'static str;
    /// Goes on with it.
    run -> &'static str;
    /// Other codes.
    simpler -> &'static str;
    /// Other codes.
    fewer -> &'static str;
    /// How they are read well.
    codes_care -> &'static str;
    /// Under a code.
    place(place: usize, count: usize) -> String;
    /// Name of the picture for whoever listens.
    label(at: usize, count: usize) -> String;
    /// What is done here.
    receive_more -> &'static str;
    /// Name of the picture.
    sight -> &'static str;
    /// Starts it.
    camera_on -> &'static str;
    /// Ends it.
    camera_off -> &'static str;
    /// The other way.
    photo -> &'static str;
    /// Forgets what is there.
    anew -> &'static str;
    /// Nothing yet.
    looking -> &'static str;
    /// Opens it.
    open -> &'static str;
    /// Name of the field for digits.
    digits -> &'static str;
    /// What it is for.
    digits_more -> &'static str;
    /// Reads them.
    digits_read -> &'static str;
    /// There are none.
    no_digits -> &'static str;
    /// About the camera.
    receive_care -> &'static str;
    /// Another one.
    other_record -> &'static str;
    /// Notes of an observer came.
    notes_taken -> &'static str;
    /// There is no room for them.
    notes_not_kept -> &'static str;
    /// So far.
    part(have: usize, of: usize, missing: &[usize]) -> String;
    /// A photo without a code.
    nothing_in(name: &str) -> String;
}
