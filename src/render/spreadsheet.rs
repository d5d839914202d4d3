//! Tables for a spreadsheet (CSV, RFC 4180), as such programs open them rightly.
//!
//! A file begins with the mark of UTF-8, without which some of them read another writing. Every text stands
//! in quotes, so that a semicolon or a tab in it parts nothing where those part the cells, and none is the
//! beginning of a formula.

/// A table while it is being written.
pub(super) struct Table {
    out: String,
}

impl Table {
    /// A table with the names of its columns.
    pub fn new(columns: &[&str]) -> Table {
        Table {
            out: format!("\u{feff}{}\r\n", columns.join(",")),
        }
    }

    /// One more line; each cell is a [`number`] or a [`quoted`] text.
    pub fn line(&mut self, cells: &[String]) {
        self.out.push_str(&cells.join(","));
        self.out.push_str("\r\n");
    }

    /// The whole table.
    pub fn finish(self) -> String {
        self.out
    }
}

/// A number or a code of this program, which holds nothing that parts cells; empty where there is none.
pub(super) fn number(value: Option<impl ToString>) -> String {
    value.map(|value| value.to_string()).unwrap_or_default()
}

/// Text that somebody typed: in quotes, and nowhere the beginning of a formula. A program that parts cells at
/// semicolons or tabs takes the quotes behind the first cell for letters, so a cell may begin within a text.
pub(super) fn quoted(text: &str) -> String {
    let mut out = String::from("\"");
    if text.starts_with(['\t', '\r', '\n']) {
        out.push('\'');
    }
    let mut begins = true;
    for c in text.chars() {
        if begins && matches!(c, '=' | '+' | '-' | '@') {
            out.push('\'');
        }
        begins = matches!(c, ';' | '\t' | '\r' | '\n') || begins && (c == '"' || c.is_whitespace());
        if c == '"' {
            out.push('"');
        }
        out.push(c);
    }
    out.push('"');
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_is_no_formula_and_no_new_field() {
        assert_eq!(quoted("Otters"), "\"Otters\"");
        assert_eq!(quoted("=1+1"), "\"'=1+1\"");
        assert_eq!(quoted("\n@x"), "\"'\n'@x\"");
        assert_eq!(quoted("a\",\"b"), "\"a\"\",\"\"b\"");
        assert_eq!(quoted("a;b\tc"), "\"a;b\tc\"");
    }

    /// A program that parts at semicolons takes the quotes behind the first cell for letters.
    #[test]
    fn a_part_of_a_name_is_no_formula_either() {
        assert_eq!(quoted("a;=1+1;b"), "\"a;'=1+1;b\"");
        assert_eq!(quoted("a;;\t @x"), "\"a;;\t '@x\"");
        assert_eq!(quoted("a\n-1"), "\"a\n'-1\"");
        assert_eq!(quoted("a;\"=1"), "\"a;\"\"'=1\"");
        assert_eq!(quoted("a; b-c=d"), "\"a; b-c=d\"");
    }

    #[test]
    fn a_table_begins_with_the_mark_of_its_writing() {
        let mut table = Table::new(&["place", "team"]);
        table.line(&[number(Some(1)), quoted("Ötters")]);
        table.line(&[number(None::<u8>), quoted("")]);
        assert_eq!(
            table.finish(),
            "\u{feff}place,team\r\n1,\"Ötters\"\r\n,\"\"\r\n"
        );
    }
}
