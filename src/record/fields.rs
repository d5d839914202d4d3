//! The fields of a JSON object, read one by one, each that is wrong named, and written
//! in the order in which they are named.

use std::ops::RangeInclusive;

use serde_json::{Map, Value};

use super::entry_problem::{EntryProblem, Wanted};
use super::plain::{plain, plain_name};
use rules::{Coded, Shirt};

/// The moments of the years 1 to 9999, in milliseconds since 1970.
const TIMES: RangeInclusive<i64> = -62_135_596_800_000..=253_402_300_799_999;

/// The fields of an object.
#[derive(Clone, Copy)]
pub(super) struct Fields<'a>(pub &'a Map<String, Value>);

impl<'a> Fields<'a> {
    /// The fields of a value, if it is an object.
    pub fn of(value: &'a Value) -> Option<Fields<'a>> {
        value.as_object().map(Fields)
    }

    /// A field that is there; one that says null is not.
    fn some(self, key: &str) -> Option<&'a Value> {
        self.0.get(key).filter(|v| !v.is_null())
    }

    fn given(self, key: &str) -> Result<&'a Value, EntryProblem> {
        self.some(key)
            .ok_or_else(|| EntryProblem::Missing(key.to_owned()))
    }

    /// Whether a field is there.
    pub fn has(self, key: &str) -> bool {
        self.some(key).is_some()
    }

    /// Whether it is a list.
    pub fn has_list(self, key: &str) -> bool {
        self.some(key).is_some_and(Value::is_array)
    }

    /// Words, without what writes nothing.
    pub fn text(self, key: &str) -> Result<String, EntryProblem> {
        match self.given(key)? {
            Value::String(text) => Ok(plain(text)),
            _ => Err(not(key, Wanted::Text)),
        }
    }

    /// A name, where it is there.
    pub fn some_name(self, key: &str) -> Result<Option<String>, EntryProblem> {
        let Some(Value::String(name)) = self.some(key) else {
            return self.some_text(key);
        };
        Ok(Some(plain_name(name)))
    }

    /// A name, an empty one where it is not there.
    pub fn name_or_empty(self, key: &str) -> Result<String, EntryProblem> {
        Ok(self.some_name(key)?.unwrap_or_default())
    }

    /// Words, where they are there.
    pub fn some_text(self, key: &str) -> Result<Option<String>, EntryProblem> {
        self.has(key).then(|| self.text(key)).transpose()
    }

    /// Words, none where they are not there.
    pub fn text_or_empty(self, key: &str) -> Result<String, EntryProblem> {
        Ok(self.some_text(key)?.unwrap_or_default())
    }

    /// True or false, false where it is not there.
    pub fn flag(self, key: &str) -> Result<bool, EntryProblem> {
        if self.has(key) {
            self.given_flag(key)
        } else {
            Ok(false)
        }
    }

    /// True or false.
    pub fn given_flag(self, key: &str) -> Result<bool, EntryProblem> {
        let value = self.given(key)?;
        value.as_bool().ok_or_else(|| not(key, Wanted::Flag))
    }

    fn whole(self, key: &str, most: u32) -> Result<u32, EntryProblem> {
        number(self.given(key)?, key, most)
    }

    /// A whole number.
    pub fn u32(self, key: &str) -> Result<u32, EntryProblem> {
        self.whole(key, u32::MAX)
    }

    /// A whole number.
    pub fn u16(self, key: &str) -> Result<u16, EntryProblem> {
        // It is checked to fit.
        Ok(u16::try_from(self.whole(key, u16::MAX.into())?).unwrap_or(u16::MAX))
    }

    /// A whole number.
    pub fn u8(self, key: &str) -> Result<u8, EntryProblem> {
        Ok(u8::try_from(self.whole(key, u8::MAX.into())?).unwrap_or(u8::MAX))
    }

    /// A whole number, where it is there.
    pub fn some_u32(self, key: &str) -> Result<Option<u32>, EntryProblem> {
        self.has(key).then(|| self.u32(key)).transpose()
    }

    /// A whole number, where it is there.
    pub fn some_u16(self, key: &str) -> Result<Option<u16>, EntryProblem> {
        self.has(key).then(|| self.u16(key)).transpose()
    }

    /// A whole number, where it is there.
    pub fn some_u8(self, key: &str) -> Result<Option<u8>, EntryProblem> {
        self.has(key).then(|| self.u8(key)).transpose()
    }

    /// A moment in milliseconds since 1970, where it is there. One that no calendar has is none, so that times can be
    /// counted with.
    pub fn some_time(self, key: &str) -> Result<Option<i64>, EntryProblem> {
        let Some(value) = self.some(key) else {
            return Ok(None);
        };
        let time = value.as_i64().filter(|time| TIMES.contains(time));
        time.map(Some).ok_or_else(|| not(key, Wanted::Time))
    }

    /// A shirt.
    pub fn shirt(self, key: &str) -> Result<Shirt, EntryProblem> {
        self.u16(key).map(Shirt)
    }

    fn list(self, key: &str) -> Result<&'a [Value], EntryProblem> {
        match self.given(key)? {
            Value::Array(list) => Ok(list),
            _ => Err(not(key, Wanted::List)),
        }
    }

    /// A list of shirts.
    pub fn shirts(self, key: &str) -> Result<Vec<Shirt>, EntryProblem> {
        let mut shirts = Vec::new();
        for value in self.list(key)? {
            let n = number(value, key, u16::MAX.into())?;
            shirts.push(Shirt(u16::try_from(n).unwrap_or(u16::MAX)));
        }
        Ok(shirts)
    }

    /// One of a closed set, by its code.
    pub fn code<T: Coded>(self, key: &str) -> Result<T, EntryProblem> {
        let given = self.text(key)?;
        let found = T::EVERY.iter().copied().find(|one| one.code() == given);
        found.ok_or_else(|| {
            let known = T::EVERY.iter().map(|one| one.code().to_owned());
            EntryProblem::UnknownWord {
                field: key.to_owned(),
                given,
                known: known.collect(),
            }
        })
    }

    /// The same, where it is there.
    pub fn some_code<T: Coded>(self, key: &str) -> Result<Option<T>, EntryProblem> {
        self.has(key).then(|| self.code(key)).transpose()
    }

    /// An object within.
    pub fn object(self, key: &str) -> Result<Fields<'a>, EntryProblem> {
        Fields::of(self.given(key)?).ok_or_else(|| not(key, Wanted::Object))
    }

    /// The same, where it is there.
    pub fn some_object(self, key: &str) -> Result<Option<Fields<'a>>, EntryProblem> {
        self.has(key).then(|| self.object(key)).transpose()
    }

    /// A list of objects.
    pub fn objects(self, key: &str) -> Result<Vec<Fields<'a>>, EntryProblem> {
        let list = self.list(key)?.iter();
        list.map(|value| {
            Fields::of(value).ok_or_else(|| EntryProblem::ItemNoObject(key.to_owned()))
        })
        .collect()
    }
}

