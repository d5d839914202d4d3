//! Reading what somebody keyed in as JSON: every value with its place in the file, every problem with
//! its place. Whatever the text holds, reading ends with a form or with the problems, never otherwise.

use super::form_problem::{FormProblem, FormProblemKind};
use rules::{ByTeam, Rules, Score, Team};
use serde_json::Value;

/// What was read of a form, and what was wrong with it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Form<T> {
    /// The form; none where something in it cannot be read.
    pub read: Option<T>,
    /// Everything that was wrong. Where the form was read, these are fields that were left out.
    pub problems: Vec<FormProblem>,
}

/// A value with its place.
#[derive(Clone, Debug)]
pub(super) struct Field<'a> {
    value: &'a Value,
    place: String,
}

impl<'a> Field<'a> {
    /// The value behind a key; none where it is missing or null.
    pub fn get(&self, key: &str) -> Option<Field<'a>> {
        let value = self.value.get(key).filter(|v| !v.is_null())?;
        Some(Field {
            value,
            place: join(&self.place, key),
        })
    }

    /// Where it stands.
    pub fn place(&self) -> &str {
        &self.place
    }

    /// The keys of an object with their fields.
    pub fn members(&self) -> Vec<(&'a str, Field<'a>)> {
        let members = self.value.as_object().into_iter().flatten();
        members
            .map(|(key, value)| {
                let place = join(&self.place, key);
                (key.as_str(), Field { value, place })
            })
            .collect()
    }
}

fn join(place: &str, key: &str) -> String {
    if place.is_empty() {
        key.to_owned()
    } else {
        format!("{place}.{key}")
    }
}

fn owned(words: &[&str]) -> Vec<String> {
    words.iter().map(|word| (*word).to_owned()).collect()
}

/// Reads one form and remembers what was wrong.
#[derive(Debug, Default)]
pub(super) struct Reader {
    problems: Vec<FormProblem>,
    cannot: bool,
}

impl Reader {
    /// Reads a whole form: its text, the name and the fields it should have, and how it is taken in.
    pub fn form<T>(
        text: &str,
        name: &'static str,
        fields: &[&str],
        take: impl FnOnce(&mut Reader, &Field) -> Option<T>,
    ) -> Form<T> {
        let mut reader = Reader::default();
        let value = reader.open(text, name);
        let read = value.and_then(|value| {
            let root = Field {
                value: &value,
                place: String::new(),
            };
            let fields: Vec<&str> = ["log", "version"].iter().chain(fields).copied().collect();
            reader.object(&root, &fields)?;
            take(&mut reader, &root)
        });
        if read.is_none() && !reader.cannot {
            reader.wrong("", FormProblemKind::Unreadable);
        }
        Form {
            read: read.filter(|_| !reader.cannot),
            problems: reader.problems,
        }
    }

    fn open(&mut self, text: &str, name: &'static str) -> Option<Value> {
        if text.len() > record::MAX_BYTES {
            self.wrong("", FormProblemKind::TooLong(text.len()));
            return None;
        }
        let value: Value = match serde_json::from_str(text.trim_start_matches('\u{feff}')) {
            Ok(value) => value,
            Err(e) => {
                self.wrong("", FormProblemKind::Damaged(e.line()));
                return None;
            }
        };
        if value.get("log").and_then(Value::as_str) != Some(name) {
            self.wrong("log", FormProblemKind::OtherLog(name));
            return None;
        }
        match value.get("version").and_then(Value::as_u64) {
            Some(1) => Some(value),
            Some(newer) if newer > 1 => {
                self.wrong("version", FormProblemKind::NewerVersion(newer));
                None
            }
            _ => {
                self.wrong("version", FormProblemKind::NoVersion);
                None
            }
        }
    }

    /// Something that cannot be read.
    pub fn wrong(&mut self, place: &str, kind: FormProblemKind) {
        self.cannot = true;
        self.note(place, kind);
    }

    fn note(&mut self, place: &str, kind: FormProblemKind) {
        // A file of nonsense needs no thousand sentences.
        if self.problems.len() < 100 {
            self.problems.push(FormProblem {
                place: place.to_owned(),
                kind,
            });
        }
    }

