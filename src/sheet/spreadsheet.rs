//! Text that somebody typed, as a field of a table for a spreadsheet (CSV, RFC 4180).

/// In quotes, and never the beginning of a formula: a name from somebody's file is opened in a
/// spreadsheet here.
pub(super) fn quoted(text: &str) -> String {
    let guard = if text.starts_with(['=', '+', '-', '@', '\t', '\r', '\n']) {
        "'"
    } else {
        ""
    };
    format!("\"{guard}{}\"", text.replace('"', "\"\""))
}

#[cfg(test)]
mod tests {
    use super::quoted;

    #[test]
    fn a_name_is_no_formula_and_no_new_field() {
        assert_eq!(quoted("Otters"), "\"Otters\"");
        assert_eq!(quoted("=1+1"), "\"'=1+1\"");
        assert_eq!(quoted("\n@x"), "\"'\n@x\"");
        assert_eq!(quoted("a\",\"b"), "\"a\"\",\"\"b\"");
    }
}
