//! How many bytes a first visit costs, and whether that is more than it may.

use std::io::Write;
use std::path::Path;

use crate::Outcome;

/// What several files may weigh together after brotli 11, in bytes. A ceiling stands a little above what was
/// reached last: to raise one is a decision, and so is to leave one high.
struct Ceiling {
    what: &'static str,
    /// Which files, by how their names begin.
    names: &'static [&'static str],
    /// Which of these do not count.
    but: &'static [&'static str],
    at_most: usize,
    /// Where it should come to.
    aim: usize,
}

/// The words of another language.
const SPANISH: &str = "split_spanish-";

const CEILINGS: [Ceiling; 4] = [
    Ceiling {
        what: "the part that starts, with the court",
        names: &["dutystand_bg-"],
        but: &[],
        at_most: 273_500,
        aim: 250_000,
    },
    // Since words are asked for by language each costs a function, 36,000 bytes together; table, panes and
    // keys of the desk, and what else came with them, 76,000 more; library and importer behind ports, where each
    // bad day of theirs is tried without a browser, 9,000 more; what keeps a learner's slips harmless, 4,000 more;
    // words kept half typed, a lock that is waited for and what the desk says and undoes, 5,000 more.
    Ceiling {
        what: "all parts of the program in English",
        names: &["dutystand_bg-", "split_", "chunk_"],
        but: &[SPANISH],
        at_most: 1_295_000,
        aim: 800_000,
    },
    Ceiling {
        what: "another language",
        names: &[SPANISH],
        but: &[],
        at_most: 90_000,
        aim: 90_000,
    },
    Ceiling {
        what: "the style that the start waits for",
        names: &["style-"],
        but: &[],
        at_most: 20_000,
        aim: 20_000,
    },
];

/// Prints raw, gzip 9 and brotli 11 bytes of every built file and their sum, and holds those of a published
/// build against what they may weigh.
pub fn print(dist: &Path, published: bool) -> Outcome<()> {
    let trouble = |e: std::io::Error| {
        format!(
            "Cannot read {}: {e}. Run `cargo xtask dist` first.",
            dist.display()
        )
    };
    let mut files: Vec<_> = std::fs::read_dir(dist)
        .and_then(|entries| {
            entries
                .map(|entry| Ok(entry?.path()))
                .collect::<std::io::Result<Vec<_>>>()
        })
        .map_err(trouble)?;
    files.sort();
    println!("{:>10} {:>10} {:>10}  file", "raw", "gzip 9", "brotli 11");
    let mut sum = [0; 3];
    let mut packed = Vec::new();
    for file in files {
        let bytes = std::fs::read(&file).map_err(trouble)?;
        let row = [bytes.len(), gzip(&bytes), brotli(&bytes)];
        for (total, one) in sum.iter_mut().zip(row) {
            *total += one;
        }
        let name = file.file_name().unwrap_or_default().to_string_lossy();
        println!("{:>10} {:>10} {:>10}  {name}", row[0], row[1], row[2]);
        packed.push((name.into_owned(), row[2]));
    }
    println!("{:>10} {:>10} {:>10}  everything", sum[0], sum[1], sum[2]);
    if !published {
        return Ok(());
    }
    let over: Vec<String> = CEILINGS.iter().filter_map(|c| c.hold(&packed)).collect();
    if over.is_empty() {
        return Ok(());
    }
    Err(over.join("\n"))
}

impl Ceiling {
    /// Says what the files weigh; gives a sentence where that is too much, or where none is there.
    fn hold(&self, files: &[(String, usize)]) -> Option<String> {
        let (what, at_most, aim) = (self.what, self.at_most, self.aim);
        let begins = |name: &str, with: &[&str]| with.iter().any(|start| name.starts_with(start));
        let ours = files
            .iter()
            .filter(|(name, _)| begins(name, self.names) && !begins(name, self.but));
        let weight: usize = ours.map(|(_, bytes)| bytes).sum();
        println!("{weight:>32}  {what}: at most {at_most}, to come to {aim}");
        if weight == 0 {
            return Some(format!("Nothing that was built is {what}."));
        }
        (weight > at_most).then(|| {
            format!(
                "{} bytes after brotli are more than {what} may weigh ({at_most}): move code to where it is used \
                 (src/ui/screens.rs), or say in tools/xtask/src/size.rs why it may.",
                weight
            )
        })
    }
}

fn gzip(bytes: &[u8]) -> usize {
    let mut encoder = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::best());
    encoder
        .write_all(bytes)
        .and_then(|()| encoder.finish())
        .expect("memory does not refuse bytes")
        .len()
}

fn brotli(bytes: &[u8]) -> usize {
    let mut packed = Vec::new();
    let mut encoder = brotli::CompressorWriter::new(&mut packed, 4096, 11, 22);
    encoder
        .write_all(bytes)
        .expect("memory does not refuse bytes");
    drop(encoder);
    packed.len()
}

#[cfg(test)]
mod tests {
    use super::Ceiling;

    const BOTH: Ceiling = Ceiling {
        what: "both parts",
        names: &["a-", "b-"],
        but: &["b-other-"],
        at_most: 10,
        aim: 8,
    };

    fn files(weights: &[(&str, usize)]) -> Vec<(String, usize)> {
        let owned = weights.iter().map(|(name, w)| ((*name).to_owned(), *w));
        owned.collect()
    }

    #[test]
    fn what_weighs_as_much_as_it_may_passes() {
        let built = files(&[
            ("a-1.wasm", 4),
            ("b-2.wasm", 6),
            ("c-3.wasm", 90),
            ("b-other-4.wasm", 90),
        ]);
        assert_eq!(BOTH.hold(&built), None);
    }

    #[test]
    fn one_byte_more_is_refused() {
        let said = BOTH
            .hold(&files(&[("a-1.wasm", 5), ("b-2.wasm", 6)]))
            .unwrap();
        assert!(said.starts_with("11 bytes after brotli are more than both parts may weigh (10)"));
    }

    #[test]
    fn files_that_are_not_there_are_not_light() {
        assert!(BOTH.hold(&files(&[("c-3.wasm", 1)])).is_some());
    }
}