fn number(value: &Value, key: &str, most: u32) -> Result<u32, EntryProblem> {
    let n = value.as_u64().and_then(|n| u32::try_from(n).ok());
    n.filter(|&n| n <= most)
        .ok_or_else(|| not(key, Wanted::Whole(most)))
}

fn not(field: &str, wanted: Wanted) -> EntryProblem {
    EntryProblem::Not {
        field: field.to_owned(),
        wanted,
    }
}

/// Writes an object without line breaks.
pub(super) struct Writer {
    out: String,
}

impl Writer {
    /// At the beginning of the object.
    pub fn new() -> Writer {
        Writer {
            out: "{".to_owned(),
        }
    }

    /// The whole object.
    pub fn end(mut self) -> String {
        self.out.push('}');
        self.out
    }

    fn key(&mut self, key: &str) {
        if !self.out.ends_with(['{', '[']) {
            self.out.push(',');
        }
        self.out.push('"');
        self.out.push_str(key);
        self.out.push_str("\":");
    }

    /// A value as it is.
    pub fn value(&mut self, key: &str, value: &Value) {
        self.key(key);
        self.out.push_str(&value.to_string());
    }

    /// Words, without what writes nothing.
    pub fn text(&mut self, key: &str, text: &str) {
        self.value(key, &Value::from(text));
    }

    /// Words, where they are there.
    pub fn some_text(&mut self, key: &str, text: Option<&str>) {
        if let Some(text) = text {
            self.text(key, text);
        }
    }

    /// A whole number.
    pub fn number(&mut self, key: &str, n: i64) {
        self.key(key);
        self.out.push_str(&n.to_string());
    }

    /// True; what is false is left out.
    pub fn flag(&mut self, key: &str, set: bool) {
        if set {
            self.key(key);
            self.out.push_str("true");
        }
    }

    /// A list of shirts.
    pub fn shirts(&mut self, key: &str, shirts: &[Shirt]) {
        let numbers: Vec<String> = shirts.iter().map(ToString::to_string).collect();
        self.key(key);
        self.out.push('[');
        self.out.push_str(&numbers.join(","));
        self.out.push(']');
    }

    /// An object within.
    pub fn object(&mut self, key: &str, fields: impl FnOnce(&mut Writer)) {
        self.key(key);
        self.out.push('{');
        fields(self);
        self.out.push('}');
    }

    /// A list of objects.
    pub fn objects<T>(&mut self, key: &str, items: &[T], fields: impl Fn(&mut Writer, &T)) {
        self.key(key);
        self.out.push('[');
        for (i, item) in items.iter().enumerate() {
            self.out.push_str(if i == 0 { "{" } else { ",{" });
            fields(self, item);
            self.out.push('}');
        }
        self.out.push(']');
    }
}
