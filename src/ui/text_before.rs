//! The words of the screens before a match and of the sheet, in one place.
