//! Lines of storage that could not be read, carried along in a file as they stand: whoever has a newer
//! version, or better eyes, may still make something of them.

/// The field of a file that holds them.
pub(super) const UNREAD: &str = "unread";

/// What every file ends with, behind its last entry.
const END: &str = "\n]}\n";

/// The file of a match with these lines beside its entries.
#[must_use]
pub fn with_unread(file: String, unread: &[String]) -> String {
    match file.strip_suffix(END) {
        Some(body) if !unread.is_empty() => {
            // Texts cannot fail to be written.
            let lines = serde_json::to_string(unread).unwrap_or_default();
            format!("{body}\n],\"{UNREAD}\":{lines}}}\n")
        }
        _ => file,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{read, write, Log, ProblemKind};
    use game::simulate;
    use rules::Preset;

    #[test]
    fn they_leave_with_the_file_and_hide_nothing() {
        let log = Log {
            id: "m".to_owned(),
            entries: simulate(Preset::SchoolJunior, 1),
        };
        let lines = ["torn \"line".to_owned(), "b".to_owned()];
        let file = with_unread(write(&log), &lines);
        let value: serde_json::Value = serde_json::from_str(&file).expect("JSON");
        assert_eq!(value[UNREAD], serde_json::json!(lines));
        let reading = read(&file);
        assert_eq!(reading.log, log);
        assert_eq!(reading.problems.len(), 1, "{:?}", reading.problems);
        assert_eq!(reading.problems[0].kind, ProblemKind::UnreadLines(2));
        assert_eq!(with_unread(write(&log), &[]), write(&log));
    }
}
