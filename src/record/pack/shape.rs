//! The text of an entry taken apart: its shape, which is the text without its values, and the values.

use super::mix::hash;

/// Stands for a text in a shape, without its quotes.
const TEXT: char = '\u{1}';
/// Stands for a whole number.
const NUMBER: char = '\u{2}';

/// A value of an entry.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Value {
    /// A text as it stands between its quotes.
    Text(String),
    /// A whole number.
    Number(i64),
}

/// An entry taken apart.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Parts {
    /// The text with signs in the place of values. The value of `kind` is a part of it.
    pub shape: String,
    /// The values in their order.
    pub values: Vec<Value>,
}

/// What kind of value stands in a place of a shape.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Place {
    /// A text.
    Text,
    /// A whole number.
    Number,
}

/// Takes a text apart. Whatever it is, [`join`] gives it back: what is no tidy JSON is all shape.
pub(super) fn split(text: &str) -> Parts {
    let parts = tokens(text);
    if join(&parts.shape, &parts.values).as_deref() == Some(text) {
        parts
    } else {
        Parts {
            shape: text.to_owned(),
            values: Vec::new(),
        }
    }
}

fn tokens(text: &str) -> Parts {
    let mut parts = Parts::default();
    let mut rest = text;
    let mut after_kind = false;
    while let Some(first) = rest.chars().next() {
        if first == '"' {
            let end = end_of_text(rest);
            let (quoted, behind) = rest.split_at(end);
            let is_key = behind.starts_with(':');
            if is_key || after_kind || end == rest.len() {
                parts.shape.push_str(quoted);
            } else {
                parts.shape.push(TEXT);
                let inner = &quoted[1..quoted.len() - 1];
                parts.values.push(Value::Text(inner.to_owned()));
            }
            after_kind = is_key && quoted == "\"kind\"";
            // The colon belongs to the key, so that what comes next still is behind it.
            let colon = usize::from(is_key);
            parts.shape.push_str(&behind[..colon]);
            rest = &behind[colon..];
            continue;
        }
        after_kind = false;
        let digits = rest
            .bytes()
            .take_while(|b| b.is_ascii_digit() || *b == b'-')
            .count();
        let number = &rest[..digits];
        match number.parse::<i64>() {
            Ok(value) if value.to_string() == number => {
                parts.shape.push(NUMBER);
                parts.values.push(Value::Number(value));
                rest = &rest[digits..];
            }
            _ => {
                parts.shape.push(first);
                rest = &rest[first.len_utf8()..];
            }
        }
    }
    parts
}

/// Where a text that begins with a quote ends, behind its second one.
fn end_of_text(text: &str) -> usize {
    let mut escaped = false;
    for (at, byte) in text.bytes().enumerate().skip(1) {
        match byte {
            _ if escaped => escaped = false,
            b'\\' => escaped = true,
            b'"' => return at + 1,
            _ => {}
        }
    }
    text.len()
}

/// The text of a shape and its values; none where they do not fit each other.
pub(super) fn join(shape: &str, values: &[Value]) -> Option<String> {
    let mut values = values.iter();
    let mut out = String::new();
    for sign in shape.chars() {
        match sign {
            TEXT => match values.next()? {
                Value::Text(text) => {
                    out.push('"');
                    out.push_str(text);
                    out.push('"');
                }
                Value::Number(_) => return None,
            },
            NUMBER => match values.next()? {
                Value::Number(number) => out.push_str(&number.to_string()),
                Value::Text(_) => return None,
            },
            sign => out.push(sign),
        }
    }
    values.next().is_none().then_some(out)
}

/// The places of a shape, each with a number that stands for its path: the keys that lead there, the kind
/// of the entry among them.
pub(super) fn places(shape: &str) -> Vec<(Place, u32)> {
    let mut places = Vec::new();
    let mut path: Vec<u32> = vec![0];
    let mut kind = 0;
    let mut rest = shape;
    let mut after_kind = false;
    while let Some(first) = rest.chars().next() {
        let mut next = first.len_utf8();
        match first {
            '{' | '[' => path.push(path.last().copied().unwrap_or_default()),
            '}' | ']' => {
                path.pop();
            }
            '"' => {
                next = end_of_text(rest);
                let name = rest[..next].bytes().fold(7, |all, b| hash(all, b.into()));
                if after_kind {
                    kind = name;
                }
                after_kind = rest[..next] == *"\"kind\"";
                let above = path.len().checked_sub(2).map_or(0, |above| path[above]);
                if let Some(last) = path.last_mut() {
                    *last = hash(above, name);
                }
                // Between a key and its value stands the colon alone.
                if after_kind && rest[next..].starts_with(':') {
                    next += 1;
                }
            }
            TEXT | NUMBER => {
                let place = if first == TEXT {
                    Place::Text
                } else {
                    Place::Number
                };
                let path = path.last().copied().unwrap_or_default();
                places.push((place, hash(path, kind)));
            }
            _ => {}
        }
        rest = &rest[next..];
    }
    places
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn an_entry_is_shape_and_values() {
        let text = r#"{"n":12,"at":-5,"kind":"rally","won_by":"A","by":{"team":"B","number":7}}"#;
        let parts = split(text);
        assert_eq!(
            parts.shape,
            "{\"n\":\u{2},\"at\":\u{2},\"kind\":\"rally\",\"won_by\":\u{1},\"by\":{\"team\":\u{1},\"number\":\u{2}}}"
        );
        assert_eq!(parts.values.len(), 5);
        assert_eq!(join(&parts.shape, &parts.values).as_deref(), Some(text));
        let places = places(&parts.shape);
        assert_eq!(places.len(), 5);
        // The same key in another kind is another place.
        let other = super::places(&parts.shape.replace("rally", "other"));
        assert_eq!(places[0], other[0]);
        assert_ne!(places[2], other[2]);
    }

    #[test]
    fn what_is_no_tidy_entry_is_all_shape() {
        for text in ["", "{\"n\":01}", "{\"x\":\"y", "nonsense 1.5e3"] {
            let parts = split(text);
            assert_eq!(join(&parts.shape, &parts.values).as_deref(), Some(text));
        }
    }

    proptest! {
        #[test]
        fn every_text_comes_back(text in "\\PC{0,60}|[\\[\\]{}\":,0-9a-z\\\\-]{0,60}") {
            let parts = split(&text);
            prop_assert_eq!(join(&parts.shape, &parts.values), Some(text));
            prop_assert!(places(&parts.shape).len() >= parts.values.len());
        }
    }
}
