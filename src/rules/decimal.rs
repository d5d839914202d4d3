//! Numbers as somebody types them from a gauge or a tape.

/// A number with at most four digits before the point or comma and `digits` after it, as a whole
/// number of the last of them; none for anything else.
pub(super) fn decimal(typed: &str, digits: usize) -> Option<u32> {
    let typed = typed.trim();
    let (whole, rest) = typed.split_once(['.', ',']).unwrap_or((typed, ""));
    let plain = |part: &str| part.bytes().all(|b| b.is_ascii_digit());
    let sized = whole.len() <= 4 && rest.len() <= digits && !(whole.is_empty() && rest.is_empty());
    if !(sized && plain(whole) && plain(rest)) {
        return None;
    }
    format!("{whole}{rest:0<digits$}").parse().ok()
}

#[cfg(test)]
mod tests {
    use super::decimal;

    #[test]
    fn points_and_commas_are_the_same() {
        assert_eq!(decimal("2.24", 3), Some(2240));
        assert_eq!(decimal("2,24", 3), Some(2240));
        assert_eq!(decimal(" 224 ", 3), Some(224_000));
        assert_eq!(decimal(".3", 3), Some(300));
        assert_eq!(decimal("3.", 3), Some(3000));
        assert_eq!(decimal("9999.999", 3), Some(9_999_999));
    }

    #[test]
    fn anything_else_is_no_number() {
        for typed in [
            "", " ", ".", ",", "1,2,3", "1.2345", "12345", "-1", "+1", "1e2", "a", "\u{661}",
        ] {
            assert_eq!(decimal(typed, 3), None, "{typed}");
        }
    }
}