    /// The value behind a key that has to be there.
    pub fn need<'a>(&mut self, field: &Field<'a>, key: &str) -> Option<Field<'a>> {
        let got = field.get(key);
        if got.is_none() {
            self.wrong(&join(&field.place, key), FormProblemKind::Missing);
        }
        got
    }

    /// Whether it is an object; fields nobody knows are named and left out.
    pub fn object(&mut self, field: &Field, fields: &[&str]) -> Option<()> {
        let Some(map) = field.value.as_object() else {
            self.wrong(&field.place, FormProblemKind::NotObject(owned(fields)));
            return None;
        };
        for key in map.keys().filter(|k| !fields.contains(&k.as_str())) {
            self.note(&join(&field.place, key), FormProblemKind::UnknownField);
        }
        Some(())
    }

    /// The items of a list of at most so many.
    pub fn list<'a>(&mut self, field: &Field<'a>, most: usize) -> Option<Vec<Field<'a>>> {
        let Some(items) = field.value.as_array() else {
            self.wrong(&field.place, FormProblemKind::NotList);
            return None;
        };
        if items.len() > most {
            self.wrong(
                &field.place,
                FormProblemKind::TooManyItems {
                    items: items.len(),
                    most,
                },
            );
            return None;
        }
        let with_place = |(i, value)| Field {
            value,
            place: format!("{}[{i}]", field.place),
        };
        Some(items.iter().enumerate().map(with_place).collect())
    }

    /// Every item of a list, read alike. Where one cannot be read, none is given.
    pub fn all<'a, T>(
        &mut self,
        field: &Field<'a>,
        most: usize,
        mut each: impl FnMut(&mut Reader, &Field<'a>) -> Option<T>,
    ) -> Option<Vec<T>> {
        let items = self.list(field, most)?;
        let read: Vec<Option<T>> = items.iter().map(|item| each(self, item)).collect();
        read.into_iter().collect()
    }

    /// A text that is not empty.
    pub fn text(&mut self, field: &Field) -> Option<String> {
        // One line, without what writes nothing: a sheet and a table have a line for it and no more.
        let text = field.value.as_str().map(record::plain);
        match text.as_deref().map(str::trim) {
            Some(text) if !text.is_empty() => Some(text.to_owned()),
            _ => {
                self.wrong(&field.place, FormProblemKind::NotText);
                None
            }
        }
    }

    /// True or false.
    pub fn yes(&mut self, field: &Field) -> Option<bool> {
        let yes = field.value.as_bool();
        if yes.is_none() {
            self.wrong(&field.place, FormProblemKind::NotFlag);
        }
        yes
    }

    /// A whole number between two others.
    pub fn whole(&mut self, field: &Field, least: i64, most: i64) -> Option<i64> {
        let number = field.value.as_i64().filter(|n| (least..=most).contains(n));
        if number.is_none() {
            self.wrong(&field.place, FormProblemKind::NotWhole { least, most });
        }
        number
    }

    /// A whole number from 0 to 999: points, totals, shirts.
    pub fn number(&mut self, field: &Field) -> Option<u16> {
        u16::try_from(self.whole(field, 0, 999)?).ok()
    }

    /// One of several words.
    pub fn word<T: Copy>(&mut self, field: &Field, words: &[(&str, T)]) -> Option<T> {
        let given = field.value.as_str().unwrap_or_default();
        let found = words.iter().find(|(word, _)| *word == given);
        if found.is_none() {
            let words: Vec<&str> = words.iter().map(|w| w.0).collect();
            self.wrong(&field.place, FormProblemKind::NotWord(owned(&words)));
        }
        found.map(|w| w.1)
    }

    /// A team's letter.
    pub fn team(&mut self, field: &Field) -> Option<Team> {
        self.word(field, &[("A", Team::A), ("B", Team::B)])
    }

    /// The same thing for both teams.
    pub fn pair<'a, T>(
        &mut self,
        field: &Field<'a>,
        mut each: impl FnMut(&mut Reader, &Field<'a>) -> Option<T>,
    ) -> Option<ByTeam<T>> {
        self.object(field, &["A", "B"])?;
        let of = |reader: &mut Reader, key| reader.need(field, key);
        let (a, b) = (of(self, "A"), of(self, "B"));
        let (a, b) = (
            a.and_then(|f| each(self, &f)),
            b.and_then(|f| each(self, &f)),
        );
        Some(ByTeam { a: a?, b: b? })
    }

    /// The points of both teams.
    pub fn score(&mut self, field: &Field) -> Option<Score> {
        self.pair(field, |reader, f| reader.number(f))
    }

    /// Rules, written as in a match record.
    pub fn rules(&mut self, field: &Field) -> Option<Rules> {
        let read = match field.value {
            Value::Object(given) => record::read_rules(given).map_err(Some),
            _ => Err(None),
        };
        let rules = match read {
            Ok(rules) => rules,
            Err(why) => {
                self.wrong(&field.place, FormProblemKind::RulesUnreadable(why));
                return None;
            }
        };
        if rules.check().is_err() {
            self.wrong(&field.place, FormProblemKind::RulesUnplayable);
            return None;
        }
        Some(rules)
    }
}
