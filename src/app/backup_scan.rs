//! A backup taken apart match by match, so that a phone stays quick while many are taken in.

/// Finds the matches of a backup one after the other, without reading any.
///
/// The text is walked through once, byte by byte, and may be left and gone on with at any time. Whether
/// what is found can be read is for the reader of each part to say.
#[derive(Debug, Default)]
pub struct BackupScan {
    at: usize,
    depth: usize,
    in_text: bool,
    escaped: bool,
    /// Where the text in quotes began that was walked through last, at the first level.
    quoted: Option<usize>,
    /// The last name at the first level was that of the list.
    named: bool,
    list: Option<usize>,
    part: Option<usize>,
    end: Option<usize>,
}

/// What a stretch of walking has found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Step {
    /// Nothing yet.
    Further,
    /// A match, from here to there.
    Part(std::ops::Range<usize>),
    /// The list is over. What is around it: the beginning up to the list, and the rest from there.
    End {
        /// Up to and with the bracket that opens the list.
        head: usize,
        /// From the bracket that closes it.
        tail: usize,
    },
    /// The text ended in between, or has no such list.
    Broken,
}

const LIST: &[u8] = b"matches";

impl BackupScan {
    /// Walks on by so many bytes at most.
    pub fn step(&mut self, text: &str, most: usize) -> Step {
        let bytes = text.as_bytes();
        let stop = self.at.saturating_add(most).min(bytes.len());
        while self.at < stop {
            let at = self.at;
            let byte = bytes[at];
            self.at += 1;
            if self.in_text {
                match byte {
                    _ if self.escaped => self.escaped = false,
                    b'\\' => self.escaped = true,
                    b'"' => {
                        self.in_text = false;
                        if self.depth == 1 {
                            let from = self.quoted.take();
                            self.named = from.is_some_and(|from| bytes.get(from..at) == Some(LIST));
                        }
                    }
                    _ => {}
                }
                continue;
            }
            match byte {
                b'"' => {
                    self.in_text = true;
                    if self.depth == 1 {
                        self.quoted = Some(at + 1);
                        self.named = false;
                    }
                }
                b'{' | b'[' => {
                    self.depth += 1;
                    if self.depth == 2 && byte == b'[' && self.named && self.list.is_none() {
                        self.list = Some(at + 1);
                    } else if self.depth == 3 && self.is_in_list() {
                        self.part = Some(at);
                    }
                    self.named = false;
                }
                b'}' | b']' => {
                    let Some(depth) = self.depth.checked_sub(1) else {
                        return Step::Broken;
                    };
                    self.depth = depth;
                    if depth == 2 {
                        if let Some(from) = self.part.take() {
                            return Step::Part(from..at + 1);
                        }
                    }
                    if depth == 1 && self.is_in_list() {
                        self.end = Some(at);
                    }
                }
                _ => {}
            }
        }
        if self.at < bytes.len() {
            return Step::Further;
        }
        match (self.list, self.end) {
            (Some(head), Some(tail)) if self.depth == 0 => Step::End { head, tail },
            _ => Step::Broken,
        }
    }

    fn is_in_list(&self) -> bool {
        self.list.is_some() && self.end.is_none()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use game::simulate;
    use record::{write_backup, KeptMatch, Log, OnDesk};
    use rules::Preset;

    fn taken_apart(text: &str, most: usize) -> (Vec<String>, Option<String>) {
        let mut parts = BackupScan::default();
        let mut found = Vec::new();
        loop {
            match parts.step(text, most) {
                Step::Further => {}
                Step::Part(range) => found.push(text[range].to_owned()),
                Step::End { head, tail } => {
                    return (found, Some(format!("{}{}", &text[..head], &text[tail..])));
                }
                Step::Broken => return (found, None),
            }
        }
    }

    #[test]
    fn a_backup_comes_apart_whatever_the_stretch() {
        let desk = OnDesk {
            papers: vec!["{\"matches\":[1]}".to_owned()],
            pools: vec!["\"\\".to_owned()],
            learner: Some("]}\n".to_owned()),
            logbook: Some("[{\"matches\":[".to_owned()),
            observed: vec!["\"matches\":[".to_owned()],
        };
        let all: Vec<KeptMatch> = (1..4)
            .map(|seed| KeptMatch {
                log: Log {
                    id: format!("\"]}}{seed}"),
                    entries: simulate(Preset::SchoolJunior, seed),
                },
                ..KeptMatch::default()
            })
            .collect();
        let text = write_backup(&all, &desk, Some(1));
        let rest = write_backup(&[], &desk, Some(1));
        for most in [1, 7, 1000, usize::MAX] {
            let (found, around) = taken_apart(&text, most);
            assert_eq!(found.len(), 3);
            for (part, kept) in found.iter().zip(&all) {
                let value: serde_json::Value = serde_json::from_str(part).expect("a match");
                assert_eq!(value["match"]["id"], serde_json::json!(kept.log.id));
            }
            let around: serde_json::Value =
                serde_json::from_str(&around.expect("whole")).expect("JSON");
            let rest: serde_json::Value = serde_json::from_str(&rest).expect("JSON");
            assert_eq!(around, rest);
        }
    }

    #[test]
    fn what_is_no_whole_backup_is_broken() {
        for text in [
            "",
            "{",
            "]",
            "{\"matches\":[{}",
            "{\"x\":[{}]}",
            "{\"matches\":[{}]",
        ] {
            assert_eq!(taken_apart(text, 3).1, None, "{text}");
        }
        assert_eq!(taken_apart("{\"matches\":[]}", 3).0.len(), 0);
        assert_eq!(
            taken_apart("{\"x\":{\"matches\":[{}]},\"matches\":[[],{}]}", 3)
                .0
                .len(),
            2
        );
    }
}
